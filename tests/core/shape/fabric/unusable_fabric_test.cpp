#include <cmath>
#include <functional>
#include <gtest/gtest.h>
#include <limits>
#include <random>

#include "core/shape/fabric/fabric_topology.h"
#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/fabric/usable_fabric.h"
#include "tests/support/fabric_piece.h"

namespace roundwright::test {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

/// Where a node of the fifth triangle starts.
Vec3& at_node(FabricPiece& piece, std::size_t k) {
    return piece.start[static_cast<std::size_t>(piece.problem.triangles[4].nodes[k])];
}

struct Fault {
    const char* name;
    std::function<void(FabricPiece&)> make;
};

std::vector<Fault> faults() {
    return {
        {"no triangles", [](FabricPiece& p) { p.problem.triangles.clear(); }},
        {"a node that is not there",
         [](FabricPiece& p) { p.problem.triangles[3].nodes[1] = p.problem.nodes; }},
        {"a node below zero", [](FabricPiece& p) { p.problem.triangles[3].nodes[1] = -1; }},
        {"a node in no triangle", [](FabricPiece& p) { p.start.emplace_back(), ++p.problem.nodes; }},
        {"a triangle without area",
         [](FabricPiece& p) { p.problem.triangles[2].rest[2] = p.problem.triangles[2].rest[1]; }},
        {"a triangle wrong side out",
         [](FabricPiece& p) { std::swap(p.problem.triangles[2].rest[2], p.problem.triangles[2].rest[1]); }},
        {"a neighbour wrong side out",
         [](FabricPiece& p) {
             auto& t = p.problem.triangles[2];
             std::swap(t.nodes[2], t.nodes[1]);
             std::swap(t.rest[2], t.rest[1]);
             for (Vec2& at : t.rest) at.x() = -at.x();
         }},
        {"three triangles at an edge",
         [](FabricPiece& p) { p.problem.triangles.push_back(p.problem.triangles[5]); }},
        {"a triangle that meets itself",
         [](FabricPiece& p) { p.problem.triangles[2].nodes[1] = p.problem.triangles[2].nodes[0]; }},
        {"a length that is no number", [](FabricPiece& p) { p.problem.triangles[2].rest[1].x() = nan; }},
        {"no stitch width", [](FabricPiece& p) { p.problem.stitch_width_mm = 0; }},
        {"a stiffness without end", [](FabricPiece& p) { p.problem.wale_stiffness = infinity; }},
        {"no shear stiffness", [](FabricPiece& p) { p.problem.shear_stiffness = 0; }},
        {"a stretch below zero", [](FabricPiece& p) { p.problem.area_stretch = -0.1; }},
        {"a share above one",
         [](FabricPiece& p) { p.problem.stuffed.assign(p.problem.triangles.size(), 1.5); }},
        {"too few shares", [](FabricPiece& p) { p.problem.stuffed = {1}; }},
        {"nothing stuffed that is to be",
         [](FabricPiece& p) { p.problem.stuffed.assign(p.problem.triangles.size(), 0); }},
        {"a held node that is not there", [](FabricPiece& p) { p.problem.fixed = {p.problem.nodes}; }},
        {"a cap of two nodes",
         [](FabricPiece& p) {
             p.problem.caps = {{0, 1}};
         }},
        {"too few positions", [](FabricPiece& p) { p.start.pop_back(); }},
        {"a position that is no number", [](FabricPiece& p) { p.start[4].y() = nan; }},
        {"a position without end", [](FabricPiece& p) { p.start[4].y() = infinity; }},
        {"nodes that coincide", [](FabricPiece& p) { at_node(p, 0) = at_node(p, 1); }},
        {"all in one point", [](FabricPiece& p) { p.start.assign(p.start.size(), Vec3(1, 2, 3)); }},
        {"inside out",
         [](FabricPiece& p) {
             for (Vec3& at : p.start) at.x() = -at.x();
         }},
    };
}

TEST(UnusableFabric, IsRefused) {
    for (const Fault& fault : faults()) {
        SCOPED_TRACE(fault.name);
        FabricPiece piece = round_piece({6, 12, 12, 6});
        ASSERT_TRUE(is_usable(piece.problem));
        fault.make(piece);
        const FabricShape shape = solve_fabric(piece.problem, piece.start);
        EXPECT_FALSE(shape.usable());
        EXPECT_EQ(shape.termination, Termination::unusable_problem);
    }
}

TEST(UnusableFabric, RandomNonsenseIsRefusedOrSolvedInNumbers) {
    std::mt19937 random(5);
    const auto below = [&](std::size_t n) {
        return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
    };
    const double values[] = {0, -1, 1e-300, 1e-9, 0.5, 1, 3, 1e4, 1e300, nan, infinity};
    const auto value = [&] { return values[below(std::size(values))]; };
    int solved = 0;
    for (int k = 0; k < 400; ++k) {
        FabricPiece piece = k % 2 == 0 ? round_piece({6, 9, 6}) : tube_piece(5, 3);
        FabricProblem& problem = piece.problem;
        for (std::size_t changes = 1 + below(3); changes > 0; --changes) {
            FabricTriangle& triangle = problem.triangles[below(problem.triangles.size())];
            switch (below(8)) {
                case 0:
                    triangle.nodes[below(3)] = static_cast<std::int32_t>(below(40)) - 2;
                    break;
                case 1:
                    triangle.rest[below(3)] = {value(), value()};
                    break;
                case 2:
                    piece.start[below(piece.start.size())] = {value(), value(), value()};
                    break;
                case 3:
                    problem.bending_stiffness = value();
                    break;
                case 4:
                    problem.area_stretch = value();
                    break;
                case 5:
                    problem.compression_factor = value();
                    break;
                case 6:
                    problem.shear_stiffness = value();
                    break;
                default:
                    problem.stuffed.assign(problem.triangles.size(), value());
                    break;
            }
        }
        FabricOptions options;
        options.max_iterations = 60;
        const FabricShape shape = solve_fabric(problem, piece.start, options);
        if (!shape.usable()) {
            EXPECT_EQ(shape.termination, Termination::unusable_problem);
            continue;
        }
        ++solved;
        for (const Vec3& node : shape.nodes) ASSERT_TRUE(node.allFinite());
        EXPECT_TRUE(std::isfinite(shape.energy) && std::isfinite(shape.pressure) &&
                    std::isfinite(shape.residual));
    }
    EXPECT_GT(solved, 40);
}

TEST(FabricTopology, FindsEdgesAndWhatLiesBesideThem) {
    const FabricPiece ball = round_piece({6, 12, 12, 6});
    const auto closed = topology_of(ball.problem);
    ASSERT_TRUE(closed);
    // Euler: V - E + F = 2 of what is closed.
    EXPECT_EQ(ball.problem.nodes - static_cast<int>(closed->edges.size()) +
                  static_cast<int>(ball.problem.triangles.size()),
              2);
    for (const FabricEdge& edge : closed->edges) EXPECT_FALSE(edge.is_open());
    const FabricPiece tube = tube_piece(7, 3);
    const auto open = topology_of(tube.problem);
    ASSERT_TRUE(open);
    EXPECT_EQ(std::ranges::count_if(open->edges, &FabricEdge::is_open), 14);
}

}  // namespace
}  // namespace roundwright::test
