#pragma once

#include <stop_token>
#include <vector>

#include "core/checks/check.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/lie.h"
#include "core/shape/size_range.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Everything computed from one piece of a toy, but for its mesh: what the editor shows and the command line
/// prints.
struct PieceStudy {
    PieceGraph graph;
    Gauge gauge;              ///< the one used
    bool gauge_known = true;  ///< false: the maker has given none, and a usual one for the hook stands in
    ShapeProblem problem;
    Shape shape;
    SizeRange size;  ///< what the errors of gauge and stuffing leave open; the size itself where the shape
                     ///< did not converge
    std::vector<RoundLie> lies;  ///< one a round
    std::vector<Check> checks;
};

/// `warm` (may be null): the study of the piece before an edit. `graph` (may be null): of the piece, where it
/// is known.
[[nodiscard]] PieceStudy study_piece(const Toy& toy, std::size_t piece, const PieceStudy* warm = nullptr,
                                     std::stop_token stop = {}, const SharedGraph* graph = nullptr);

}  // namespace roundwright
