#include "core/materials/stuffing.h"

#include <algorithm>
#include <array>

#include "core/pattern/toy.h"

namespace roundwright {
namespace {

struct Knot {
    double stretch;
    double fill;
};
constexpr std::array<Knot, 3> knots{{{light_stuffing_stretch, light_over_medium_fill},
                                     {medium_stuffing_stretch, 1.0},
                                     {firm_stuffing_stretch, firm_over_medium_fill}}};

double between(const Knot& a, const Knot& b, double stretch) {
    return a.fill + (b.fill - a.fill) * (stretch - a.stretch) / (b.stretch - a.stretch);
}

constexpr double grams_per_kg = 1e3;
constexpr double mm3_per_m3 = 1e9;
constexpr double weighed_error = 0.1;  // stuffing the same piece twice; our own estimate

}  // namespace

double fill_over_medium(double area_stretch) {
    if (area_stretch <= 0) return 0;
    const double stretch = std::clamp(area_stretch, knots.front().stretch, knots.back().stretch);
    return stretch <= knots[1].stretch ? between(knots[0], knots[1], stretch)
                                       : between(knots[1], knots[2], stretch);
}

Estimate stuffing_grams(double volume_mm3, double area_stretch, const Making& making) {
    Estimate density = medium_fill_kg_per_m3;
    if (making.stuffing_density_kg_per_m3) {
        const double own = *making.stuffing_density_kg_per_m3;
        density = {own, own * (1 - weighed_error), own * (1 + weighed_error)};
    }
    const double cubic_metres = std::max(volume_mm3, 0.0) / mm3_per_m3;
    return density * (fill_over_medium(area_stretch) * cubic_metres * grams_per_kg);
}

}  // namespace roundwright
