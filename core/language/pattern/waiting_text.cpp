#include "core/language/pattern/waiting_text.h"

#include <algorithm>
#include <utility>

#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

constexpr int most_made = 1'000;

}  // namespace

int made(const Heading& heading) { return std::clamp(heading.make, 1, most_made); }

void WaitingText::add(const PatternLine& line, bool after_blank, bool first, bool told) {
    WaitingLine waiting;
    waiting.line = &line;
    waiting.after_blank = after_blank;
    waiting.told = told;
    if (only_a_name(line, first))
        waiting.heading = heading_as_it_stands(line.tokens);
    else if (!told && !is_marked_note(line.tokens))
        waiting.heading = heading_of(line.tokens);
    if (waiting.heading) weigh(waiting, after_blank || (first && lines_.empty()));
    waiting.section = section_;
    lines_.push_back(std::move(waiting));
    weigh_heading(lines_.size() - 1);
}

void WaitingText::weigh(WaitingLine& line, bool set_off_by_blank) {
    const int level = line.line->heading_level;
    const bool marked = level > 0;
    const bool piece = line.heading->says_make || names_a_piece(line.line->tokens) ||
                       (rounds_level_ > 0 && level > rounds_level_);
    line.weight = piece ? piece_heading : marked ? marked_heading : set_off_by_blank ? set_off : few_words;
    const Section section = line.heading->section;
    if (marked && level <= std::max(rounds_level_, section == Section::rounds ? level : 0))
        rounds_level_ = section == Section::rounds ? level : 0;
    if (section != Section::none) {
        section_ = section == Section::rounds ? Section::none : section;
        section_is_marked_ = marked;
    } else if (line.weight >= marked_heading || (line.weight == set_off && !section_is_marked_)) {
        section_ = Section::none;
    } else if (in_section() && section_is_marked_) {
        line.heading.reset();
    }
}

bool WaitingText::could_name(const WaitingLine& line) {
    return line.heading && line.heading->section == Section::none && !line.heading->name.empty();
}

void WaitingText::weigh_heading(std::size_t at) {
    if (!could_name(lines_[at])) return;
    if (heading_at_ == none || lines_[at].weight >= lines_[heading_at_].weight) heading_at_ = at;
}

void WaitingText::find_heading() {
    heading_at_ = none;
    for (std::size_t at = 0; at < lines_.size(); ++at) weigh_heading(at);
}

int WaitingText::heading_weight() const {
    const std::size_t at = heading_at();
    return at == lines_.size() ? 0 : lines_[at].weight;
}

std::optional<WaitingText::Title> WaitingText::take_title() {
    const auto title = std::find_if(lines_.begin(), lines_.end(), [](const WaitingLine& line) {
        return could_name(line) && line.section == Section::none;
    });
    if (title == lines_.end() || title->heading->says_make) return std::nullopt;
    const bool another = std::any_of(title + 1, lines_.end(), [](const WaitingLine& line) {
        return could_name(line) && line.weight >= set_off;
    });
    if (!another) return std::nullopt;
    Title taken{title->line, title->heading->name};
    lines_.erase(title);
    find_heading();
    return taken;
}

WaitingText::Name WaitingText::take_name() {
    Name taken;
    std::vector<WaitingLine> rest;
    for (WaitingLine& line : lines_) {
        const bool names = could_name(line) && taken.name.empty();
        const bool makes = line.heading && line.heading->says_make && line.heading->name.empty();
        const bool remark = is_marked_note(line.line->tokens);
        if (const int sentence = remark ? 0 : made_by_sentence(line.line->tokens);
            sentence > 0 && !taken.make)
            taken.make = std::clamp(sentence, 1, most_made);
        if (!names && !makes) {
            rest.push_back(std::move(line));
            continue;
        }
        if (names) taken.name = line.heading->name;
        if (line.heading->says_make) taken.make = made(*line.heading);
        taken.headings.push_back({line.line, line.heading->name});
    }
    lines_ = std::move(rest);
    find_heading();
    return taken;
}

std::vector<WaitingLine> WaitingText::take(std::size_t count) {
    count = std::min(count, lines_.size());
    const auto end = lines_.begin() + static_cast<std::ptrdiff_t>(count);
    std::vector<WaitingLine> taken(std::make_move_iterator(lines_.begin()), std::make_move_iterator(end));
    lines_.erase(lines_.begin(), end);
    find_heading();
    return taken;
}

}  // namespace roundwright
