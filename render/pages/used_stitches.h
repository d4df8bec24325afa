#pragma once

#include <set>

#include "core/rounds/piece_graph.h"
#include "core/toy/toy.h"

namespace roundwright::render {

/// Ways of working that a pattern may explain.
enum class Technique {
    magic_ring,
    chain,
    foundation_ring,
    oval_start,
    slip_stitch,
    single_crochet,
    half_double_crochet,
    double_crochet,
    treble_crochet,
    bobble,
    skip,
    increase,
    decrease,
    invisible_decrease,
    together,  ///< other stitches worked together
    front_loop,
    back_loop,
    change_yarn,
    draw_closed,
    fasten_off,
    sew_straight,
};

/// Where a technique is met first.
struct FirstUse {
    std::size_t piece = 0;
    int round = -1;  ///< from 0; -1 before the first round; the number of rounds after the last
};

/// The techniques a toy uses, in the order they are met.
struct UsedTechnique {
    Technique technique;
    FirstUse first;
};
[[nodiscard]] std::vector<UsedTechnique> used_techniques(const Toy& toy,
                                                         const std::vector<const PieceGraph*>& graphs);

}  // namespace roundwright::render
