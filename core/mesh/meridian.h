#pragma once

#include <vector>

#include "core/base/vec.h"
#include "core/mesh/stitch_layout.h"
#include "core/pattern/toy.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// Waves of a loop across the surface: `amplitude_mm` * cos(`waves` * angle) along the normal.
struct LoopWaves {
    int waves = 0;
    double amplitude_mm = 0;
};

/// One loop of a surface of revolution.
struct MeridianLoop {
    double radius_mm = 0;
    double z_mm = 0;
    Vec2 normal = Vec2::UnitX();  ///< outward, (radial, z); the mean of the two rounds' beside it
    double start_angle = 0;       ///< of its first stitch's first side; work goes to smaller angles
    double loops = 1;             ///< stitches around it
    LoopWaves waves;

    [[nodiscard]] double angle(double loops_along) const;
};

/// Loops of a piece from the edge below its first round to the edge above its last, and a pole beyond it
/// where it is drawn closed.
struct Meridian {
    std::vector<MeridianLoop> loops;  ///< rounds + 1, and one for the apex if `closed_above`
    bool closed_below = false;
    bool closed_above = false;
};

/// A point of the surface in the mesh's axes (x right, y up, z to the viewer), from its angle about the axis
/// (0: the front, growing to the right), radius and height.
[[nodiscard]] Vec3 revolved(double angle, double radius_mm, double z_mm);

/// The meridian of a solved shape whose rounds are laid as `rounds`. The first round starts at the back.
/// Every round is turned so that its stitches stand, on the whole, over those they are worked into, but for
/// the slight lean that single crochet has: a little to the right with each round.
[[nodiscard]] Meridian lay_meridian(const std::vector<LaidRound>& rounds, const Piece& piece,
                                    const Shape& shape, const std::vector<LoopWaves>& waves);

/// The waves that carry the spare length of each loop, made to agree: neighbouring loops with waves get the
/// number of the one with most length to spare, and an amplitude that keeps each loop's own length (the
/// length of a sine around a circle depends on amplitude * waves / radius only). Waves too short for
/// `stitches[i]` stitches are left out.
[[nodiscard]] std::vector<LoopWaves> agreeing_waves(std::vector<LoopWaves> waves,
                                                    const std::vector<double>& radius_mm,
                                                    const std::vector<double>& stitches);

}  // namespace roundwright
