#pragma once

#include <set>

#include "core/rounds/piece_graph.h"
#include "core/toy/toy.h"
#include "render/wording/pattern/technique.h"

namespace roundwright::render {

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
