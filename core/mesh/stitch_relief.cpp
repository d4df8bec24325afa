#include "core/mesh/stitch_relief.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace roundwright {
namespace {

// Half a stitch: one leg as a round cord of this radius (in stitch widths) from foot to shoulder.
constexpr double cord_radius = 0.23;
constexpr double foot_u = 0.40, foot_v = 0.10;
constexpr double shoulder_u = 0.19, shoulder_v = 0.86;
constexpr double groove_light = 0.45;

double distance_to_leg(double u, double v) {
    const double du = shoulder_u - foot_u, dv = shoulder_v - foot_v;
    const double along = std::clamp(((u - foot_u) * du + (v - foot_v) * dv) / (du * du + dv * dv), 0.0, 1.0);
    return std::hypot(u - foot_u - along * du, v - foot_v - along * dv);
}

double cord_height(double distance) {
    const double across = std::min(1.0, distance / cord_radius);
    return cord_radius * std::sqrt(1 - across * across);
}

// From the finest down; columns are even so that an increase meets the middle of a loop.
constexpr std::array grids = {ReliefGrid{12, 10}, ReliefGrid{10, 8}, ReliefGrid{8, 7}, ReliefGrid{6, 6},
                              ReliefGrid{6, 4},   ReliefGrid{4, 4},  ReliefGrid{4, 3}, ReliefGrid{2, 2},
                              ReliefGrid{2, 1},   ReliefGrid{1, 1}};

}  // namespace

ReliefGrid finest_relief(std::size_t stitches, std::size_t most_triangles, bool inside) {
    const auto fits = [&](const ReliefGrid& grid) {
        const ReliefGrid whole{grid.columns, grid.rows + (inside ? 1 : 0)};
        return whole.triangles() * stitches <= most_triangles;
    };
    const auto* const found = std::find_if(grids.begin(), grids.end(), fits);
    return found == grids.end() ? grids.back() : *found;
}

double stitch_relief(double u, double v) {
    const double left = distance_to_leg(u, v);
    const double right = distance_to_leg(1 - u, v);
    return std::max(cord_height(left), cord_height(right));
}

ReliefTable::ReliefTable(ReliefGrid given, bool relief) : grid(given) {
    const auto points = static_cast<std::size_t>(grid.columns * grid.rows);
    height.assign(points, 0);
    light.assign(points, 1);
    if (!relief) return;
    double sum = 0;
    for (int j = 1; j <= grid.rows; ++j) {
        for (int q = 0; q < grid.columns; ++q) {
            const double h =
                stitch_relief(static_cast<double>(q) / grid.columns, static_cast<double>(j) / grid.rows);
            height[at(j, q)] = static_cast<float>(h);
            light[at(j, q)] = static_cast<float>(groove_light + (1 - groove_light) * h / cord_radius);
            sum += h;
        }
    }
    const auto mean = static_cast<float>(sum / static_cast<double>(points));
    for (auto& h : height) h -= mean;
}

}  // namespace roundwright
