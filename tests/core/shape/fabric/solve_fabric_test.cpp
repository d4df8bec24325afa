#include "core/shape/fabric/solve_fabric.h"

#include <Eigen/Geometry>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>
#include <random>

#include "tests/support/fabric_piece.h"
#include "tests/support/fabric_split.h"

namespace roundwright::test {
namespace {

FabricOptions finely() {
    FabricOptions options;
    options.largest_move = 1e-6;
    options.relative_gradient = 1e-8;
    options.relative_stretch = 1e-8;
    return options;
}

Vec3 size_of(const std::vector<Vec3>& nodes) {
    Vec3 low = nodes.front();
    Vec3 high = nodes.front();
    for (const Vec3& node : nodes) {
        low = low.cwiseMin(node);
        high = high.cwiseMax(node);
    }
    return high - low;
}

/// The largest difference of two nodes' distances: what no motion of the whole changes.
double distance_of_shapes(const std::vector<Vec3>& a, const std::vector<Vec3>& b) {
    double largest = 0;
    for (std::size_t i = 1; i < a.size(); ++i)
        for (const std::size_t from : {std::size_t{0}, i / 2})
            largest = std::max(largest, std::abs((a[i] - a[from]).norm() - (b[i] - b[from]).norm()));
    return largest;
}

TEST(SolveFabric, TurningAndMovingTheStartChangesNothingElse) {
    const FabricPiece piece = round_piece(ball_counts(4));
    const FabricShape shape = solve_fabric(piece.problem, piece.start, finely());
    ASSERT_EQ(shape.termination, Termination::converged);
    const Eigen::AngleAxisd turn(1.1, Vec3(1, 2, 3).normalized());
    std::vector<Vec3> moved;
    for (const Vec3& node : piece.start) moved.push_back(turn * node + Vec3(30, -200, 70));
    const FabricShape other = solve_fabric(piece.problem, moved, finely());
    ASSERT_EQ(other.termination, Termination::converged);
    EXPECT_NEAR(other.energy, shape.energy, 1e-9 * shape.energy);
    EXPECT_NEAR(other.volume_mm3, shape.volume_mm3, 1e-6 * shape.volume_mm3);
    EXPECT_LT(distance_of_shapes(shape.nodes, other.nodes), 1e-3);
}

TEST(SolveFabric, TheMirroredPieceHasTheMirroredShape) {
    FabricPiece piece = round_piece({6, 12, 17, 23, 20, 14, 7});
    const FabricShape shape = solve_fabric(piece.problem, piece.start, finely());
    ASSERT_EQ(shape.termination, Termination::converged);
    for (FabricTriangle& t : piece.problem.triangles) {
        std::swap(t.nodes[1], t.nodes[2]);
        std::swap(t.rest[1], t.rest[2]);
        for (Vec2& at : t.rest) at.x() = -at.x();
    }
    for (Vec3& node : piece.start) node.x() = -node.x();
    const FabricShape mirrored = solve_fabric(piece.problem, piece.start, finely());
    ASSERT_EQ(mirrored.termination, Termination::converged);
    EXPECT_NEAR(mirrored.energy, shape.energy, 1e-9 * shape.energy);
    EXPECT_LT(distance_of_shapes(shape.nodes, mirrored.nodes), 1e-3);
}

TEST(SolveFabric, IsTheSameToTheLastBit) {
    const FabricPiece piece = oval_piece(6, 3, 2, 3);
    const FabricShape a = solve_fabric(piece.problem, piece.start);
    const FabricShape b = solve_fabric(piece.problem, piece.start);
    ASSERT_TRUE(a.usable());
    EXPECT_EQ(a.energy, b.energy);
    EXPECT_EQ(a.nodes, b.nodes);
}

// Against the round solve: width within 2 %, height within 4 %.
TEST(SolveFabric, AStaggeredBallIsNearTheRoundSolve) {
    for (const int n : {4, 6, 9}) {
        const FabricPiece piece = round_piece(ball_counts(n));
        const FabricShape shape = solve_fabric(piece.problem, piece.start);
        ASSERT_EQ(shape.termination, Termination::converged);
        const Vec3 found = size_of(shape.nodes);
        const Vec3 round = size_of(piece.start);
        EXPECT_NEAR(found.x(), round.x(), 0.02 * round.x());
        EXPECT_NEAR(found.y(), round.y(), 0.02 * round.y());
        EXPECT_NEAR(found.z(), round.z(), 0.04 * round.z());
    }
}

// Gauss: what is flat by its lengths can be laid flat, and bends nowhere.
TEST(SolveFabric, ADevelopableSheetComesOutFlat) {
    FabricPiece piece = sheet_piece(12, 9);
    for (Vec3& node : piece.start) {  // rolled around a cylinder
        const double angle = node.x() / 15;
        node = {15 * std::sin(angle), node.y(), 15 - 15 * std::cos(angle)};
    }
    const FabricShape shape = solve_fabric(piece.problem, piece.start, finely());
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_LT(shape.energy, 1e-6);
    EXPECT_NEAR((shape.nodes.back() - shape.nodes.front()).norm(), std::hypot(60, 45), 1e-2);
    EXPECT_NEAR((shape.nodes[12] - shape.nodes.front()).norm(), 60, 1e-2);
}

// An open tube that is not stuffed keeps its lengths; what it has is the energy of its bending alone.
TEST(SolveFabric, AnUnstuffedTubeKeepsItsLengths) {
    FabricPieceOptions options;
    options.area_stretch = 0;
    const FabricPiece piece = tube_piece(20, 8, options);
    const FabricShape shape = solve_fabric(piece.problem, piece.start, finely());
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_LT(shape.area_stretch, 0.01);
    EXPECT_NEAR(size_of(shape.nodes).z(), 40, 0.4);
}

TEST(SolveFabric, SplittingCellsConverges) {
    FabricPieceOptions options;
    options.round_height_mm = 5;
    FabricPiece piece = round_piece(ball_counts(3), options);
    std::vector<double> energies;
    std::vector<Vec3> sizes;
    for (int k = 0; k < 4; ++k) {
        const FabricShape shape = solve_fabric(piece.problem, piece.start);
        ASSERT_EQ(shape.termination, Termination::converged);
        energies.push_back(shape.energy);
        sizes.push_back(size_of(shape.nodes));
        piece.start = shape.nodes;
        piece = split_in_four(piece);
    }
    // The bending about a cone's point grows with the logarithm of how fine the cells are (Seung and Nelson,
    // Phys. Rev. A 38 (1988) 1005), and both ends have one: by the same amount each time, and a small one.
    for (std::size_t k = 1; k < energies.size(); ++k)
        EXPECT_LT(std::abs(energies[k] / energies[k - 1] - 1), k == 1 ? 0.04 : 0.015);
    EXPECT_NEAR(sizes[0].x(), sizes[3].x(), 0.02 * sizes[3].x());
    EXPECT_NEAR(sizes[0].z(), sizes[3].z(), 0.02 * sizes[3].z());
}

// Drawn to a point: sewn straight it can fold at its seam in several ways, whose energies differ by 0.5 %.
TEST(SolveFabric, AnOvalHasOneEnergyFromSeveralStarts) {
    const FabricPiece piece = oval_piece(8, 3, 4, 5);
    std::mt19937 random(3);
    std::normal_distribution<double> normal;
    std::vector<std::vector<Vec3>> starts(4, piece.start);
    for (Vec3& node : starts[1]) node *= 1.3;
    for (Vec3& node : starts[2]) node.x() *= 0.7, node.z() *= 1.4;
    for (Vec3& node : starts[3])
        for (double& part : node) part += normal(random);
    std::vector<FabricShape> shapes;
    for (const std::vector<Vec3>& start : starts) {
        shapes.push_back(solve_fabric(piece.problem, start));
        ASSERT_EQ(shapes.back().termination, Termination::converged);
    }
    for (const FabricShape& shape : shapes) {
        EXPECT_NEAR(shape.energy, shapes[0].energy, 1e-3 * shapes[0].energy);
        EXPECT_LT(distance_of_shapes(shape.nodes, shapes[0].nodes), 0.3);
    }
}

// Eight a round is more than a disc holds (2 pi): where fabric resists being pushed together, it rises in
// waves although it starts flat.
TEST(SolveFabric, AFlatStartFindsTheRuffle) {
    FabricPieceOptions options;
    options.area_stretch = 0;
    options.drawn_closed = false;
    FabricPiece piece = round_piece({8, 16, 24, 32, 40, 48, 56, 64}, options);
    for (Vec3& node : piece.start) node.z() = 0;
    piece.problem.compression_factor = 0.5;
    const FabricShape shape = solve_fabric(piece.problem, piece.start);
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_GT(size_of(shape.nodes).z(), 10);
}

TEST(SolveFabric, HeldNodesStay) {
    FabricPiece piece = sheet_piece(6, 6);
    piece.problem.fixed = {0, 6, 42, 48};
    for (const std::int32_t node : piece.problem.fixed) piece.start[static_cast<std::size_t>(node)] *= 1.1;
    const FabricShape shape = solve_fabric(piece.problem, piece.start);
    ASSERT_EQ(shape.termination, Termination::converged);
    for (const std::int32_t node : piece.problem.fixed)
        EXPECT_EQ(shape.nodes[static_cast<std::size_t>(node)], piece.start[static_cast<std::size_t>(node)]);
    EXPECT_GT(shape.area_stretch, 0.05);
}

TEST(SolveFabric, AStopEndsItAtOnce) {
    const FabricPiece piece = round_piece(ball_counts(4));
    std::stop_source source;
    FabricOptions options;
    options.stop = source.get_token();
    int told = 0;
    options.progress = [&](double share) {
        EXPECT_GE(share, 0);
        EXPECT_LE(share, 1);
        ++told;
        source.request_stop();
    };
    const FabricShape during = solve_fabric(piece.problem, piece.start, options);
    EXPECT_EQ(during.termination, Termination::cancelled);
    EXPECT_EQ(told, 1);
    const FabricShape before = solve_fabric(piece.problem, piece.start, options);
    EXPECT_EQ(before.termination, Termination::cancelled);
    EXPECT_EQ(before.iterations, 0);
    EXPECT_EQ(before.nodes, piece.start);
}

TEST(SolveFabric, TheLimitOfIterationsHolds) {
    const FabricPiece piece = round_piece(ball_counts(4));
    FabricOptions options;
    options.max_iterations = 2;
    const FabricShape shape = solve_fabric(piece.problem, piece.start, options);
    EXPECT_EQ(shape.termination, Termination::iteration_limit);
    EXPECT_EQ(shape.iterations, 2);
}

TEST(SolveFabric, ItsOwnShapeIsTheQuickestStart) {
    const FabricPiece piece = round_piece(ball_counts(5));
    const FabricShape cold = solve_fabric(piece.problem, piece.start);
    const FabricShape warm = solve_fabric(piece.problem, cold.nodes);
    EXPECT_EQ(warm.termination, Termination::converged);
    EXPECT_LT(warm.iterations, cold.iterations);
    EXPECT_LT(distance_of_shapes(cold.nodes, warm.nodes), 0.1);
}

}  // namespace
}  // namespace roundwright::test
