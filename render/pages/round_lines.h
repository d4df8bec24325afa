#pragma once

#include <string>
#include <vector>

#include "core/instructions/piece_graph.h"
#include "core/instructions/terms.h"
#include "core/pattern/toy.h"

namespace roundwright::render {

/// One line of a written pattern: a round, or several equal ones in a row.
struct RoundLine {
    int first = 0;  ///< round, from 0
    int last = 0;
    std::string words;
    int stitches = 0;       ///< when the round is done
    std::size_t yarn = 0;   ///< the round's own
    bool new_yarn = false;  ///< not the yarn of the round before (never set for the first round)
    bool several_yarns = false;
    std::string note;
    bool does_not_fit = false;  ///< named in the graph's problems

    [[nodiscard]] int rounds() const { return last - first + 1; }
};

/// The rounds of a piece as lines. Equal rounds (same words, count, yarn, and no note of their own) become
/// one line, but a line ends after each round named in `break_after`.
[[nodiscard]] std::vector<RoundLine> round_lines(const Piece& piece, const PieceGraph& graph, Terms terms,
                                                 const std::vector<int>& break_after = {});

}  // namespace roundwright::render
