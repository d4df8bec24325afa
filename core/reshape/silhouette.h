#pragma once

#include <vector>

#include "core/base/vec.h"
#include "core/shape/shape_problem.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// Half the outline of a round piece: points (r, z) in mm from its start to its end, r the distance from the
/// axis. Straight between points. A first or last point on the axis is a closed end.
struct Silhouette {
    std::vector<Vec2> points;
};

/// At least two points, all finite, none left of the axis, not all in one place.
[[nodiscard]] bool is_usable(const Silhouette& silhouette);

/// Distance along the silhouette from its start, mm, one a point.
[[nodiscard]] std::vector<double> arc_lengths(const Silhouette& silhouette);

/// Largest diameter, mm.
[[nodiscard]] double width_mm(const Silhouette& silhouette);
/// Highest point over lowest point, mm.
[[nodiscard]] double height_mm(const Silhouette& silhouette);

/// Points every `step_mm` (or a little less) along the silhouette, ends and corners kept.
[[nodiscard]] Silhouette resampled(const Silhouette& silhouette, double step_mm);

/// The points that lie at least so far apart along the silhouette, and both ends.
[[nodiscard]] Silhouette thinned(const Silhouette& silhouette, double step_mm);

/// The outline of a solved shape, one point a loop, and the point that a drawn last end is closed to.
[[nodiscard]] Silhouette silhouette_of(const Shape& shape, MeridianEnd last);

/// How far two outlines lie apart, mm: the root mean square, over the points of both, of the distance to the
/// other outline, when they are moved along the axis so that their middles meet.
[[nodiscard]] double distance_mm(const Silhouette& a, const Silhouette& b);

}  // namespace roundwright
