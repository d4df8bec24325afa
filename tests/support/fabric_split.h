#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <utility>

#include "tests/support/fabric_piece.h"

namespace roundwright::test {

/// Every triangle into the four of its middles, in rest and as it starts.
inline FabricPiece split_in_four(const FabricPiece& coarse) {
    FabricPiece fine = coarse;
    fine.problem.triangles.clear();
    std::map<std::pair<std::int32_t, std::int32_t>, std::int32_t> middles;
    const auto middle = [&](std::int32_t a, std::int32_t b) {
        const auto [at, is_new] = middles.try_emplace(std::minmax(a, b), fine.problem.nodes);
        if (is_new) {
            const Vec3 sum =
                fine.start[static_cast<std::size_t>(a)] + fine.start[static_cast<std::size_t>(b)];
            fine.start.push_back(sum / 2);
            ++fine.problem.nodes;
        }
        return at->second;
    };
    for (const FabricTriangle& t : coarse.problem.triangles) {
        std::array<std::int32_t, 3> m{};
        std::array<Vec2, 3> r{Vec2::Zero(), Vec2::Zero(), Vec2::Zero()};
        for (std::size_t k = 0; k < 3; ++k) {
            m[k] = middle(t.nodes[k], t.nodes[(k + 1) % 3]);
            r[k] = (t.rest[k] + t.rest[(k + 1) % 3]) / 2;
        }
        for (std::size_t k = 0; k < 3; ++k)
            fine.problem.triangles.push_back(
                {{t.nodes[k], m[k], m[(k + 2) % 3]}, {t.rest[k], r[k], r[(k + 2) % 3]}});
        fine.problem.triangles.push_back({m, r});
    }
    return fine;
}

/// A sphere of equal-sided triangles on an icosahedron, each edge halved `times` over.
inline FabricPiece sphere_piece(double radius_mm, int times) {
    FabricPiece piece;
    const double g = (1 + std::sqrt(5.0)) / 2;
    for (const auto& [x, y, z] : std::initializer_list<std::array<double, 3>>{{-1, g, 0},
                                                                              {1, g, 0},
                                                                              {-1, -g, 0},
                                                                              {1, -g, 0},
                                                                              {0, -1, g},
                                                                              {0, 1, g},
                                                                              {0, -1, -g},
                                                                              {0, 1, -g},
                                                                              {g, 0, -1},
                                                                              {g, 0, 1},
                                                                              {-g, 0, -1},
                                                                              {-g, 0, 1}})
        piece.start.push_back(Vec3(x, y, z).normalized() * radius_mm);
    piece.problem.nodes = 12;
    for (const auto& nodes : std::initializer_list<std::array<std::int32_t, 3>>{
             {0, 11, 5},  {0, 5, 1},  {0, 1, 7},  {0, 7, 10}, {0, 10, 11}, {1, 5, 9}, {5, 11, 4},
             {11, 10, 2}, {10, 7, 6}, {7, 1, 8},  {3, 9, 4},  {3, 4, 2},   {3, 2, 6}, {3, 6, 8},
             {3, 8, 9},   {4, 9, 5},  {2, 4, 11}, {6, 2, 10}, {8, 6, 7},   {9, 8, 1}})
        piece.problem.triangles.emplace_back().nodes = nodes;
    for (int k = 0; k < times; ++k) piece = split_in_four(piece);
    for (Vec3& node : piece.start) node = node.normalized() * radius_mm;
    // Each triangle relaxed as it lies, in its own plane.
    for (FabricTriangle& t : piece.problem.triangles) {
        const auto at = [&](std::size_t i) { return piece.start[static_cast<std::size_t>(t.nodes[i])]; };
        const Vec3 along = at(1) - at(0);
        const Vec3 to_third = at(2) - at(0);
        const double run = along.normalized().dot(to_third);
        t.rest = {Vec2::Zero(), Vec2(along.norm(), 0),
                  Vec2(run, std::sqrt(to_third.squaredNorm() - run * run))};
    }
    piece.problem.stitch_width_mm = 2 * radius_mm / std::pow(2, times);
    piece.problem.round_height_mm = piece.problem.stitch_width_mm;
    return piece;
}

}  // namespace roundwright::test
