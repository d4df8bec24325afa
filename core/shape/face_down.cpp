#include "core/shape/face_down.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/shape/fabric_thickness.h"
#include "core/shape/measure_profile.h"
#include "core/shape/meridian.h"
#include "core/shape/yield_flat.h"

namespace roundwright {

namespace {

/// A drawn end lies no farther from its point than its fan is high, or a round.
double most_drawn(double fan_mm, double round_mm) { return std::max(fan_mm, round_mm); }

/// Neighbours differ by the height of their round at most.
std::vector<double> lying_radii(const ShapeProblem& problem) {
    std::vector<double> radius;
    for (std::size_t i = 0; i < problem.rest_loop_mm.size(); ++i)
        radius.push_back(rest_length_mm(problem, i) / (2 * std::numbers::pi));
    const auto& heights = problem.rest_height_mm;
    if (problem.first == MeridianEnd::drawn_closed)
        radius.front() = std::min(radius.front(), most_drawn(problem.first_fan_height_mm, heights.front()));
    if (problem.last == MeridianEnd::drawn_closed)
        radius.back() = std::min(radius.back(), most_drawn(problem.fan_height_mm, heights.back()));
    for (std::size_t i = 1; i < radius.size(); ++i)
        radius[i] = std::min(radius[i], radius[i - 1] + heights[i - 1]);
    for (std::size_t i = radius.size() - 1; i-- > 0;)
        radius[i] = std::min(radius[i], radius[i + 1] + heights[i]);
    return radius;
}

/// From the base, over the loops that are as wide as the widest, to the top.
std::vector<double> lying_heights(const std::vector<double>& radius, double thickness_mm) {
    const double rim = (1 - 1e-9) * *std::ranges::max_element(radius);
    const auto wide = [rim](double r) { return r >= rim; };
    const auto first = std::ranges::find_if(radius, wide) - radius.begin();
    const auto last = std::find_if(radius.rbegin(), radius.rend(), wide).base() - radius.begin() - 1;
    std::vector<double> z;
    for (std::ptrdiff_t i = 0; i < std::ssize(radius); ++i) {
        const double share = last > first ? static_cast<double>(i - first) / static_cast<double>(last - first)
                                          : (i > last ? 1.0 : 0.0);
        z.push_back(thickness_mm * std::clamp(share, 0.0, 1.0));
    }
    return z;
}

}  // namespace

Shape lay_on_face(const ShapeProblem& problem) {
    const double thickness = fabric_thickness_mm(problem);
    Shape shape;
    shape.termination = Termination::converged;
    shape.radius_mm = lying_radii(yielded_on_face(problem));
    shape.z_mm = lying_heights(shape.radius_mm, thickness);
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i) {
        const double rest = problem.rest_loop_mm[i] / (2 * std::numbers::pi);
        shape.course_stretch.push_back(rest > 0 && shape.radius_mm[i] > 0 ? shape.radius_mm[i] / rest - 1
                                                                          : 0);
        if (i > 0)
            shape.wale_stretch.push_back(
                std::hypot(shape.radius_mm[i] - shape.radius_mm[i - 1], shape.z_mm[i] - shape.z_mm[i - 1]) /
                    problem.rest_height_mm[i - 1] -
                1);
    }
    const ProfileMeasure measure = measure_profile(shape.radius_mm, shape.z_mm);
    shape.width_mm = shape.depth_mm = measure.width;
    shape.height_mm = 2 * thickness;
    shape.volume_mm3 = measure.volume;
    shape.surface_mm2 = measure.surface;
    shape.first_pole_z_mm = shape.z_mm.front();
    shape.last_pole_z_mm = shape.z_mm.back();
    return shape;
}

}  // namespace roundwright
