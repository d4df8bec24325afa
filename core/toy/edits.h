#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright {

/// Edits as functions from one value to the next. Rounds, pieces and yarns count from 0. A list of rounds may
/// be in any order and hold one twice; numbers that are not there are passed over.

enum class EditRefusal {
    too_many_rounds,    ///< the piece would be over max_rounds_per_piece
    too_many_pieces,    ///< the toy would be over max_pieces
    too_many_stitches,  ///< a round would be over max_stitches_per_piece
    too_many_joins      ///< the toy would be over max_joins
};

/// The edited value, or, where an edit is refused, the value as it was.
template <class Value>
struct Edited {
    Value value;
    std::optional<EditRefusal> refusal = std::nullopt;
};

/// Puts rounds in before round `at`; at the end where `at` is beyond it.
[[nodiscard]] Edited<Piece> insert_rounds(const Piece& piece, std::size_t at, std::span<const Round> rounds);
/// Puts rounds in the place of `replaced` rounds from `first` on; what a check's cure does.
[[nodiscard]] Edited<Piece> replace_rounds(const Piece& piece, std::size_t first, std::size_t replaced,
                                           std::span<const Round> rounds);
[[nodiscard]] Piece remove_rounds(const Piece& piece, std::span<const int> rounds);
/// Puts copies of the rounds, in their order, after the last of them.
[[nodiscard]] Edited<Piece> duplicate_rounds(const Piece& piece, std::span<const int> rounds);
/// Moves rounds one place earlier (-1) or later (+1). Where the first (or last) of them is at the end
/// already, those that are packed against it stay.
[[nodiscard]] Piece move_rounds(const Piece& piece, std::span<const int> rounds, int by);

/// Works the rounds evenly with this count (at least 1), keeping stitch, yarn, mark and note.
[[nodiscard]] Edited<Piece> set_counts(const Piece& piece, std::span<const int> rounds, int stitches);
/// Sets each round's count to that of the round below, as edited, plus `change` (at least 1), so that +6 over
/// four rounds grows by 24. `edge` has the stitches below the first round and after each round (rounds + 1
/// numbers): it tells the counts of written rounds.
[[nodiscard]] Edited<Piece> change_counts(const Piece& piece, std::span<const int> rounds, int change,
                                          std::span<const int> edge);

[[nodiscard]] Edited<Toy> insert_piece(const Toy& toy, std::size_t at, const Piece& piece);
/// With the joins of the piece, its own and those onto it.
[[nodiscard]] Toy remove_piece(const Toy& toy, std::size_t piece);
/// Moves a piece to the place `to`, counted after it was taken out.
[[nodiscard]] Toy move_piece(const Toy& toy, std::size_t piece, std::size_t to);

/// Yarns are named by their place, so every edit of the list takes the rounds with it.
[[nodiscard]] Toy insert_yarn(const Toy& toy, std::size_t at, const Yarn& yarn);
/// Rounds in the removed yarn go on in `instead` (as counted before the edit), or, where that is the removed
/// one, in the first that is left.
[[nodiscard]] Toy remove_yarn(const Toy& toy, std::size_t yarn, std::size_t instead);
[[nodiscard]] Toy move_yarn(const Toy& toy, std::size_t yarn, std::size_t to);

}  // namespace roundwright
