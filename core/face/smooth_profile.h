#pragma once

#include <vector>

#include "core/base/vec.h"

namespace roundwright {

/// A smooth meridian through the loops of a piece: a cubic Hermite curve with Catmull-Rom tangents over chord
/// length, so that it passes every loop exactly and turns smoothly between them. At a pole it meets the axis
/// squarely.
class SmoothProfile {
  public:
    struct Sample {
        Vec2 point = Vec2::Zero();     ///< (radius, height), mm
        Vec2 tangent = Vec2::UnitX();  ///< derivative by the parameter; about unit length
        Vec2 bend = Vec2::Zero();      ///< second derivative, 1/mm
    };

    SmoothProfile() = default;
    SmoothProfile(std::vector<Vec2> loops, bool pole_first, bool pole_last);

    [[nodiscard]] bool empty() const { return loops_.size() < 2; }
    [[nodiscard]] int loops() const { return static_cast<int>(loops_.size()); }
    [[nodiscard]] double end() const { return empty() ? 0 : along_.back(); }
    [[nodiscard]] double along_of_loop(int loop) const { return along_[static_cast<std::size_t>(loop)]; }
    /// Parameters outside [0, end] are taken to the nearer end.
    [[nodiscard]] Sample at(double along) const;
    /// Length of the curve between two parameters.
    [[nodiscard]] double length_mm(double from, double to) const;

  private:
    std::vector<Vec2> loops_;
    std::vector<Vec2> tangents_;
    std::vector<double> along_;
};

}  // namespace roundwright
