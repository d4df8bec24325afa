#include <utility>

#include "core/base/limits.h"
#include "core/language/pattern/pattern_reader.h"

// What PatternReader does with pieces that are worked like another one.

namespace roundwright {

bool PatternReader::take_likeness(const PatternLine& line) {
    if (!any_likeness_) return false;
    if (says_as_above(line.tokens) && waiting_.heading_weight() > 0 && !state_.names_of_pieces.empty()) {
        const int last = static_cast<int>(state_.names_of_pieces.size()) - 1;
        const bool rounds = last < state_.piece_index() || in_piece_with_rounds();
        return rounds && begin_like(line, Likeness{{}, {}, 0, line.tokens[0].where}, last);
    }
    const auto like = likeness_of(line.tokens);
    if (!like || (like->heading.empty() && waiting_.heading_weight() == 0)) return false;
    const int other = piece_called(like->other, state_.names_of_pieces);
    const bool begun = !state_.names_of_pieces.empty() || !like->heading.empty();
    if (other < 0) return begun && unknown_piece(line, *like);
    const Piece& piece =
        other < state_.piece_index() ? state_.out.pieces[static_cast<std::size_t>(other)] : piece_->piece();
    const auto rounds = static_cast<int>(piece.rounds.size());
    if (rounds == 0 || like->last_round > rounds) return false;
    return begin_like(line, *like, other);
}

// "Rnds 1-3: as for the head"
bool PatternReader::take_rounds_of_another(const PatternLine& line) {
    if (!any_likeness_ || line.numbers.size() != 1 || line.numbers.front().first != 1) return false;
    const std::string meant = piece_meant(line.tokens);
    const int other = meant.empty() ? -1 : piece_called(meant, state_.names_of_pieces);
    if (other < 0) return false;
    const Piece& piece =
        other < state_.piece_index() ? state_.out.pieces[static_cast<std::size_t>(other)] : piece_->piece();
    const int last = line.numbers.front().last;
    if (piece.rounds.empty() || last > static_cast<int>(piece.rounds.size())) return false;
    return begin_like(line, Likeness{{}, meant, last, line.header}, other);
}

bool PatternReader::unknown_piece(const PatternLine& line, const Likeness& like) {
    state_.report({.code = ReadCode::unknown_piece, .where = like.where, .arguments = {like.other}});
    waiting_.add(line, after_blank_, !piece_, true);
    return true;
}

bool PatternReader::begin_like(const PatternLine& line, const Likeness& like, int other) {
    const bool named_here = !like.heading.empty();
    end_piece(named_here ? waiting_.size() : waiting_.heading_at());
    add_notes(named_here ? waiting_.size() : waiting_.heading_at());
    if (state_.full) return false;
    if (state_.out.pieces.size() >= max_pieces) return too_many_pieces(line), false;
    if (!state_.room_in_text(line)) return false;
    const auto index = static_cast<std::size_t>(other);
    Piece piece = state_.out.pieces[index];
    const std::string name_of_other = piece.name;
    piece.make = 1;
    if (const auto heading = named_here ? heading_of(like.heading) : std::nullopt) {
        piece.name = heading->name;
        piece.make = made(*heading);
    } else {
        name(piece);
    }
    state_.names_of_pieces.push_back(name_words(piece.name));
    const ReadingState::WordsOfRounds words = state_.words_of_pieces[index];
    piece_.emplace(state_, standing_, std::move(piece), words);
    begin_edge();
    like_line_ = &line;
    piece_->show_likeness(line, name_of_other);
    if (like.last_round > 0) piece_->keep_rounds(like.last_round);
    return true;
}

// "Work as arms", and then round 5: rounds 1 to 4 are those of the arms. After round 1 nothing of them is.
void PatternReader::settle_likeness(const PatternLine& line) {
    const int number = line.numbers.empty() ? 0 : line.numbers.front().first;
    if (!piece_ || !piece_->only_like_another() || number == 0 || waiting_.heading_weight() >= set_off)
        return;
    if (number > 1) return piece_->keep_rounds(number - 1);
    const PatternLine& like = *std::exchange(like_line_, nullptr);
    state_.report({.code = ReadCode::line_not_understood,
                   .where = like.tokens[0].where,
                   .piece = state_.piece_index(),
                   .arguments = {shortened(like.raw)}});
    Piece piece;
    piece.name = piece_->piece().name;
    piece.make = piece_->piece().make;
    piece.start = find_start(line);
    piece_->unread_likeness();
    piece_.emplace(state_, standing_, std::move(piece), line);
}

}  // namespace roundwright
