#include "core/mesh/revolved_surface.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;

/// Of the half depth of a flattened piece that its inside is sunk by, so that the layers do not touch.
constexpr double fabric_between_layers = 0.8;

/// Of larger cells than stitches; fewer would show a wave that is not there.
constexpr double fewest_cells_a_wave = 2;

/// Moves a point by the waves of the loops beside it, and tilts its normal by their slope along the loop and
/// along the meridian. A lift d of a surface of mean curvature H holds (d + H d^2) per area to second order,
/// so that the waves are sunk by H A^2 / 2, the mean of H d^2, and the piece keeps its volume.
void add_waves(RevolvedPoint& point, const LaidLoop& below, const LaidLoop& above, double v) {
    const int waves = std::max(below.waves.waves, above.waves.waves);
    const double amplitude = (1 - v) * below.waves.amplitude_mm + v * above.waves.amplitude_mm;
    const Vec2 along(above.radius_mm - below.radius_mm, above.z_mm - below.z_mm);
    const double length = std::max(along.norm(), 1e-9);
    const double radius = std::max(point.place.x(), 1e-9);
    const double crest = std::cos(waves * point.angle);
    const double curvature = (1 - v) * below.mean_curvature + v * above.mean_curvature;
    point.place += (amplitude * crest - curvature * amplitude * amplitude / 2) * point.normal;
    point.tilt = amplitude * waves * std::sin(waves * point.angle) / radius;
    point.normal -= (above.waves.amplitude_mm - below.waves.amplitude_mm) * crest / (length * length) * along;
    const double scale = std::sqrt(point.normal.squaredNorm() + point.tilt * point.tilt);
    point.normal /= scale;
    point.tilt /= scale;
}

/// A regular polygon of `corners` corners has the area of its circle if its corners stand this much further
/// out.
double polygon_factor(std::uint32_t corners) {
    const double step = two_pi / static_cast<double>(corners);
    return corners < 3 ? 1 : std::sqrt(step / std::sin(step));
}

/// Sine and cosine of an angle that grows by equal steps, by their addition theorems.
struct Turn {
    double sine, cosine;
    double step_sine, step_cosine;

    Turn(double angle, double step)
        : sine(std::sin(angle)),
          cosine(std::cos(angle)),
          step_sine(std::sin(step)),
          step_cosine(std::cos(step)) {}
    void step() {
        const double next = sine * step_cosine + cosine * step_sine;
        cosine = cosine * step_cosine - sine * step_sine;
        sine = next;
    }
};

double highest_mm(const LaidLoop& loop) {
    return loop.z_mm + (loop.section ? loop.section->highest_mm() : 0);
}

}  // namespace

RevolvedSurface::RevolvedSurface(LaidMeridian meridian, bool turned_over) : meridian_(std::move(meridian)) {
    if (!turned_over) return;
    side_ = -1;
    for (const auto& loop : meridian_.loops) lowest_mm_ = std::max(lowest_mm_, highest_mm(loop));
    if (meridian_.pole_below) lowest_mm_ = std::max(lowest_mm_, meridian_.pole_below->z_mm);
    if (meridian_.pole_above) lowest_mm_ = std::max(lowest_mm_, meridian_.pole_above->z_mm);
}

RevolvedPoint RevolvedSurface::between(const LaidLoop& below, double angle_below, const LaidLoop& above,
                                       double angle_above, double v) {
    RevolvedPoint point;
    point.angle = angle_below + v * (angle_above - angle_below);
    point.place = Vec2(below.radius_mm + v * (above.radius_mm - below.radius_mm),
                       below.z_mm + v * (above.z_mm - below.z_mm));
    point.normal = (1 - v) * below.normal + v * above.normal;
    const double length = point.normal.norm();
    point.normal = length > 1e-9 ? Vec2(point.normal / length) : above.normal;
    if (below.section && above.section)
        point.section = roundwright::between(*below.section, *above.section, v);
    if (waves_between(below, above)) add_waves(point, below, above, v);
    return point;
}

Vec3 RevolvedSurface::place_on_section(const RevolvedPoint& point, double lift_mm, double factor) const {
    const SectionPoint at = point_on(*point.section, point.angle, lift_mm * point.normal.x(), factor);
    const double up = point.place.y() + at.place.y() + lift_mm * point.normal.y();
    return {side_ * at.place.x(), lowest_mm_ + side_ * up, at.place.z()};
}

Vec3 RevolvedSurface::normal_on_section(const RevolvedPoint& point) const {
    const Vec3 outward = point.normal.x() * point_on(*point.section, point.angle).normal;
    return {side_ * outward.x(), side_ * (outward.y() + point.normal.y()), outward.z()};
}

FabricEnds RevolvedSurface::ends() const {
    return {meridian_.starts_in_a_point(), meridian_.pole_below.has_value(),
            meridian_.pole_above.has_value()};
}

double RevolvedSurface::girth_radius_mm(std::size_t round, double up) const {
    return loop(round).radius_mm + up * (loop(round + 1).radius_mm - loop(round).radius_mm);
}

double RevolvedSurface::room_below_mm(std::size_t edge) const {
    const LaidLoop& at = loop(edge);
    if (at.section) return fabric_between_layers * at.section->half_depth_mm;
    const double towards_axis = at.normal.x();
    return at.radius_mm > 0 && towards_axis > 0 ? at.radius_mm / 2 / towards_axis
                                                : std::numeric_limits<double>::infinity();
}

void RevolvedSurface::place_row(const CellRow& row, const double* lifts_mm, Vec3* places,
                                Vec3* normals) const {
    const LaidLoop& below = loop(row.round);
    const LaidLoop& above = loop(row.round + 1);
    const double v = row.up, factor = polygon_factor(row.corners);
    const double first = (1 - v) * below.angle(row.below_first) + v * above.angle(row.above_first);
    const double last = (1 - v) * below.angle(row.below_last) + v * above.angle(row.above_last);
    const bool round = is_round(below, above);
    const auto columns = static_cast<int>(row.columns);
    RevolvedPoint point = between(below, first, above, first, v);
    Turn turn(first, (last - first) / columns);
    for (int q = 0; q < columns; ++q, turn.step()) {
        const double angle = first + (last - first) * q / columns;
        if (!round) point = between(below, angle, above, angle, v);
        places[q] = place(point, lifts_mm[q], factor, turn.sine, turn.cosine);
        if (normals) normals[q] = normal(point, turn.sine, turn.cosine);
    }
}

FabricPoint RevolvedSurface::at(const RevolvedPoint& point, double lift_mm, double factor) const {
    const double sine = std::sin(point.angle), cosine = std::cos(point.angle);
    return {place(point, lift_mm, factor, sine, cosine), normal(point, sine, cosine)};
}

FabricPoint RevolvedSurface::on_edge(std::size_t edge, double loops_along, double lift_mm,
                                     std::uint32_t corners) const {
    const LaidLoop& here = loop(edge);
    const double angle = here.angle(loops_along);
    return at(between(here, angle, here, angle, 1), lift_mm, polygon_factor(corners));
}

std::optional<FabricPoint> RevolvedSurface::pole(const std::optional<LaidLoop>& pole, double lift_mm) const {
    if (!pole) return {};
    return at({0, Vec2(0, pole->z_mm), pole->normal, 0}, lift_mm, 1);
}

std::optional<FabricPoint> RevolvedSurface::pole_below(double lift_mm) const {
    return pole(meridian_.pole_below, lift_mm);
}

std::optional<FabricPoint> RevolvedSurface::pole_above(double lift_mm) const {
    return pole(meridian_.pole_above, lift_mm);
}

double RevolvedSurface::loops_at(std::size_t edge, double cell, double cells) const {
    const double angle = meridian_.loops.front().start_angle - two_pi * cell / cells;
    const double turns = (loop(edge).start_angle - angle) / two_pi;
    return (turns - std::floor(turns)) * loop(edge).loops;
}

std::unique_ptr<FabricGeometry> RevolvedSurface::coarser(const std::vector<std::size_t>& kept,
                                                         const std::vector<double>& cells) const {
    LaidMeridian coarse = meridian_;
    coarse.loops.clear();
    for (std::size_t k = 0; k < kept.size(); ++k) {
        LaidLoop& added = coarse.loops.emplace_back(loop(kept[k]));
        added.loops = cells[k];
        added.start_angle = meridian_.loops.front().start_angle;
        if (cells[k] < fewest_cells_a_wave * added.waves.waves) added.waves = {};
    }
    return std::make_unique<RevolvedSurface>(std::move(coarse), side_ < 0);
}

}  // namespace roundwright
