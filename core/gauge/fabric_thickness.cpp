#include "core/gauge/fabric_thickness.h"

#include <algorithm>
#include <cmath>

#include "core/base/units.h"

namespace roundwright {

namespace {

constexpr double error_of_pressing = 0.25;  // of the thickness
constexpr double error_without_yarn = 0.35;
constexpr double least_in_stitches = 0.25;
constexpr double most_in_stitches = 0.6;

bool positive(double value) { return std::isfinite(value) && value > 0; }

}  // namespace

FabricThickness fabric_thickness(YarnWeight weight, double stitch_width_mm) {
    if (!positive(stitch_width_mm)) return {};
    const Range& wraps = yarn_standard(weight).wraps_per_inch;
    const double wrap_mm = mm_per_inch / wraps.middle();
    const double half_range_mm = (mm_per_inch / wraps.low - mm_per_inch / wraps.high) / 2;
    const double mm =
        std::clamp(wrap_mm, least_in_stitches * stitch_width_mm, most_in_stitches * stitch_width_mm);
    return {mm, std::hypot(half_range_mm, error_of_pressing * wrap_mm) * mm / wrap_mm};
}

FabricThickness fabric_thickness(double stitch_width_mm) {
    if (!positive(stitch_width_mm)) return {};
    const double mm = fabric_thickness_in_stitches * stitch_width_mm;
    return {mm, error_without_yarn * mm};
}

}  // namespace roundwright
