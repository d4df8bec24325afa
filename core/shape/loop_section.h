#pragma once

#include "core/base/vec.h"

namespace roundwright {

/// The curve that the loop of a flattened piece lies in. Seen along the piece it is a stadium: a straight
/// side to the front and one to the back, joined by half circles. The half depth is that of the half circles;
/// equal to the half width it is a circle. In the plane of the layers the whole curve may be bent, as the
/// rounds of a disc are that was folded in half.
struct LoopSection {
    double half_width_mm = 0;  ///< along the layer, from its middle to the fold
    double half_depth_mm = 0;  ///< from the middle between the layers to the middle of each
    double bend = 0;  ///< radians by which the layer's line turns from fold to fold; positive: its ends droop

    /// 1/mm
    [[nodiscard]] double curvature() const { return half_width_mm > 0 ? bend / (2 * half_width_mm) : 0; }
    /// Around the curve, mm.
    [[nodiscard]] double length_mm() const;
    /// Enclosed by it, mm2.
    [[nodiscard]] double area_mm2() const;
    /// How far it reaches from the middle sideways, up and down (negative), mm.
    [[nodiscard]] double reach_mm() const;
    [[nodiscard]] double highest_mm() const;
    /// Where the layer's line ends at the right fold, from its middle: right and up.
    [[nodiscard]] Vec2 fold() const;
    /// A point of that line so far along it from its middle, -1 to 1 from fold to fold.
    [[nodiscard]] Vec2 on_line(double share) const;
    [[nodiscard]] double lowest_mm() const;

    friend bool operator==(const LoopSection&, const LoopSection&) = default;
};

/// A point on the curve in the frame of `StitchSurface` (x right, y up, z to the front), seen from the middle
/// of the front layer, and the outward normal of the curve.
struct SectionPoint {
    Vec3 place = Vec3::Zero();
    Vec3 normal = Vec3::UnitZ();
};

/// The point at a share `angle` / 2 pi of the way around, from the middle of the front to the right, lifted
/// outwards, and with its distances within the stadium times `factor`.
[[nodiscard]] SectionPoint point_on(const LoopSection& section, double angle, double lift_mm = 0,
                                    double factor = 1);

/// The angle, in [-pi, pi], at which the curve is nearest to a point.
[[nodiscard]] double nearest_angle(const LoopSection& section, const Vec3& point);

[[nodiscard]] LoopSection between(const LoopSection& from, const LoopSection& to, double share);

}  // namespace roundwright
