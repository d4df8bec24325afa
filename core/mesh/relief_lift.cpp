#include "core/mesh/relief_lift.h"

#include <algorithm>
#include <limits>
#include <numbers>

#include "core/shape/fabric_thickness.h"

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;

/// Of the depth of a layer's inside, how deep the grooves of its outside may be.
constexpr double groove_in_layer = 0.85;

}  // namespace

double ReliefLift::thickness() const { return fabric_thickness_in_stitches * stitch_width_mm_; }

double ReliefLift::skin_depth(std::size_t edge) const {
    return std::min(thickness(), geometry_.room_below_mm(edge));
}

/// The grooves of a thin layer's outside end short of its inside.
double ReliefLift::least_lift(std::size_t round) const {
    if (inside_ || (!geometry_.is_layer(round) && !geometry_.is_layer(round + 1)))
        return -std::numeric_limits<double>::infinity();
    return -groove_in_layer * std::min(skin_depth(round), skin_depth(round + 1));
}

/// The relief flattens where stitches are squeezed together, towards a pole above all. Between two layers
/// there is no room for it.
double ReliefLift::scale_mm(std::size_t round, double girth_radius_mm) const {
    if (inside_ && geometry_.is_layer(round + 1)) return 0;
    return std::min(stitch_width_mm_, two_pi * girth_radius_mm / geometry_.loops(round + 1));
}

double ReliefLift::sinking(std::size_t round, const ReliefTable& relief) const {
    if (inside_) return 0;
    const double curvature = (geometry_.mean_curvature(round) + geometry_.mean_curvature(round + 1)) / 2;
    double held = 0, length = 0;
    for (int j = 1; j <= relief.grid.rows; ++j) {
        const double radius = geometry_.girth_radius_mm(round, static_cast<double>(j) / relief.grid.rows);
        const double scale = scale_mm(round, radius);
        const auto k = static_cast<std::size_t>(j - 1);
        held += radius * (scale * relief.row_mean[k] + curvature * scale * scale * relief.row_mean_square[k]);
        length += radius;
    }
    return length > 0 ? held / length : 0;
}

void ReliefLift::lifts(std::size_t round, int row, std::size_t rows, const ReliefTable& relief,
                       double sinking, double* lifts_mm) const {
    const double v = static_cast<double>(row) / static_cast<double>(rows);
    const double scale = scale_mm(round, geometry_.girth_radius_mm(round, v));
    const double sink = sinking + (1 - v) * depth(round) + v * depth(round + 1);
    const double least = least_lift(round);
    const double out = inside_ ? -scale : scale;
    const float* height = &relief.height[relief.at(row, 0)];
    for (int q = 0; q < relief.grid.columns; ++q)
        lifts_mm[q] = std::max(out * static_cast<double>(height[q]) - sink, least);
}

}  // namespace roundwright
