#pragma once

#include <optional>

#include "core/shape/shape_problem.h"

namespace roundwright {

struct PieceMeasures;

/// How wide the room inside a piece is at its widest, mm: its width, which is that of the middle of its
/// fabric, less the fabric. A piece that lies in two layers is measured as if it stood open. Nothing where it
/// is flat or no room is left.
[[nodiscard]] std::optional<double> inside_width_mm(const ShapeProblem& problem,
                                                    const PieceMeasures& measures, double fabric_mm);

/// The diameter of the largest ball that a piece fits over, mm: a bead, a ball to play with, an egg nearly.
/// Its fabric reaches around the ball with half of its thickness, and may be stretched until gaps show
/// (`gaps_above_stretch`), around and, where both ends are closed, from end to end as well. Nothing for a
/// piece open at both ends, or one that is not round.
[[nodiscard]] std::optional<double> largest_covered_ball_mm(const ShapeProblem& problem, double fabric_mm);

}  // namespace roundwright
