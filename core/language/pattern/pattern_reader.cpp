#include "core/language/pattern/pattern_reader.h"

#include <algorithm>
#include <utility>

#include "core/base/limits.h"
#include "core/language/pattern/line_account.h"
#include "core/language/pattern/unread_work.h"
#include "core/language/round/token_cursor.h"
#include "core/language/round/worked_on_words.h"
#include "core/language/round/write.h"
#include "core/language/words/in_language.h"

namespace roundwright {
namespace {

// "Change to white.", "With grey yarn:"; -1 when stitches are made too.
int only_names_yarn(const ReadRound& read) {
    if (read.syntax.nodes.size() != 1 || has_code(read, ReadCode::unknown_words) || read.stated) return -1;
    const auto* change = std::get_if<YarnChange>(&read.syntax.nodes[0].what);
    return change == nullptr ? -1 : change->yarn;
}

bool words_known(const ReadRound& read) {
    return !has_code(read, ReadCode::unknown_words) && !read.syntax.nodes.empty();
}

std::string said_from(const PatternLine& line, std::size_t from) {
    return said(std::span(line.tokens).subspan(from));
}

}  // namespace

PatternReader::PatternReader(const LexedText& text, const ReadOptions& options,
                             const std::optional<FoundTerms>& language) {
    const FoundTerms found = language ? *language : find_terms(text.lines());
    state_.out.terms = options.terms.value_or(found.terms);
    state_.out.terms_sure = options.terms.has_value() || found.sure;
    state_.yarns.names = options.yarn_names;
    state_.yarns.first_is_free = true;
    state_.find_mends = options.find_mends;
    lines_ = pattern_lines(text, state_.out.terms, joined_);
    any_likeness_ = std::any_of(lines_.begin(), lines_.end(), [](const PatternLine& line) {
        if (!line.numbers.empty())
            return line.numbers.front().first == 1 && !piece_meant(line.tokens).empty();
        return line.header.length == 0 && !is_marked_note(line.tokens) &&
               (says_as_above(line.tokens) || likeness_of(line.tokens).has_value());
    });
    for (const SourceLine& line : text.lines()) last_line_ = std::max(last_line_, line.number);
    if (!options.terms) report_terms(found);
    report_text(text);
}

void PatternReader::report_text(const LexedText& text) {
    if (text.not_utf8())
        state_.report({.code = ReadCode::not_utf8, .severity = Severity::warning, .where = *text.not_utf8()});
    for (const SourceLine& line : text.lines()) {
        if (!line.too_long) continue;
        state_.report({.code = ReadCode::line_too_long,
                       .where = TextSpan{line.number, 1, 0},
                       .expected = static_cast<int>(max_line_bytes),
                       .found = static_cast<int>(line.raw.size())});
        PatternLine shown;
        shown.first_line = shown.last_line = line.number;
        state_.show(ReadLineKind::not_read, shown, -1, "").proved = false;
    }
}

ReadPattern PatternReader::run() {
    for (const PatternLine& line : lines_) {
        take(line);
        after_blank_ = line.kind == LineKind::blank;
    }
    end_piece(waiting_.size());
    add_notes(waiting_.size());
    ReadPattern& out = state_.out;
    out.yarn_names = state_.yarns.names;
    tell_lines_without_entry(state_, lines_, last_line_);
    tell_rounds_not_taken(state_, lines_);
    if (out.pieces.empty()) state_.report({.code = ReadCode::no_rounds, .where = TextSpan{1, 1, 0}});
    std::stable_sort(out.lines.begin(), out.lines.end(),
                     [](const ReadLine& x, const ReadLine& y) { return x.first_line < y.first_line; });
    out.account = account_of(out.lines, last_line_);
    std::stable_sort(
        out.diagnostics.begin(), out.diagnostics.end(), [](const ReadDiagnostic& x, const ReadDiagnostic& y) {
            return std::pair(x.where.line, x.where.column) < std::pair(y.where.line, y.where.column);
        });
    return std::move(out);
}

// --- what a line is

void PatternReader::take(const PatternLine& line) {
    if (line.kind == LineKind::blank) return;
    if (line.dots && in_piece_with_rounds() && !waiting_.in_section()) {
        fill_dots(line);
        return;
    }
    if (take_ring_alone(line)) return;
    if (line.kind == LineKind::round && line.header.length > 0 && !is_step(line)) return take_round(line);
    if (line.tokens.empty()) return;  // nothing but the sign of a heading or a bullet
    if (!waiting_.in_section() && (take_worked_on(line) || take_joining(line) || take_left_loops(line)))
        return;
    if (only_a_name(line)) return waiting_.add(line, after_blank_, !piece_);
    if (!waiting_.in_section() && !is_marked_note(line.tokens) && take_likeness(line)) return;
    const bool works = line.kind != LineKind::text && !waiting_.in_section();
    if (!works || !take_work(line)) take_text(line);
}

bool PatternReader::only_a_name(const PatternLine& line) const {
    return names_a_piece(line.tokens) || waiting_.only_a_name(line, nothing_before());
}

bool PatternReader::nothing_before() const {
    return !piece_ && state_.out.lines.empty() && state_.out.pieces.empty();
}

// "2. Work a chain for the string." under "Assembly" is a step of it; stitches with a count are a round there
// too.
bool PatternReader::is_step(const PatternLine& line) const {
    return line.bare && waiting_.in_section() &&
           !((line.counted || line.plain) && names_a_stitch(line.tokens, state_.out.terms));
}

// "Rnd 0: magic ring" is no round yet.
bool PatternReader::take_ring_alone(const PatternLine& line) {
    if (line.numbers.empty() || line.numbers.front().first != 0 || waiting_.in_section()) return false;
    YarnTable yarns = state_.yarns;
    auto said = said_start(line, Standing(state_).try_read(line.tokens, yarns));
    if (!said) return false;
    if (in_piece_with_rounds()) end_piece(waiting_.heading_at());
    if (start_) waiting_.add(*start_->line, after_blank_, !piece_);
    start_ = std::move(said);
    return true;
}

// The rounds for which dots stand come before the next one that is written out.
void PatternReader::fill_dots(const PatternLine& line) {
    const auto at = static_cast<std::size_t>(&line - lines_.data()) + 1;
    add_notes(waiting_.size());
    piece_->fill(line, std::span<const PatternLine>(lines_).subspan(at));
}

// A line of stitches without a number: a start, a whole round of a pattern that numbers none, or a note.
bool PatternReader::take_work(const PatternLine& line) {
    constexpr std::size_t longest = 400;
    if (line.tokens.size() > longest || is_definition(line.tokens, state_.out.terms)) return false;
    if (take_yarn_change(line)) return true;
    YarnTable yarns = state_.yarns;
    const ReadRound read = standing_.try_read(line.tokens, yarns);
    if (auto said = may_start() ? said_start(line, read) : std::nullopt) {
        if (start_) waiting_.add(*start_->line, after_blank_, !piece_);
        start_ = std::move(said);
        return true;
    }
    if (const int yarn = only_names_yarn(read); yarn >= 0) return take_yarn(line, yarn, yarns);
    if (!is_round(line, read)) return false;
    if (read.syntax.into_ring && in_piece_with_rounds()) end_piece(waiting_.heading_at());
    take_round(line);
    return true;
}

std::string PatternReader::in_english(const PatternLine& line) const {
    return is_english(state_.out.terms) ? line.raw : english_of(line.tokens);
}

// Our own words for a piece that goes on over the edges of others.
bool PatternReader::take_worked_on(const PatternLine& line) {
    const auto on = may_start() ? worked_on_said(in_english(line)) : std::nullopt;
    if (!on) return false;
    if (start_) waiting_.add(*start_->line, after_blank_, !piece_);
    start_ = SaidStart{.line = &line, .ring = {}, .worked_on = on};
    return true;
}

bool PatternReader::is_round(const PatternLine& line, const ReadRound& read) const {
    const bool known = words_known(read);
    const bool numbered = piece_ && piece_->numbered();
    if (start_ || !piece_) return known && (start_ || read.syntax.into_ring || read.syntax.foundation > 0);
    if (known && read.syntax.into_ring && (!numbered || !waiting_.empty())) return true;
    if (known && read.proved() && read.syntax.rounds > 1) return true;
    const bool grows_so_far = read.syntax.repeats_until > 0 || read.stated;
    if (in_piece_with_rounds() && read.syntax.grows_on != 0 && grows_so_far) return true;
    if (in_piece_with_rounds() && known && read.proved() && numbered && fills_the_gap(line)) return true;
    const bool how_far = read.syntax.repeats_until > 0 || read.syntax.repeat_times > 0;
    if (in_piece_with_rounds() && read.proved() && read.syntax.repeats_from != 0 && how_far) return true;
    return !numbered && ((known && read.proved()) || read.stated || line.counted);
}

// A round without a number between rounds 2 and 4.
bool PatternReader::fills_the_gap(const PatternLine& line) const {
    const auto at = static_cast<std::size_t>(&line - lines_.data()) + 1;
    constexpr std::size_t furthest = 40;
    const auto after = std::span(lines_).subspan(at);
    for (const PatternLine& next : after.first(std::min(after.size(), furthest))) {
        if (next.kind == LineKind::text && next.heading_level > 0) return false;
        if (next.kind == LineKind::work) return false;
        if (next.kind == LineKind::round && !next.numbers.empty())
            return next.numbers.front().first == piece_->next_number() + 1;
    }
    return false;
}

// In the first two rounds of a piece, chains are stitches.
bool PatternReader::may_start() const {
    return !piece_ || !waiting_.empty() || piece_->piece().rounds.size() >= 2;
}

bool PatternReader::take_yarn(const PatternLine& line, int yarn, const YarnTable& yarns) {
    state_.yarns = yarns;
    next_yarn_ = yarn;
    return show(ReadLineKind::yarn, line, state_.yarns.names[static_cast<std::size_t>(yarn)]);
}

bool PatternReader::take_yarn_change(const PatternLine& line) {
    const auto change = yarn_change(line.tokens);
    if (!change || !piece_) return false;
    if (!change->name.empty()) name_yarn(*change);
    next_yarn_ = change->yarn;
    return show(ReadLineKind::yarn, line, change->name.empty() ? line.raw : change->name);
}

// --- rounds and pieces

void PatternReader::take_round(const PatternLine& line) {
    if (state_.full) return;
    waiting_.end_section();
    if (take_rounds_of_another(line)) return;
    settle_likeness(line);
    if (take_closing_row(line)) return;
    const bool goes_on = begins_on_edges(line) || begins_in_left_loops(line);
    if (in_piece_with_rounds() && !goes_on && begins_a_piece(line)) end_piece(waiting_.heading_at());
    if (!piece_ && state_.out.pieces.size() >= max_pieces) return too_many_pieces(line);
    if (!piece_)
        begin_piece(line);
    else if (const auto start = std::exchange(start_, std::nullopt))
        keep_start_as_note(*start);
    if (goes_on) piece_->go_on_with_numbers();
    if (next_yarn_ >= 0) standing_.set_yarn(std::exchange(next_yarn_, -1));
    add_notes(waiting_.size());
    const auto at = static_cast<std::size_t>(&line - lines_.data()) + 1;
    piece_->add(line, std::span<const PatternLine>(lines_).subspan(std::min(at, lines_.size())));
}

// A chain that no first round follows.
void PatternReader::keep_start_as_note(const SaidStart& start) {
    WaitingLine line;
    line.line = start.line;
    notes_.keep({line}, &*piece_, false);
}

// Round 1 does, and whatever stands under a heading that cannot be a part of the piece: "Legs (make 2)", or
// one that is set off and whose rounds do not go on from the last.
bool PatternReader::begins_a_piece(const PatternLine& line) const {
    const int number = line.numbers.empty() ? 0 : line.numbers.front().first;
    const int weight = waiting_.heading_weight();
    if (is_first_round(line) || (start_ && line.numbers.empty()) || weight == piece_heading) return true;
    if (weight < set_off) return false;
    return piece_->only_like_another() || (number > 0 && number != piece_->next_number());
}

// Round 1, or round 0; round 1 after that is the second.
bool PatternReader::is_first_round(const PatternLine& line) const {
    if (line.numbers.empty()) return line.starts;
    const int number = line.numbers.front().first;
    return number == 0 || (number == 1 && piece_->next_number() != 1);
}

void PatternReader::too_many_pieces(const PatternLine& line) {
    state_.report({.code = ReadCode::too_many_pieces,
                   .where = line.header,
                   .expected = static_cast<int>(max_pieces),
                   .found = static_cast<int>(max_pieces) + 1});
    state_.full = true;
}

void PatternReader::begin_piece(const PatternLine& line) {
    if (state_.out.pieces.empty()) take_title();
    add_notes(waiting_.heading_at());
    Piece piece;
    name(piece);
    piece.start = find_start(line);
    const auto start = std::exchange(start_, std::nullopt);
    if (start && start->line != &line)
        state_.show(ReadLineKind::start, *start->line, state_.piece_index(),
                    start_words(piece, state_.out.terms));
    state_.names_of_pieces.push_back(name_words(piece.name));
    piece_.emplace(state_, standing_, std::move(piece), line);
    begin_edge();
    like_line_ = nullptr;
}

// A piece's start is said by a line before it or by its first round.
Start PatternReader::find_start(const PatternLine& line) const {
    YarnTable yarns = state_.yarns;
    const RoundSyntax syntax =
        parse_round(line.tokens, {state_.out.terms, true, StitchKind::single_crochet}, yarns);
    return start_of(start_.value_or(SaidStart{}), syntax);
}

void PatternReader::take_title() {
    if (!state_.out.title.empty()) return;
    if (const auto title = waiting_.take_title()) {
        state_.out.title = title->name;
        state_.show(ReadLineKind::title, *title->line, -1, title->name);
    }
}

void PatternReader::name(Piece& piece) {
    const WaitingText::Name said = waiting_.take_name();
    piece.name = said.name.empty() ? "Piece " + std::to_string(state_.piece_index() + 1) : said.name;
    piece.make = said.make.value_or(piece.make);
    for (const auto& heading : said.headings)
        state_.show(ReadLineKind::heading, *heading.line, state_.piece_index(), heading.name);
}

// Of the text that waits, the first `notes` lines still belong to the piece that ends.
void PatternReader::end_piece(std::size_t notes) {
    if (!piece_) return;
    add_notes(notes, true);
    state_.words_of_pieces.push_back(any_likeness_ ? piece_->take_words() : ReadingState::WordsOfRounds());
    edges_.back().loops = standing_.below().loops;
    loops_of_last_piece_ = piece_->loops_of_rounds();
    state_.out.tallies.push_back(piece_->tally());
    state_.out.pieces.push_back(piece_->finish());
    piece_.reset();
}

// --- text: yarns, hook, terms, titles, notes

void PatternReader::take_text(const PatternLine& line) {
    if (line.tokens.empty() || take_meta(line)) return;
    hear_second(line);
    waiting_.add(line, after_blank_, !piece_);
}

bool PatternReader::take_meta(const PatternLine& line) {
    if (is_marked_note(line.tokens)) return false;
    if (take_title_line(line) || take_yarn_name(line)) return true;
    if (const auto hook = hook_line(line.tokens); hook && !piece_) {
        state_.out.hook_mm = *hook;
        return show(ReadLineKind::materials, line, line.raw);
    }
    if (take_gauge(line) || take_materials(line)) return true;
    return is_terms_line(line.tokens) && show(ReadLineKind::terms, line, line.raw);
}

bool PatternReader::take_yarn_name(const PatternLine& line) {
    const bool listed = waiting_.section() == Section::materials;
    if (listed && take_lettered_yarns(line)) return true;
    const auto yarn = listed ? listed_yarn(line.tokens) : yarn_line(line.tokens);
    if (!yarn || yarn->name.empty()) return false;
    if (const auto hook = hook_within(line.tokens); hook && !state_.out.hook_mm) state_.out.hook_mm = *hook;
    name_yarn(*yarn);
    return show(ReadLineKind::yarn, line, yarn->name);
}

// "cotton: white (A), grey (B)"
bool PatternReader::take_lettered_yarns(const PatternLine& line) {
    const auto yarns = lettered_yarns(line.tokens);
    if (yarns.empty()) return false;
    for (const YarnLine& yarn : yarns) name_yarn(yarn);
    return show(ReadLineKind::yarn, line, line.raw);
}

// "You need: cotton in red (A) and white (B), hook 2.5 mm, 6 mm safety eyes": all on one line.
bool PatternReader::take_materials(const PatternLine& line) {
    constexpr std::size_t furthest = 5;
    const auto colon =
        std::find_if(line.tokens.begin(), line.tokens.end(), [](const Token& t) { return t.is(":"); });
    const auto at = static_cast<std::size_t>(colon - line.tokens.begin());
    if (piece_ || at == 0 || at > furthest || at + 1 >= line.tokens.size()) return false;
    const std::span<const Token> head(line.tokens.data(), at);
    if (!has_any_word(head, {"need", "materials", "material", "supplies", "yarn", "yarns", "tools"}))
        return false;
    const std::span<const Token> rest = std::span(line.tokens).subspan(at + 1);
    for (const YarnLine& yarn : lettered_yarns(rest)) name_yarn(yarn);
    if (const auto hook = hook_within(rest); hook && !state_.out.hook_mm) state_.out.hook_mm = *hook;
    std::string& notes = state_.out.notes;
    notes += (notes.empty() ? "" : "\n") + said(line.tokens);
    return show(ReadLineKind::materials, line, line.raw);
}

// The gauge fills the toy, and its line stays in the notes, since a maker words it in her own way.
bool PatternReader::take_gauge(const PatternLine& line) {
    const auto gauge = piece_ ? std::nullopt : gauge_line(line.tokens);
    if (!gauge || state_.out.gauge) return false;
    state_.out.gauge = *gauge;
    std::string& notes = state_.out.notes;
    notes += (notes.empty() ? "" : "\n") + said(line.tokens);
    return show(ReadLineKind::materials, line, line.raw);
}

void PatternReader::name_yarn(const YarnLine& yarn) {
    const auto index = static_cast<std::size_t>(yarn.yarn);
    auto& names = state_.yarns.names;
    if (names.size() <= index) names.resize(index + 1);
    names[index] = yarn.name;
}

bool PatternReader::take_title_line(const PatternLine& line) {
    const auto begins = [&](std::string_view first, std::string_view second) {
        return !piece_ && line.tokens.size() > 2 && line.tokens[0].is(first) && line.tokens[1].is(second);
    };
    if (begins("title", ":")) {
        state_.out.title = said_from(line, 2);
        return show(ReadLineKind::title, line, state_.out.title);
    }
    if (!begins("designed", "by") || !state_.out.designer.empty()) return false;
    state_.out.designer = said_from(line, 2);
    return show(ReadLineKind::title, line, line.raw);
}

bool PatternReader::show(ReadLineKind kind, const PatternLine& line, const std::string& text) {
    state_.show(kind, line, piece_ ? state_.piece_index() : -1, text);
    return true;
}

// Text becomes notes: of the piece it stands in, or of the toy when it stands before all pieces.
void PatternReader::add_notes(std::size_t count, bool ending) {
    if (count > 0) notes_.keep(waiting_.take(count), piece_ ? &*piece_ : nullptr, ending);
}

void PatternReader::report_terms(const FoundTerms& found) {
    if (found.guessed_from_ring || !(found.sure || is_english(found.terms)))
        state_.report({.code = ReadCode::terms_guessed,
                       .severity = Severity::note,
                       .where = TextSpan{1, 1, 0},
                       .arguments = {std::string(terms_code(state_.out.terms))}});
    std::vector<Argument> arguments{found.mixed_word};
    if (found.mixed_terms)
        arguments.insert(arguments.end(),
                         {std::string(terms_code(*found.mixed_terms)), std::string(terms_code(found.terms))});
    if (found.mixed)
        state_.report({.code = ReadCode::terms_mixed,
                       .severity = Severity::warning,
                       .where = *found.mixed,
                       .arguments = arguments});
}

}  // namespace roundwright
