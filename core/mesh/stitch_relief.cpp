#include "core/mesh/stitch_relief.h"

#include <algorithm>
#include <cmath>

namespace roundwright {
namespace {

// Places in shares of a stitch, thicknesses in stitch widths; drawn from the look of worked fabric.
constexpr double groove_light = 0.62;

struct Point {
    double u;
    double v;
};

/// A cord of yarn laid along a line, round in section and rounded at its ends.
double cord(double u, double v, Point from, Point to, double radius) {
    const double du = to.u - from.u, dv = to.v - from.v;
    const double along = std::clamp(((u - from.u) * du + (v - from.v) * dv) / (du * du + dv * dv), 0.0, 1.0);
    const double across = std::hypot(u - from.u - along * du, v - from.v - along * dv) / radius;
    return across < 1 ? radius * std::sqrt(1 - across * across) : 0;
}

/// The two legs of a stitch's head between two heights.
double legs(double u, double v, double foot, double shoulder) {
    constexpr double radius = 0.235;
    const double side = std::min(u, 1 - u);
    return cord(side, v, {0.39, foot}, {0.20, shoulder}, radius);
}

/// A post with its wraps, and a low head of two legs on it.
double post(double u, double v, int wraps) {
    const double head = 0.72;
    double height = std::max(cord(u, v, {0.5, 0.06}, {0.46, head}, 0.24), legs(u, v, head + 0.06, 0.94));
    for (int k = 0; k < wraps; ++k) {
        const double middle = head * (k + 1) / (wraps + 1);
        height = std::max(height, 0.09 + cord(u, v, {0.26, middle - 0.05}, {0.74, middle + 0.05}, 0.12));
    }
    return height;
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

StitchFace face_of(const Stitch& stitch) {
    switch (stitch.kind) {
        case StitchKind::chain:
            return StitchFace::chain;
        case StitchKind::slip_stitch:
            return StitchFace::slip;
        case StitchKind::half_double_crochet:
            return StitchFace::half_double;
        case StitchKind::double_crochet:
            return StitchFace::double_crochet;
        case StitchKind::treble_crochet:
            return StitchFace::treble;
        case StitchKind::bobble:
            return StitchFace::bobble;
        case StitchKind::single_crochet:
        case StitchKind::skip:
            break;
    }
    return stitch.part == LoopPart::back ? StitchFace::single_over_bar : StitchFace::single;
}

double stitch_relief(StitchFace face, double u, double v) {
    switch (face) {
        case StitchFace::single:
            return legs(u, v, 0.09, 0.87);
        case StitchFace::single_over_bar:
            return std::max(legs(u, v, 0.30, 0.88), cord(u, v, {0.0, 0.14}, {1.0, 0.14}, 0.14));
        case StitchFace::half_double:
            return post(u, v, 1);
        case StitchFace::double_crochet:
            return post(u, v, 2);
        case StitchFace::treble:
            return post(u, v, 3);
        case StitchFace::bobble:
            return 1.6 * cord(u, v, {0.5, 0.5}, {0.5, 0.5001}, 0.48);
        case StitchFace::chain:
            return cord(u, v, {0.1, 0.75}, {0.9, 0.75}, 0.2);
        case StitchFace::slip:
            return cord(u, v, {0.2, 0.35}, {0.8, 0.65}, 0.2);
        case StitchFace::inside:
            return cord(u, v, {0.3, 0.5}, {0.7, 0.5}, 0.2);
    }
    return 0;
}

ReliefTable::ReliefTable(StitchFace face, ReliefGrid given, bool relief) : grid(given) {
    const auto points = static_cast<std::size_t>(grid.columns * grid.rows);
    height.assign(points, 0);
    light.assign(points, 1);
    row_mean.assign(static_cast<std::size_t>(grid.rows), 0);
    row_mean_square = row_mean;
    if (!relief) return;
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
        light[k] = static_cast<float>(groove_light + (1 - groove_light) * share);
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
