#include "core/mesh/stitch_relief.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/mesh/stitch_field.h"

namespace roundwright {
namespace {

constexpr double groove_light = 0.62, pile_groove_light = 0.95;

constexpr std::array grids = {ReliefGrid{12, 10}, ReliefGrid{10, 8}, ReliefGrid{8, 7}, ReliefGrid{6, 6},
                              ReliefGrid{6, 4},   ReliefGrid{4, 4},  ReliefGrid{4, 3}, ReliefGrid{2, 2},
                              ReliefGrid{2, 1},   ReliefGrid{1, 1}};

}  // namespace

std::span<const ReliefGrid> relief_grids() { return grids; }

// The mean over the square of the field about the point that a vertex stands for: what a coarse grid cannot
// hold would come out as bumps of chance.
double stitch_relief(StitchFace face, double u, double v, const ReliefGrid& grid) {
    const StitchField& field = stitch_field(face);
    const auto first = [](double place, int parts) {
        return static_cast<int>(std::floor((place - 0.5 / parts) * StitchField::size + 0.5));
    };
    const int left = first(u, grid.columns), low = first(v, grid.rows);
    const int across = StitchField::size / grid.columns, up = StitchField::size / grid.rows;
    double sum = 0;
    for (int row = low; row < low + up; ++row)
        for (int column = left; column < left + across; ++column)
            sum += static_cast<double>(field.height[StitchField::at(column, row)]);
    return sum / (across * up);
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
                                           static_cast<double>(j) / grid.rows, grid);
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

Reliefs::Reliefs(ReliefGrid grid, bool relief, const std::vector<StitchFace>& shown) : grid_(grid) {
    const auto make = [&](StitchFace face, ReliefGrid on) {
        auto& table = tables_[static_cast<std::size_t>(face)];
        if (!table) table.emplace(face, on, relief);
    };
    make(StitchFace::inside, grid.inside());
    make(StitchFace::single, grid);
    for (const StitchFace face : shown) make(face, grid);
}

}  // namespace roundwright
