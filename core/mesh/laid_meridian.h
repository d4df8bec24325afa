#pragma once

#include <optional>
#include <vector>

#include "core/base/vec.h"
#include "core/shape/solve_shape.h"
#include "core/stitches/stitch_layout.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Waves of a loop across the surface: `amplitude_mm` * cos(`waves` * angle) along the normal.
struct LoopWaves {
    int waves = 0;
    double amplitude_mm = 0;
};

/// One loop of a surface of revolution, or of a flattened piece.
struct LaidLoop {
    double radius_mm = 0;
    double z_mm = 0;
    Vec2 normal = Vec2::UnitX();  ///< outward, (radial, z); the mean of the two rounds' beside it
    double mean_curvature =
        0;                   ///< 1/mm; half the sum of the curvatures around the axis and along the meridian
    double start_angle = 0;  ///< of its first stitch's first side; work goes to smaller angles
    double loops = 1;        ///< stitches around it
    LoopWaves waves;
    std::optional<LoopSection> section;  ///< how it lies where it is no circle

    [[nodiscard]] double angle(double loops_along) const;
};

/// Loops of a piece from the edge below its first round to the edge above its last, and the poles where the
/// fans of its closed ends meet the axis. Of a magic ring the pole is loop 0 itself; the fan of a seam sewn
/// straight lies in the narrow slit between its layers.
struct LaidMeridian {
    std::vector<LaidLoop> loops;  ///< rounds + 1
    std::optional<LaidLoop> pole_below;
    std::optional<LaidLoop> pole_above;

    [[nodiscard]] bool starts_in_a_point() const { return loops.front().radius_mm == 0; }
    [[nodiscard]] bool closed_below() const { return starts_in_a_point() || pole_below.has_value(); }
    [[nodiscard]] bool closed_above() const { return pole_above.has_value(); }
};

/// The meridian of a solved shape whose rounds are laid as `rounds`. The first round starts at the back.
/// Every round is turned so that its stitches stand, on the whole, over those they are worked into, but for
/// the slight lean that single crochet has: a little to the right with each round.
[[nodiscard]] LaidMeridian lay_meridian(const std::vector<LaidRound>& rounds, const Piece& piece,
                                        const Shape& shape, const std::vector<LoopWaves>& waves);

/// The waves that carry the spare length of each loop, made to agree: neighbouring loops with waves get the
/// number of the one with most length to spare, and an amplitude that keeps each loop's own length (the
/// length of a sine around a circle depends on amplitude * waves / radius only), but half the radius at most,
/// beyond which the waves would meet. Waves too short for `stitches[i]` stitches are left out.
[[nodiscard]] std::vector<LoopWaves> agreeing_waves(std::vector<LoopWaves> waves,
                                                    const std::vector<double>& radius_mm,
                                                    const std::vector<double>& stitches);

}  // namespace roundwright
