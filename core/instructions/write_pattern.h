#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/instructions/piece_graph.h"
#include "core/instructions/terms.h"
#include "core/pattern/toy.h"

namespace roundwright {

/// Rounds of a piece that are written as one: the same words, the same count, nothing said besides.
struct WrittenRounds {
    int first = 0;  ///< from 0
    int last = 0;
    std::string words;
    int stitches = 0;  ///< when each of them is done
    int yarn = 0;      ///< worked in, or begun with when the words change it
};
[[nodiscard]] std::vector<WrittenRounds> written_rounds(const Piece& piece, const PieceGraph& graph,
                                                        Terms terms);

/// A piece as plain text: heading, start, rounds with their counts at the end, notes, and how it ends.
/// Reading it gives the same stitches. Lines end in "\n".
[[nodiscard]] std::string write_piece(const Piece& piece, Terms terms);

/// A whole toy: title, terms, hook and yarns, then its pieces.
[[nodiscard]] std::string write_toy(const Toy& toy, Terms terms);

/// Rounds (from 0) that are not one group repeated without a rest, and so cannot be written as "[ ... ] x n".
/// Rounds worked into a ring, and partial ones, are not among them.
[[nodiscard]] std::vector<int> rounds_not_repeatable(const StitchGraph& graph);

}  // namespace roundwright
