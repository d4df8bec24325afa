#pragma once

#include <vector>

#include "core/assembly/fabric_profile.h"

namespace roundwright {

/// How a piece bends over at one of its ends, so that the edge lies where it is sewn: what is added to its
/// rigid placing. The shift of the edge's points is taken along by the rounds near it, evenly less up to a
/// diameter of the edge away, (1 - t)^2 (1 + 2 t) at a share t of that; inside the edge, as in a flat piece,
/// the part that differs around it vanishes at the axis.
class EdgeBend {
  public:
    /// `edge`: points around the end, in the frame of the piece (`edge_points`); `shifts`: what each of them
    /// is moved by, in the toy's.
    EdgeBend(const SolvedPiece& piece, JoinedEnd end, std::vector<Vec3> edge, std::vector<Vec3> shifts);

    /// What is added to a point of the piece, given in its own frame.
    [[nodiscard]] Vec3 shift(const Vec3& point) const;
    [[nodiscard]] double reach_mm() const { return reach_mm_; }

    /// The same with its derivative by the point. Of a flattened edge by differences.
    struct Shift {
        Vec3 by = Vec3::Zero();
        Eigen::Matrix3d derivative = Eigen::Matrix3d::Zero();
    };
    [[nodiscard]] Shift shift_with_derivative(const Vec3& point) const;

    friend bool operator==(const EdgeBend&, const EdgeBend&) = default;

  private:
    [[nodiscard]] double distance_mm(const Vec3& point) const;
    [[nodiscard]] Shift around(const Vec3& point) const;
    [[nodiscard]] Shift by_differences(const Vec3& point) const;
    [[nodiscard]] Vec3 of_nearest(const Vec3& point) const;

    FabricProfile profile_;   ///< from the edge on, as far as it reaches
    std::vector<Vec3> edge_;  ///< of a flattened piece; else none
    std::vector<Vec3> shifts_;
    Vec3 mean_ = Vec3::Zero();
    double radius_mm_ = 0;
    double reach_mm_ = 0;
    double first_angle_ = 0;  ///< of the first point, about the axis
};

}  // namespace roundwright
