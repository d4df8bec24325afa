#include "core/reshape/size.h"

#include <algorithm>
#include <cmath>

namespace roundwright {

double size_tolerance_mm(double wanted_mm, const Gauge& gauge) {
    return std::max(gauge.round_height_mm / 2, 0.02 * wanted_mm);
}

double size_miss(const Size& reached, const Size& wanted, const Gauge& gauge) {
    const auto over = [&](double r, double t) { return std::abs(r - t) / size_tolerance_mm(t, gauge); };
    const double height = reached.width_mm * wanted.height_mm / wanted.width_mm;
    const double steepness = std::max(1.0, wanted.height_mm / wanted.width_mm);
    const double allowed = std::max(steepness * gauge.round_height_mm / 2, 0.03 * height);
    return std::max({over(reached.width_mm, wanted.width_mm), over(reached.height_mm, wanted.height_mm),
                     std::abs(reached.height_mm - height) / allowed});
}

double half_rounds_off(const Size& reached, const Size& wanted, const Gauge& gauge) {
    return std::max(std::abs(reached.width_mm - wanted.width_mm),
                    std::abs(reached.height_mm - wanted.height_mm)) /
           (gauge.round_height_mm / 2);
}

}  // namespace roundwright
