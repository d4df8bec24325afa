#pragma once

#include <Eigen/Geometry>
#include <span>
#include <vector>

#include "core/base/vec.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// A surface in the toy's frame, moved by `shift`, mm.
struct ShiftedSurface {
    const StitchSurface* surface = nullptr;
    Vec3 shift = Vec3::Zero();
};

/// Several surfaces as one, whose rounds are numbered on from each to the next.
struct OneSurface {
    StitchSurface surface;
    std::vector<int> first_round;  ///< of each of them, and at the end how many rounds there are

    /// Which of them a round of the whole belongs to; `first_round[part]` is its round 0.
    [[nodiscard]] int part_of(int round) const;
};
/// `pose`: a turn and a shift of the whole, after the parts were moved.
[[nodiscard]] OneSurface one_surface(std::span<const ShiftedSurface> parts,
                                     const Eigen::Isometry3d& pose = Eigen::Isometry3d::Identity());

}  // namespace roundwright
