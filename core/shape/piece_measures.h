#pragma once

#include <cstddef>
#include <vector>

#include "core/shape/fidelity.h"
#include "core/shape/termination.h"

namespace roundwright {

/// The loop that a round leaves, as it lies in the finished piece.
struct LoopMeasures {
    double width_mm = 0;        ///< from side to side
    double depth_mm = 0;        ///< from front to back
    double height_mm = 0;       ///< of its middle, above the lowest point of the piece
    double radius_mm = 0;       ///< of the circle that is as long as the loop
    double course_stretch = 0;  ///< its length over the relaxed one, less 1; below 0 it has length to spare
    double wale_stretch = 0;    ///< of the round that it ends, from loop to loop; 0 for the start's own

    [[nodiscard]] double length_mm() const;

    friend bool operator==(const LoopMeasures&, const LoopMeasures&) = default;
};

/// What can be measured on the shape of a piece, whichever solver found it. Whoever checks, plots, says,
/// prints or compares a piece reads this.
struct PieceMeasures {
    Fidelity fidelity = Fidelity::round;
    Termination termination = Termination::unusable_problem;
    bool flattened = false;  ///< it lies in two layers, front and back, as a whole or towards its seam
    double width_mm = 0;     ///< largest, from side to side; of a flattened piece from fold to fold
    double depth_mm = 0;     ///< from front to back; of a limp piece its two layers' thickness
    double height_mm = 0;
    double volume_mm3 = 0;            ///< inside the middle of its fabric
    double surface_mm2 = 0;           ///< of the fabric: open ends do not count
    double area_stretch = 0;          ///< mean, as reached
    std::vector<LoopMeasures> loops;  ///< rounds + 1: the start's, then the one that each round leaves; none
                                      ///< where there is no shape

    [[nodiscard]] bool usable() const { return !loops.empty(); }
    [[nodiscard]] bool converged() const { return termination == Termination::converged; }
    [[nodiscard]] std::size_t rounds() const { return loops.empty() ? 0 : loops.size() - 1; }
    /// The loop that round `i` (from 0) leaves.
    [[nodiscard]] const LoopMeasures& round(std::size_t i) const { return loops[i + 1]; }

    friend bool operator==(const PieceMeasures&, const PieceMeasures&) = default;
};

/// The first of the widest loops, 0 being the start's; 0 where there is none.
[[nodiscard]] std::size_t widest_loop(const PieceMeasures& measures);

}  // namespace roundwright
