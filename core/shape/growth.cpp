#include "core/shape/growth.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace roundwright {

using std::numbers::pi;

double growth_ratio(double loop_below_mm, double loop_mm, double height_mm) {
    return (loop_mm - loop_below_mm) / (2 * pi * height_mm);
}

double flat_increase(double height_mm, double stitch_width_mm) {
    return 2 * pi * height_mm / stitch_width_mm;
}

double hyperbolic_radius_mm(double loop_below_mm, double loop_mm, double height_mm) {
    if (!(loop_mm > loop_below_mm)) return std::numeric_limits<double>::infinity();
    return height_mm / std::log(loop_mm / loop_below_mm);
}

}  // namespace roundwright
