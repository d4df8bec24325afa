#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/vec.h"
#include "core/mesh/fabric_geometry.h"
#include "core/mesh/laid_meridian.h"

namespace roundwright {

/// A point of the mean surface by its angle about the axis, with its outward normal (radial, z, and `tilt`
/// towards growing angles, where a loop waves). In a flattened piece the angle is a share of the way around
/// its section, and radial is outwards from that.
struct RevolvedPoint {
    double angle = 0;
    Vec2 place;  ///< radius, z
    Vec2 normal;
    double tilt = 0;
    std::optional<LoopSection> section = std::nullopt;
};

/// The mean surface of a piece, between its loops, and turned over if the piece starts at the top. Between
/// two loops radius, height and angle run evenly, so that its volume is the solver's; so do the sections of
/// flattened loops.
class RevolvedSurface final : public FabricGeometry {
  public:
    RevolvedSurface(LaidMeridian meridian, bool turned_over);

    [[nodiscard]] std::size_t rounds() const override { return meridian_.loops.size() - 1; }
    [[nodiscard]] FabricEnds ends() const override;
    [[nodiscard]] double girth_radius_mm(std::size_t round, double up) const override;
    [[nodiscard]] double loops(std::size_t edge) const override { return loop(edge).loops; }
    [[nodiscard]] double mean_curvature(std::size_t edge) const override { return loop(edge).mean_curvature; }
    [[nodiscard]] double room_below_mm(std::size_t edge) const override;
    [[nodiscard]] bool is_layer(std::size_t edge) const override { return loop(edge).section.has_value(); }
    void place_row(const CellRow& row, const double* lifts_mm, Vec3* places, Vec3* normals) const override;
    [[nodiscard]] FabricPoint on_edge(std::size_t edge, double loops_along, double lift_mm,
                                      std::uint32_t corners) const override;
    [[nodiscard]] std::optional<FabricPoint> pole_below(double lift_mm) const override;
    [[nodiscard]] std::optional<FabricPoint> pole_above(double lift_mm) const override;
    [[nodiscard]] double loops_at(std::size_t edge, double cell, double cells) const override;
    [[nodiscard]] std::unique_ptr<FabricGeometry> coarser(const std::vector<std::size_t>& kept,
                                                          const std::vector<double>& cells) const override;

  private:
    [[nodiscard]] const LaidLoop& loop(std::size_t edge) const { return meridian_.loops[edge]; }
    [[nodiscard]] std::optional<FabricPoint> pole(const std::optional<LaidLoop>& at, double lift_mm) const;
    [[nodiscard]] FabricPoint at(const RevolvedPoint& point, double lift_mm, double factor) const;

    /// The point a share v of the way from one angle on the loop below to another on the loop above.
    [[nodiscard]] static RevolvedPoint between(const LaidLoop& below, double angle_below,
                                               const LaidLoop& above, double angle_above, double v);

    /// Whether waves move the surface between two loops.
    [[nodiscard]] static bool waves_between(const LaidLoop& below, const LaidLoop& above) {
        return below.waves.waves != 0 || above.waves.waves != 0;
    }
    /// Whether only the angle changes along a row between two loops, and all else stays.
    [[nodiscard]] static bool is_round(const LaidLoop& below, const LaidLoop& above) {
        return !waves_between(below, above) && !below.section && !above.section;
    }

    /// Where a point is when it is lifted along its normal, with its distance from the axis times `factor`,
    /// by the angle's sine and cosine.
    [[nodiscard]] Vec3 place(const RevolvedPoint& point, double lift_mm, double factor, double sine,
                             double cosine) const {
        if (point.section) return place_on_section(point, lift_mm, factor);
        const double radial = factor * (point.place.x() + lift_mm * point.normal.x());
        const double aside = lift_mm * point.tilt;
        return {side_ * (radial * sine + aside * cosine),
                lowest_mm_ + side_ * (point.place.y() + lift_mm * point.normal.y()),
                radial * cosine - aside * sine};
    }
    [[nodiscard]] Vec3 normal(const RevolvedPoint& point, double sine, double cosine) const {
        if (point.section) return normal_on_section(point);
        return {side_ * (point.normal.x() * sine + point.tilt * cosine), side_ * point.normal.y(),
                point.normal.x() * cosine - point.tilt * sine};
    }

    [[nodiscard]] Vec3 place_on_section(const RevolvedPoint& point, double lift_mm, double factor) const;
    [[nodiscard]] Vec3 normal_on_section(const RevolvedPoint& point) const;

    LaidMeridian meridian_;
    double side_ = 1;  ///< -1: turned over about the axis to the viewer
    double lowest_mm_ = 0;
};

}  // namespace roundwright
