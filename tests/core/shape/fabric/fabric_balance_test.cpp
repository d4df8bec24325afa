#include <Eigen/Geometry>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/fabric/fabric_energy.h"
#include "core/shape/fabric/solve_fabric.h"
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

Positions flat(const std::vector<Vec3>& nodes) {
    Positions x;
    for (const Vec3& node : nodes) x.insert(x.end(), {node.x(), node.y(), node.z()});
    return x;
}

FabricEnergy energy_of(const FabricProblem& problem) { return {problem, *topology_of(problem)}; }

Vec3 force_on(const std::vector<double>& forces, std::size_t i) { return Vec3(forces.data() + 3 * i); }

TEST(FabricBalance, PressureAndFabricBalanceAtEveryNode) {
    for (const FabricPiece& piece : {round_piece(ball_counts(4)), tube_piece(12, 6)}) {
        const FabricShape shape = solve_fabric(piece.problem, piece.start, finely());
        ASSERT_EQ(shape.termination, Termination::converged);
        const FabricEnergy energy = energy_of(piece.problem);
        const Positions x = flat(shape.nodes);
        std::vector<double> fabric(x.size());
        std::vector<double> pressure(x.size());
        energy.energy_gradient(x, fabric.data());
        energy.volume_gradient(x, pressure.data());
        for (std::size_t i = 0; i < x.size(); ++i)
            EXPECT_NEAR(fabric[i], shape.pressure * pressure[i], 1e-8 * energy.force_scale());
    }
}

// Neither moves or turns the whole: the sum of forces, and of their moments, is nothing for any positions.
TEST(FabricBalance, ForcesAddUpToNothing) {
    FabricPiece part = tube_piece(9, 6);
    part.problem.stuffed.assign(part.problem.triangles.size(), 1.0);
    for (std::size_t t = 40; t < part.problem.stuffed.size(); ++t) part.problem.stuffed[t] = 0.3;
    for (const FabricPiece& piece : {round_piece({6, 12, 15, 9}), part, oval_piece(4, 3, 2, 2)}) {
        const FabricEnergy energy = energy_of(piece.problem);
        Positions x = flat(piece.start);
        for (std::size_t i = 0; i < x.size(); ++i) x[i] += std::sin(static_cast<double>(7 * i));
        std::vector<double> forces(x.size());
        for (const bool of_pressure : {false, true}) {
            of_pressure ? energy.volume_gradient(x, forces.data()) : energy.energy_gradient(x, forces.data());
            Vec3 sum = Vec3::Zero();
            Vec3 moment = Vec3::Zero();
            double size = 0;
            for (std::size_t i = 0; i < piece.start.size(); ++i) {
                sum += force_on(forces, i);
                moment += Vec3(x.data() + 3 * i).cross(force_on(forces, i));
                size += force_on(forces, i).norm();
            }
            EXPECT_LT(sum.norm(), 1e-12 * size);
            EXPECT_LT(moment.norm(), 1e-10 * size);
        }
    }
}

// A prism's volume is known; the same of a part of it, and of a share (divergence theorem).
TEST(FabricBalance, VolumeIsThatOfThePrism) {
    const FabricPiece tube = tube_piece(10, 6);
    const double radius = 50 / (2 * std::numbers::pi);
    const double base = 10 * radius * radius * std::sin(2 * std::numbers::pi / 10) / 2;
    EXPECT_NEAR(energy_of(tube.problem).volume(flat(tube.start)), base * 30, 1e-9 * base * 30);
    FabricPiece part = tube;
    part.problem.caps = {part.rings.front(), part.rings.back()};
    part.problem.stuffed.assign(part.problem.triangles.size(), 1.0);
    for (std::size_t t = 40; t < 80; ++t) part.problem.stuffed[t] = 0.5;
    for (std::size_t t = 80; t < 120; ++t) part.problem.stuffed[t] = 0;
    Positions x = flat(part.start);
    for (std::size_t i = 0; i < x.size(); i += 3) x[i] += 100;
    EXPECT_NEAR(energy_of(part.problem).volume(x), base * 15, 1e-9 * base * 15);
}

FabricPiece isotropic(FabricPiece piece, double stretch) {
    piece.problem.wale_stiffness = 1;
    piece.problem.shear_stiffness = 0.5;  // of an isotropic one without Poisson's effect: half
    piece.problem.bending_stiffness = 1e-6;
    piece.problem.area_stretch = stretch;
    return piece;
}

double largest_distance(const std::vector<Vec3>& nodes) {
    double largest = 0;
    for (const Vec3& node : nodes) largest = std::max(largest, node.norm());
    return largest;
}

// Young and Laplace: p = 2 T / R. With equal stretches l the tension of this material is k (l^2 - 1) / 2, and
// the mean area stretch 2 (l - 1).
TEST(FabricBalance, ASphereHasYoungAndLaplacesTension) {
    for (const double stretch : {0.02, 0.08, 0.2}) {
        const FabricPiece piece = isotropic(sphere_piece(40, 4), stretch);
        const FabricShape shape = solve_fabric(piece.problem, piece.start, finely());
        ASSERT_EQ(shape.termination, Termination::converged);
        const double l = 1 + stretch / 2;
        EXPECT_NEAR(shape.pressure, (l * l - 1) / (40 * l), 0.005 * shape.pressure);
        EXPECT_NEAR(largest_distance(shape.nodes), 40 * l, 0.002 * 40);
    }
}

// A long closed tube: p R around, and half of that along.
TEST(FabricBalance, ATubeHasTwiceTheTensionAroundThatItHasAlong) {
    FabricPieceOptions options;
    options.area_stretch = 0.05;
    options.stitch_width_mm = options.round_height_mm = 2;
    const FabricPiece piece = tube_piece(60, 80, options);
    const FabricShape shape = solve_fabric(piece.problem, piece.start, finely());
    ASSERT_EQ(shape.termination, Termination::converged);
    const auto ring_of = [&](std::size_t i) {
        double radius = 0;
        double z = 0;
        for (const std::int32_t node : piece.rings[i]) {
            const Vec3& at = shape.nodes[static_cast<std::size_t>(node)];
            radius += std::hypot(at.x(), at.y()) / 60;
            z += at.z() / 60;
        }
        return std::pair(radius, z);
    };
    const auto [radius, z] = ring_of(40);
    const double around = 2 * radius * std::sin(std::numbers::pi / 60) / 2;  // of each chord
    const double along = (ring_of(50).second - ring_of(30).second) / 40;
    // Per length as it lies: T = k E l / l', with l' the stretch the other way.
    const double t_around = (around * around - 1) / 2 * around / along;
    const double t_along = 0.5 * (along * along - 1) / 2 * along / around;
    EXPECT_NEAR(t_around, shape.pressure * radius, 0.01 * t_around);
    EXPECT_NEAR(t_along, t_around / 2, 0.01 * t_around);
}

TEST(FabricBalance, TheMeanStretchIsTheOneThatWasAskedFor) {
    for (const double stretch : {0.01, 0.04, 0.08, 0.2}) {
        FabricPieceOptions options;
        options.area_stretch = stretch;
        const FabricPiece piece = round_piece(ball_counts(4), options);
        const FabricShape shape = solve_fabric(piece.problem, piece.start);
        ASSERT_EQ(shape.termination, Termination::converged);
        EXPECT_NEAR(shape.area_stretch, stretch, 1e-3 * stretch);
        EXPECT_GT(shape.pressure, 0);
    }
}

// Misfit alone stretches it more than that: a slight pressure stays, as in the round solve.
TEST(FabricBalance, WhereMisfitStretchesMoreASlightPressureStays) {
    FabricPieceOptions options;
    options.area_stretch = 1e-4;
    const FabricPiece piece = round_piece({6, 18, 18, 6, 18, 18, 6}, options);
    const FabricShape shape = solve_fabric(piece.problem, piece.start);
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_GT(shape.area_stretch, 1e-4);
    EXPECT_GT(shape.pressure, 0);
}

}  // namespace
}  // namespace roundwright::test
