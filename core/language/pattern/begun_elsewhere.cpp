#include <algorithm>
#include <utility>

#include "core/language/pattern/odd_rounds.h"
#include "core/language/pattern/pattern_reader.h"
#include "core/language/round/token_cursor.h"

// What PatternReader does with rounds that are worked on other pieces, in loops that were left, or through
// both layers of a piece.

namespace roundwright {
namespace {

constexpr std::size_t furthest = 40;  // lines that are looked at ahead

}  // namespace

PatternLine& PatternReader::own(const PatternLine& line) {
    return lines_[static_cast<std::size_t>(&line - lines_.data())];
}

// The edge of the piece on the hook changes with every round.
std::span<const NamedEdge> PatternReader::edges() {
    if (piece_) edges_.back().loops = standing_.below().loops;
    return edges_;
}

// The last few pieces are enough.
void PatternReader::begin_edge() {
    constexpr std::size_t most = 20;
    if (edges_.size() == most) edges_.erase(edges_.begin());
    const bool named = piece_->piece().name != "Piece " + std::to_string(state_.piece_index() + 1);
    edges_.push_back(named_edge(named ? piece_->piece().name : std::string(), 0));
}

// --- legs that are joined

// The round begins a piece of its own, on the edges of those before.
bool PatternReader::begins_on_edges(const PatternLine& line) {
    if (state_.out.pieces.empty() && !in_piece_with_rounds()) return false;
    const auto* said = start_ && start_->worked_on ? &*start_->worked_on : nullptr;
    const auto on = joined_edges(line.tokens, edges(), said != nullptr ? said->chains_between : 0, joined_);
    if (!on && said == nullptr) return false;
    if (!on) return in_piece_with_rounds() && (end_piece(waiting_.heading_at()), true);
    if (in_piece_with_rounds()) end_piece(waiting_.heading_at());
    const PatternLine* start_line = start_ ? start_->line : &line;
    own(line).tokens = on->words;
    start_ = SaidStart{.line = start_line,
                       .ring = {},
                       .worked_on = WorkedOn{.stitches = on->stitches(), .chains_between = on->chains}};
    return true;
}

// "Ch 3 and join to the first leg."
bool PatternReader::take_joining(const PatternLine& line) {
    if (line.header.length > 0 || is_marked_note(line.tokens)) return false;
    if (state_.out.pieces.empty() && !in_piece_with_rounds()) return false;
    const auto said = said_joining(line.tokens, edges());
    if (!said || line.counted) return false;
    if (start_) waiting_.add(*start_->line, after_blank_, !piece_);
    start_ = SaidStart{
        .line = &line,
        .ring = {},
        .worked_on = WorkedOn{.stitches = said->loops + 2 * said->chains, .chains_between = said->chains}};
    return true;
}

// --- a second one by a sentence

// "Make a second leg, but do not fasten off.": the line stays a note.
void PatternReader::hear_second(const PatternLine& line) {
    constexpr std::size_t longest = 20;
    if (!in_piece_with_rounds() || is_marked_note(line.tokens) || line.tokens.size() > longest ||
        piece_->piece().make != 1)
        return;
    if (!has_any_word(line.tokens, {"make", "repeat", "work", "crochet"})) return;
    const NameWords name = name_words(piece_->piece().name);
    for (std::size_t at = 0; at + 1 < line.tokens.size(); ++at) {
        const Token& token = line.tokens[at];
        const bool second = token.is("another") || token.is("other") ||
                            (token.kind == TokenKind::ordinal && token.number == 2);
        if (!second) continue;
        const NameWords next = name_words(line.tokens[at + 1].text);
        const bool named = !next.empty() && std::find(name.begin(), name.end(), next[0]) != name.end();
        if (named || next == NameWords{"one"}) return piece_->make_two();
    }
}

// --- loops that were left

int PatternReader::loops_of_round(int number) const {
    const std::vector<int>& loops = in_piece_with_rounds() ? piece_->loops_of_rounds() : loops_of_last_piece_;
    if (number < 1 || number > static_cast<int>(loops.size())) return 0;
    return loops[static_cast<std::size_t>(number) - 1];
}

void PatternReader::tell_left_loops(const PatternLine& line, int loops) {
    state_.report({.code = ReadCode::loops_left_over,
                   .severity = Severity::warning,
                   .where = line.tokens[0].where,
                   .piece = state_.piece_index() + (in_piece_with_rounds() ? 1 : 0),
                   .found = loops,
                   .arguments = {said(line.tokens)}});
}

// "Join yarn to a free front loop of round 3."
bool PatternReader::take_left_loops(const PatternLine& line) {
    if (line.header.length > 0 || is_marked_note(line.tokens)) return false;
    if (!has_any_word(line.tokens, {"join", "attach", "working", "rejoin", "insert"})) return false;
    const auto left = left_loops(line.tokens);
    const int loops = left ? loops_of_round(left->round) : 0;
    const bool works = left && std::any_of(left->words.begin(), left->words.end(), [](const Token& token) {
                           return token.kind == TokenKind::number || is_opener(token);
                       });
    if (loops == 0 || works) return false;
    tell_left_loops(line, loops);
    if (start_) waiting_.add(*start_->line, after_blank_, !piece_);
    start_ = SaidStart{.line = &line, .chains = loops, .ring = {}};
    return true;
}

bool PatternReader::begins_in_left_loops(const PatternLine& line) {
    const auto left = left_loops(line.tokens);
    const int loops = left && in_piece_with_rounds() ? loops_of_round(left->round) : 0;
    // In loops of the round just worked, it is a round like any other.
    if (loops == 0 || left->words.empty() || left->round + 1 == piece_->next_number()) return false;
    tell_left_loops(line, loops);
    end_piece(waiting_.heading_at());
    own(line).tokens = left->words;
    start_ = SaidStart{.line = &line, .chains = loops, .ring = {}};
    return true;
}

// --- through both layers

// No round follows on a row that closes the piece flat.
bool PatternReader::take_closing_row(const PatternLine& line) {
    if (!in_piece_with_rounds() || line.rounds > 1 || !closes_flat(line.tokens)) return false;
    const int number = line.numbers.empty() ? 0 : line.numbers.front().first;
    const auto at = static_cast<std::size_t>(&line - lines_.data()) + 1;
    const auto after = std::span(lines_).subspan(at);
    for (const PatternLine& next : after.first(std::min(after.size(), furthest))) {
        if (next.kind == LineKind::text && next.heading_level > 0) break;
        if (next.kind != LineKind::round || next.numbers.empty()) continue;
        if (number > 0 && next.numbers.front().first == number + 1) return false;
        break;
    }
    state_.report({.code = ReadCode::closed_flat,
                   .severity = Severity::note,
                   .where = line.tokens[0].where,
                   .piece = state_.piece_index(),
                   .round = static_cast<int>(piece_->piece().rounds.size()) - 1,
                   .found = standing_.below().loops / 2});
    add_notes(waiting_.size());
    NoteMeaning end;
    end.end = End::sewn_straight;
    piece_->hear(end);
    const std::string words = said(line.tokens);
    std::string& note = piece_->last_note();
    note += (note.empty() ? "" : "\n") + words;
    state_.show(ReadLineKind::note, line, state_.piece_index(), words);
    return true;
}

}  // namespace roundwright
