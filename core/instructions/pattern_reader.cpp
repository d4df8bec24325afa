#include "core/instructions/pattern_reader.h"

#include <algorithm>
#include <utility>

#include "core/base/limits.h"
#include "core/instructions/token_cursor.h"
#include "core/instructions/write.h"

namespace roundwright {
namespace {

// "Change to white.", "With grey yarn:"; -1 when stitches are made too.
int only_names_yarn(const ReadRound& read) {
    if (read.syntax.nodes.size() != 1 || has_code(read, ReadCode::unknown_words) || read.stated) return -1;
    const auto* change = std::get_if<YarnChange>(&read.syntax.nodes[0].what);
    return change == nullptr ? -1 : change->yarn;
}

// "sc = single crochet", "inc: 2 sc in next st", "MR - magic ring": what an abbreviation means.
bool is_definition(const std::vector<Token>& tokens, Terms terms) {
    const auto name = match_name(tokens, terms);
    const std::size_t at = name ? static_cast<std::size_t>(name->length) : 1;
    if (at >= tokens.size()) return name.has_value();
    if (tokens[at].is("=")) return true;
    if (!tokens[at].is(":") && !(tokens[at].is("-") && tokens[at].spaced)) return false;
    const bool numbers =
        std::any_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.kind == TokenKind::number; });
    return name ? !has_count(tokens) : !numbers;
}

bool words_known(const ReadRound& read) {
    return !has_code(read, ReadCode::unknown_words) && !read.syntax.nodes.empty();
}

std::string said_from(const PatternLine& line, std::size_t from) {
    return said(std::span(line.tokens).subspan(from));
}

std::string note_text(const PatternLine& line) {
    const bool marked = line.tokens.size() > 1 && line.tokens[0].is("note") && line.tokens[1].is(":");
    return said_from(line, marked ? 2 : 0);
}

void add_line(std::string& text, const std::string& line) {
    if (!text.empty() && !line.empty()) text += '\n';
    text += line;
}

}  // namespace

PatternReader::PatternReader(const LexedText& text, const ReadOptions& options) {
    const FoundTerms found = find_terms(text.lines());
    state_.out.terms = options.terms.value_or(found.terms);
    state_.out.terms_sure = options.terms.has_value() || found.sure;
    state_.yarns.names = options.yarn_names;
    state_.yarns.first_is_free = true;
    lines_ = pattern_lines(text, state_.out.terms, joined_);
    if (!options.terms) report_terms(found);
    if (text.not_utf8())
        state_.report({.code = ReadCode::not_utf8, .severity = Severity::warning, .where = *text.not_utf8()});
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
    if (out.pieces.empty()) state_.report({.code = ReadCode::no_rounds, .where = TextSpan{1, 1, 0}});
    std::stable_sort(out.lines.begin(), out.lines.end(),
                     [](const ReadLine& x, const ReadLine& y) { return x.first_line < y.first_line; });
    std::stable_sort(
        out.diagnostics.begin(), out.diagnostics.end(), [](const ReadDiagnostic& x, const ReadDiagnostic& y) {
            return std::pair(x.where.line, x.where.column) < std::pair(y.where.line, y.where.column);
        });
    return std::move(out);
}

// --- what a line is

void PatternReader::take(const PatternLine& line) {
    if (line.kind == LineKind::blank) return;
    if (line.kind == LineKind::round && line.header.length > 0) return take_round(line);
    const bool works = line.kind != LineKind::text && !waiting_.in_section();
    if (!works || !take_work(line)) take_text(line);
}

// A line of stitches without a number: a start, a whole round of a pattern that numbers none, or a note.
bool PatternReader::take_work(const PatternLine& line) {
    constexpr std::size_t longest = 400;
    if (line.tokens.size() > longest || is_definition(line.tokens, state_.out.terms)) return false;
    YarnTable yarns = state_.yarns;
    const ReadRound read = standing_.try_read(line.tokens, yarns);
    if (auto said = may_start() ? said_start(line, read) : std::nullopt) {
        start_ = std::move(said);
        return true;
    }
    if (const int yarn = only_names_yarn(read); yarn >= 0) return take_yarn(line, yarn, yarns);
    if (!is_round(line, read)) {
        pass_over(line, read);
        return false;
    }
    if (read.syntax.into_ring && in_piece_with_rounds()) end_piece(waiting_.heading_at());
    take_round(line);
    return true;
}

bool PatternReader::is_round(const PatternLine& line, const ReadRound& read) const {
    const bool known = words_known(read);
    const bool numbered = piece_ && piece_->numbered();
    if (start_ || !piece_) return known && (start_ || read.syntax.into_ring || read.syntax.foundation > 0);
    if (known && read.syntax.into_ring && (!numbered || !waiting_.empty())) return true;
    if (known && read.proved() && read.syntax.rounds > 1) return true;
    return !numbered && ((known && read.proved()) || read.stated || line.counted);
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

// Stitches that would come out, in a pattern that numbers its rounds, are told of.
void PatternReader::pass_over(const PatternLine& line, const ReadRound& read) {
    const bool left_out =
        piece_ && read.proved() && !has_code(read, ReadCode::unknown_words) && !read.made.stitches.empty();
    if (left_out)
        state_.report({.code = ReadCode::line_not_understood,
                       .severity = Severity::note,
                       .where = line.tokens[0].where,
                       .piece = state_.piece_index(),
                       .arguments = {line.raw}});
}

// --- rounds and pieces

void PatternReader::take_round(const PatternLine& line) {
    if (state_.full) return;
    waiting_.end_section();
    const int number = line.numbers.empty() ? 0 : line.numbers.front().first;
    if (in_piece_with_rounds() && (number == 1 || (start_ && number == 0))) end_piece(waiting_.heading_at());
    if (!piece_ && state_.out.pieces.size() >= max_pieces) return too_many_pieces(line);
    if (!piece_)
        begin_piece(line);
    else if (const auto start = std::exchange(start_, std::nullopt))
        add_note(*start->line);  // a chain that no first round follows was a note
    if (next_yarn_ >= 0) standing_.set_yarn(std::exchange(next_yarn_, -1));
    add_notes(waiting_.size());
    piece_->add(line);
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
    if (const auto start = std::exchange(start_, std::nullopt))
        state_.show(ReadLineKind::start, *start->line, state_.piece_index(),
                    start_words(piece, state_.out.terms));
    piece_.emplace(state_, standing_, std::move(piece), line);
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
    state_.out.pieces.push_back(piece_->finish());
    piece_.reset();
}

// --- text: yarns, hook, terms, titles, notes

void PatternReader::take_text(const PatternLine& line) {
    if (line.tokens.empty() || take_meta(line)) return;
    waiting_.add(line, after_blank_, !piece_);
}

bool PatternReader::take_meta(const PatternLine& line) {
    if (take_yarn_name(line)) return true;
    if (const auto hook = hook_line(line.tokens); hook && !piece_) {
        state_.out.hook_mm = *hook;
        return show(ReadLineKind::note, line, line.raw);
    }
    const bool terms =
        line.tokens.size() <= 6 && has_any_word(line.tokens, {"us", "uk"}) && has_word(line.tokens, "terms");
    if (terms) return show(ReadLineKind::terms, line, line.raw);
    return take_title_line(line);
}

bool PatternReader::take_yarn_name(const PatternLine& line) {
    const auto yarn = yarn_line(line.tokens);
    if (!yarn || yarn->name.empty()) return false;
    const auto index = static_cast<std::size_t>(yarn->yarn);
    auto& names = state_.yarns.names;
    if (names.size() <= index) names.resize(index + 1);
    names[index] = yarn->name;
    return show(ReadLineKind::yarn, line, yarn->name);
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
    for (const PatternLine* line : waiting_.take(count)) add_note(*line, ending);
}

void PatternReader::add_note(const PatternLine& line, bool ending) {
    const std::string text = note_text(line);
    show(ReadLineKind::note, line, text);
    const NoteMeaning meaning = meaning_of_note(line.tokens);
    if (piece_) piece_->hear(meaning);
    // In between rounds it matters where stuffing and fastening off are said.
    const bool anywhere = ending || meaning.eyes || (piece_ && piece_->piece().rounds.empty());
    if (piece_ && anywhere && says_only(meaning, text, state_.out.terms)) return;
    auto& pieces = state_.out.pieces;
    if (in_piece_with_rounds())
        add_line(piece_->last_note(), text);
    else if (!piece_ && !pieces.empty() && !pieces.back().rounds.empty())
        add_line(pieces.back().rounds.back().note, text);
    else
        add_line(state_.out.notes, text);
}

void PatternReader::report_terms(const FoundTerms& found) {
    if (found.guessed_from_ring)
        state_.report({.code = ReadCode::terms_guessed,
                       .severity = Severity::note,
                       .where = TextSpan{1, 1, 0},
                       .arguments = {std::string(state_.out.terms == Terms::us ? "us" : "uk")}});
    if (found.mixed)
        state_.report({.code = ReadCode::terms_mixed,
                       .severity = Severity::warning,
                       .where = *found.mixed,
                       .arguments = {found.mixed_word}});
}

}  // namespace roundwright
