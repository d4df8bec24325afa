#include "tests/core/mesh/example_pieces.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright::test {
namespace {

constexpr double stitch_mm = 5;

/// True at `marks` of `places` places, evenly.
bool falls_on(int place, int marks, int places) {
    return (place + 1) * marks / places > place * marks / places;
}

GraphRound even_round(int below, int count) {
    GraphRound round;
    round.loops_below = below;
    round.loops_left = count;
    if (below == 0) {
        for (int s = 0; s < count; ++s) round.stitches.push_back({});
        return round;
    }
    const int more = std::max(0, count - below), fewer = std::max(0, below - count);
    for (int loop = 0, place = 0; loop < below; ++place) {
        Stitch stitch;
        if (fewer > 0 && falls_on(place, fewer, count)) stitch.feet = 2;
        round.stitches.push_back({stitch, loop});
        if (more > 0 && falls_on(place, more, below)) {
            stitch.same_foot = true;
            round.stitches.push_back({stitch, loop});
        }
        loop += stitch.feet;
    }
    return round;
}

}  // namespace

StitchGraph even_graph(const std::vector<int>& counts, int foundation) {
    StitchGraph graph;
    graph.foundation_loops = foundation;
    int below = foundation;
    for (const int count : counts) {
        graph.rounds.push_back(even_round(below, count));
        below = count;
    }
    return graph;
}

Shape shape_through(const std::vector<double>& radius_mm, const std::vector<double>& z_mm) {
    Shape shape;
    shape.termination = Termination::converged;
    shape.radius_mm = radius_mm;
    shape.z_mm = z_mm;
    const double lowest = *std::min_element(z_mm.begin(), z_mm.end());
    for (auto& z : shape.z_mm) z -= lowest;
    for (std::size_t i = 1; i < radius_mm.size(); ++i) {
        const double a = radius_mm[i - 1], b = radius_mm[i];
        shape.volume_mm3 += std::numbers::pi / 3 * (z_mm[i] - z_mm[i - 1]) * (a * a + a * b + b * b);
    }
    shape.first_pole_z_mm = shape.z_mm.front();
    shape.last_pole_z_mm = shape.z_mm.back();
    shape.width_mm = 2 * *std::max_element(radius_mm.begin(), radius_mm.end());
    shape.height_mm = *std::max_element(shape.z_mm.begin(), shape.z_mm.end());
    return shape;
}

ExamplePiece example_piece(const std::vector<int>& counts, End end, int foundation) {
    ExamplePiece example;
    Piece piece;
    piece.end = end;
    if (foundation > 0) piece.start = OpenTube{foundation};
    std::vector<double> radius{foundation * stitch_mm / (2 * std::numbers::pi)}, z{0};
    for (const int count : counts) {
        const double r = count * stitch_mm / (2 * std::numbers::pi);
        const double out = r - radius.back();
        radius.push_back(r);
        z.push_back(z.back() + std::sqrt(std::max(1.0, stitch_mm * stitch_mm - out * out)));
        piece.rounds.emplace_back().working = WorkedEvenly{count};
    }
    example.toy.yarns.emplace_back().colour = {150, 160, 170};
    example.toy.pieces.push_back(piece);
    example.graph = even_graph(counts, foundation);
    example.shape = shape_through(radius, z);
    return example;
}

ExamplePiece sphere_piece(int n) {
    std::vector<int> counts;
    for (int i = 1; i <= n; ++i) counts.push_back(6 * i);
    for (int i = 0; i < n; ++i) counts.push_back(6 * n);
    for (int i = n - 1; i >= 1; --i) counts.push_back(6 * i);
    auto example = example_piece(counts, End::drawn_closed);
    const double big = 6 * n * stitch_mm / (2 * std::numbers::pi);
    std::vector<double> radius, z;
    const auto rounds = static_cast<double>(counts.size());
    for (std::size_t i = 0; i <= counts.size(); ++i) {
        const double angle = std::numbers::pi * static_cast<double>(i) / (rounds + 0.3);
        radius.push_back(i == 0 ? 0 : big * std::sin(angle));
        z.push_back(-big * std::cos(angle));
    }
    example.shape = shape_through(radius, z);
    return example;
}

std::vector<int> random_counts(std::mt19937& random, int most_rounds) {
    std::uniform_int_distribution<int> rounds(1, most_rounds), start(3, 12);
    std::vector<int> counts{start(random)};
    const int many = rounds(random);
    while (static_cast<int>(counts.size()) < many) {
        const int below = counts.back();
        std::uniform_int_distribution<int> next(std::max(3, (below + 1) / 2), std::min(2 * below, 90));
        std::uniform_int_distribution<int> kind(0, 2);
        counts.push_back(kind(random) == 0 ? below : next(random));
    }
    return counts;
}

}  // namespace roundwright::test
