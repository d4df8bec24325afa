#pragma once

#include <cstddef>
#include <optional>
#include <stop_token>

#include "core/gauge/gauge.h"
#include "core/reshape/carry_over.h"
#include "core/reshape/fit_rounds.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/fidelity.h"
#include "core/shape/shape_problem.h"
#include "core/shape/size_range.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

namespace roundwright {

/// A piece with its solved shape: what reshaping starts from, worked out once and used again and again. All
/// of it is about surfaces of revolution: a piece whose shape on show is another (`fidelity`) is refused,
/// since an outline of it would be of something else.
struct PieceForm {
    Piece piece;
    Gauge gauge;
    PieceGraph graph;
    ShapeProblem problem;
    Shape shape;
    Fidelity fidelity = Fidelity::round;  ///< of the shape on show, where the caller knows it

    /// Has rounds that can be worked, and a shape.
    [[nodiscard]] bool usable() const;
    [[nodiscard]] Size size() const { return {shape.width_mm, shape.height_mm}; }
    [[nodiscard]] Silhouette outline() const { return silhouette_of(shape, problem.last); }
};

/// What the errors of the gauge and of the stuffing leave open of its size, as a piece yet to be worked.
[[nodiscard]] SizeRange size_range(const PieceForm& form);

/// The gauge of a toy, or the usual one for its hook where the maker has given none.
[[nodiscard]] Gauge gauge_of(const Toy& toy);

/// `warm` (may be null): the shape of a similar piece.
[[nodiscard]] PieceForm piece_form(const Piece& piece, const Gauge& gauge, const Shape* warm = nullptr,
                                   std::stop_token stop = {});

/// What the counts of a piece are multiples of: the first round's of a piece worked into a ring; of another,
/// the change that most of its rounds make; 1 if there is none.
[[nodiscard]] int start_count(const Piece& piece, const StitchGraph& graph);

/// The task of cutting a profile into rounds that take the place of a piece's own, in another gauge
/// perhaps. The kinds of stitches, the ends and the stuffing are the piece's.
[[nodiscard]] FitProblem fit_problem(const PieceForm& form, StitchProfile profile, const Gauge& gauge);

/// What its fabric does already, which a new piece may do at the same height.
void set_own_fabric(const PieceForm& form, FitProblem& problem);

/// The piece that a fit makes of another, with all the maker said of it. The first `kept` rounds stay
/// untouched.
[[nodiscard]] CarriedOver carried_over(const PieceForm& old, const Fit& fit, std::size_t kept = 0);

/// The piece that a fit makes of another, with all the maker said of it, and its shape, solved from nothing
/// as any other program would solve it.
struct FittedPiece {
    PieceForm form;
    std::vector<int> rewritten;  ///< old rounds (from 0) whose words could not be kept
};
[[nodiscard]] FittedPiece fitted_piece(const PieceForm& old, const FitProblem& problem, const Fit& fit);

}  // namespace roundwright
