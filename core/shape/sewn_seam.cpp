#include "core/shape/sewn_seam.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/shape/fabric_thickness.h"

namespace roundwright {

namespace {

using std::numbers::pi;

/// The piece is round again so far below the seam: in diameters of its last loop, and at most so much of its
/// whole length. Starting values of our own.
constexpr double flattened_diameters = 1;
constexpr double most_of_length = 0.6;
/// What a round keeps of its height where it would have to lean farther: a disc sewn straight folds up.
constexpr double least_rise = 0.5;

/// Lengths along the meridian from each loop to the last.
std::vector<double> lengths_to_end(const Shape& shape) {
    std::vector<double> lengths(shape.radius_mm.size(), 0);
    for (std::size_t i = lengths.size() - 1; i-- > 0;)
        lengths[i] = lengths[i + 1] + std::hypot(shape.radius_mm[i + 1] - shape.radius_mm[i],
                                                 shape.z_mm[i + 1] - shape.z_mm[i]);
    return lengths;
}

/// A loop of radius r flattened by a share keeps its length 2 pi r.
LoopSection flattened(double radius, double share, double thickness_mm) {
    return {radius * (1 + share * (pi / 2 - 1)),
            std::max((1 - share) * radius, pressed_half_depth_mm(thickness_mm, radius)), 0};
}

/// What a round of this length rises when the sides of its section lean in to the seam and out to its ends.
double rise_mm(const LoopSection& below, const LoopSection& above, double length) {
    const double in = above.half_depth_mm - below.half_depth_mm;
    const double out = above.half_width_mm - below.half_width_mm;
    const double rise = length * length - (in * in + out * out) / 2;
    return std::sqrt(std::max(rise, least_rise * least_rise * length * length));
}

double frustum_mm3(double a, double b, double height) { return height / 3 * (a + b + std::sqrt(a * b)); }

void measure(Shape& shape) {
    shape.width_mm = shape.depth_mm = shape.volume_mm3 = 0;
    for (std::size_t i = 0; i < shape.sections.size(); ++i) {
        shape.width_mm = std::max(shape.width_mm, 2 * shape.sections[i].half_width_mm);
        shape.depth_mm = std::max(shape.depth_mm, 2 * shape.sections[i].half_depth_mm);
        if (i > 0)
            shape.volume_mm3 += frustum_mm3(shape.sections[i - 1].area_mm2(), shape.sections[i].area_mm2(),
                                            shape.z_mm[i] - shape.z_mm[i - 1]);
    }
    const double low = std::min(shape.first_pole_z_mm, *std::ranges::min_element(shape.z_mm));
    const double high = std::max(shape.first_pole_z_mm, *std::ranges::max_element(shape.z_mm));
    for (double& z : shape.z_mm) z -= low;
    shape.first_pole_z_mm -= low;
    shape.last_pole_z_mm = shape.z_mm.back();
    shape.height_mm = high - low;
}

}  // namespace

void sew_straight(const ShapeProblem& problem, Shape& shape) {
    if (!shape.usable()) return;
    const std::vector<double> to_seam = lengths_to_end(shape);
    const double reach =
        std::min(flattened_diameters * 2 * shape.radius_mm.back(), most_of_length * to_seam[0]);
    const double thickness = fabric_thickness_mm(problem);
    for (std::size_t i = 0; i < to_seam.size(); ++i) {
        const double open = reach > 0 ? std::sin(pi / 2 * std::min(1.0, to_seam[i] / reach)) : 1;
        shape.sections.push_back(flattened(shape.radius_mm[i], 1 - open, thickness));
    }
    const std::vector<double> round_z = shape.z_mm;
    for (std::size_t i = 1; i < to_seam.size(); ++i) {
        const double own = round_z[i] - round_z[i - 1];
        const double length = to_seam[i - 1] - to_seam[i];
        const double rise = rise_mm(shape.sections[i - 1], shape.sections[i], length);
        const bool is_round = shape.sections[i].half_depth_mm == shape.radius_mm[i];
        const bool goes_down = own < -least_rise * length;
        shape.z_mm[i] = shape.z_mm[i - 1] + (is_round ? own : (goes_down ? -rise : rise));
    }
    measure(shape);
}

}  // namespace roundwright
