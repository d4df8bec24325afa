#include "core/mesh/stitch_relief.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace roundwright {
namespace {

constexpr double groove_light = 0.62, pile_groove_light = 0.95, pile_flatness = 0.1;

double height_of(const Cord& cord, double u, double v) {
    const double du = cord.to_u - cord.from_u, dv = cord.to_v - cord.from_v;
    const double along =
        std::clamp(((u - cord.from_u) * du + (v - cord.from_v) * dv) / (du * du + dv * dv), 0.0, 1.0);
    const double across =
        std::hypot(u - cord.from_u - along * du, v - cord.from_v - along * dv) / cord.radius;
    return across < 1 ? cord.over + cord.radius * std::sqrt(1 - across * across) : 0;
}

// From the finest down; columns are even so that an increase meets the middle of a loop.
constexpr std::array grids = {ReliefGrid{12, 10}, ReliefGrid{10, 8}, ReliefGrid{8, 7}, ReliefGrid{6, 6},
                              ReliefGrid{6, 4},   ReliefGrid{4, 4},  ReliefGrid{4, 3}, ReliefGrid{2, 2},
                              ReliefGrid{2, 1},   ReliefGrid{1, 1}};

}  // namespace

ReliefGrid finest_relief(std::size_t stitches, std::size_t most_triangles, bool inside) {
    const auto fits = [&](const ReliefGrid& grid) {
        return (grid.triangles() + (inside ? grid.inside().triangles() : 0)) * stitches <= most_triangles;
    };
    const auto* const found = std::find_if(grids.begin(), grids.end(), fits);
    return found == grids.end() ? grids.back() : *found;
}

double stitch_relief(StitchFace face, double u, double v) {
    double height = 0;
    for (const auto& cord : cords_of(face)) height = std::max(height, height_of(cord, u, v));
    return face == StitchFace::pile ? pile_flatness * height : height;
}

ReliefTable::ReliefTable(StitchFace face, ReliefGrid given, bool relief) : grid(given) {
    const auto points = static_cast<std::size_t>(grid.columns * grid.rows);
    height.assign(points, 0);
    light.assign(points, 1);
    row_mean.assign(static_cast<std::size_t>(grid.rows), 0);
    row_mean_square = row_mean;
    if (!relief) return;
    const double groove = face == StitchFace::pile ? pile_groove_light : groove_light;
    double sum = 0, most = 0;
    for (int j = 1; j <= grid.rows; ++j) {
        for (int q = 0; q < grid.columns; ++q) {
            const double h = stitch_relief(face, static_cast<double>(q) / grid.columns,
                                           static_cast<double>(j) / grid.rows);
            height[at(j, q)] = static_cast<float>(h);
            sum += h;
            most = std::max(most, h);
        }
    }
    const auto mean = static_cast<float>(sum / static_cast<double>(points));
    for (std::size_t k = 0; k < points; ++k) {
        const auto share = most > 0 ? static_cast<double>(height[k]) / most : 1;
        light[k] = static_cast<float>(groove + (1 - groove) * share);
        height[k] -= mean;
        const auto h = static_cast<double>(height[k]);
        row_mean[k / static_cast<std::size_t>(grid.columns)] += h / grid.columns;
        row_mean_square[k / static_cast<std::size_t>(grid.columns)] += h * h / grid.columns;
    }
}

Reliefs::Reliefs(ReliefGrid grid, bool relief) {
    for (std::size_t k = 0; k < stitch_faces; ++k) {
        const auto face = static_cast<StitchFace>(k);
        tables_.emplace_back(face, face == StitchFace::inside ? grid.inside() : grid, relief);
    }
}

}  // namespace roundwright
