#pragma once

#include <vector>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// The loops of a piece as a profile, radius over height, measured along the fabric from one of its ends.
class FabricProfile {
  public:
    FabricProfile() = default;
    /// As far as the first loop that is at least `reach_mm` away.
    FabricProfile(const SolvedPiece& piece, JoinedEnd from, double reach_mm);

    struct Spot {
        double distance_mm = 0;     ///< from the end, along the fabric
        double outwards_mm = 0;     ///< off the fabric
        Vec2 along = Vec2::Zero();  ///< by how much the distance grows with the point's radius and height
    };
    /// The spot nearest to a point in the frame of the piece.
    [[nodiscard]] Spot nearest(const Vec3& point) const;
    /// Of the end itself.
    [[nodiscard]] double height_mm() const { return levels_.empty() ? 0 : levels_.front().height; }
    [[nodiscard]] double length_mm() const { return levels_.empty() ? 0 : levels_.back().distance; }

    friend bool operator==(const FabricProfile&, const FabricProfile&) = default;

  private:
    struct Level {
        double radius = 0, height = 0, distance = 0;
        friend bool operator==(const Level&, const Level&) = default;
    };
    std::vector<Level> levels_;
    double outwards_ = 1;  ///< to the right of the way
};

}  // namespace roundwright
