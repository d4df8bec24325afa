#include "core/instructions/waiting_text.h"

#include <algorithm>
#include <utility>

namespace roundwright {
namespace {

constexpr int most_made = 1'000;

}  // namespace

void WaitingText::add(const PatternLine& line, bool after_blank, bool first) {
    Line waiting;
    waiting.line = &line;
    waiting.heading = heading_of(line.tokens);
    if (waiting.heading) weigh(waiting, after_blank || (first && lines_.empty()));
    lines_.push_back(std::move(waiting));
}

void WaitingText::weigh(Line& line, bool set_off) {
    const bool marked = line.line->hashed || line.heading->says_make;
    line.weight = marked ? 3 : set_off ? 2 : 1;
    if (line.heading->section)
        in_section_ = true;
    else if (line.weight > 1)
        in_section_ = false;
}

bool WaitingText::could_name(const Line& line) {
    return line.heading && !line.heading->section && !line.heading->name.empty();
}

std::size_t WaitingText::heading_at() const {
    std::size_t best = lines_.size();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        if (!could_name(lines_[i])) continue;
        if (best == lines_.size() || lines_[i].weight >= lines_[best].weight) best = i;
    }
    return best;
}

std::optional<WaitingText::Title> WaitingText::take_title() {
    const auto title = std::find_if(lines_.begin(), lines_.end(), could_name);
    if (title == lines_.end() || title->heading->says_make) return std::nullopt;
    const bool another = std::any_of(title + 1, lines_.end(),
                                     [](const Line& line) { return could_name(line) && line.weight > 1; });
    if (!another) return std::nullopt;
    Title taken{title->line, title->heading->name};
    lines_.erase(title);
    return taken;
}

WaitingText::Name WaitingText::take_name() {
    Name taken;
    std::vector<Line> rest;
    for (Line& line : lines_) {
        const bool names = could_name(line) && taken.name.empty();
        const bool makes = line.heading && line.heading->says_make && line.heading->name.empty();
        if (!names && !makes) {
            rest.push_back(std::move(line));
            continue;
        }
        if (names) taken.name = line.heading->name;
        if (line.heading->says_make) taken.make = std::clamp(line.heading->make, 1, most_made);
        taken.headings.push_back({line.line, line.heading->name});
    }
    lines_ = std::move(rest);
    return taken;
}

std::vector<const PatternLine*> WaitingText::take(std::size_t count) {
    count = std::min(count, lines_.size());
    std::vector<const PatternLine*> taken;
    for (std::size_t i = 0; i < count; ++i) taken.push_back(lines_[i].line);
    lines_.erase(lines_.begin(), lines_.begin() + static_cast<std::ptrdiff_t>(count));
    return taken;
}

}  // namespace roundwright
