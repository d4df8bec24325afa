#include <gtest/gtest.h>
#include <random>

#include "core/shape/fabric/fabric_energy.h"
#include "tests/support/derivative_check.h"
#include "tests/support/fabric_piece.h"

namespace roundwright::test {
namespace {

struct Case {
    const char* name;
    FabricPiece piece;
    double shift = 1.5;  ///< how far each node is moved, mm
};

FabricPiece half_stuffed_tube() {
    FabricPiece piece = tube_piece(7, 4);
    piece.problem.stuffed.assign(piece.problem.triangles.size(), 1.0);
    for (std::size_t t = 30; t < piece.problem.stuffed.size(); ++t) piece.problem.stuffed[t] = 0.25;
    return piece;
}

FabricPiece capped_tube() {
    FabricPiece piece = tube_piece(6, 3);
    piece.problem.caps = {piece.rings.front(), piece.rings.back()};
    return piece;
}

FabricPiece held_sheet() {
    FabricPiece piece = sheet_piece(3, 3);
    piece.problem.fixed = {0, 5};
    return piece;
}

std::vector<Case> cases() {
    return {{"ball", round_piece({6, 12, 12, 6})},
            {"ball out of shape, with triangles pushed below the barrier", round_piece({6, 12, 12, 6}), 4},
            {"oval", oval_piece(3, 2, 1, 1)},
            {"tube stuffed in part", half_stuffed_tube()},
            {"tube with caps", capped_tube()},
            {"sheet with nodes held", held_sheet()}};
}

Positions moved(const FabricPiece& piece, double shift) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> by(-shift, shift);
    Positions x;
    for (const Vec3& node : piece.start)
        for (Eigen::Index k = 0; k < 3; ++k) x.push_back(node[k] + by(random));
    return x;
}

FabricEnergy energy_of(const FabricProblem& problem) { return {problem, *topology_of(problem)}; }

DerivativeCheck check_of(const FabricEnergy& energy) {
    DerivativeCheck check;
    check.is_fixed = [&](std::size_t i) { return energy.is_fixed(i / 3); };
    return check;
}

// No source needed: the definition of a derivative.
TEST(FabricDerivatives, GradientsAgreeWithDifferences) {
    for (const Case& c : cases()) {
        SCOPED_TRACE(c.name);
        const FabricEnergy energy = energy_of(c.piece.problem);
        const Positions x = moved(c.piece, c.shift);
        std::vector<double> out(energy.unknowns());
        energy.energy_gradient(x, out.data());
        EXPECT_TRUE(is_gradient(
            out, [&](const Positions& at) { return energy.energy(at); }, x, check_of(energy)));
        energy.volume_gradient(x, out.data());
        EXPECT_TRUE(is_gradient(
            out, [&](const Positions& at) { return energy.volume(at); }, x, check_of(energy)));
        energy.area_stretch_gradient(x, out.data());
        EXPECT_TRUE(is_gradient(
            out, [&](const Positions& at) { return energy.area_stretch(at); }, x, check_of(energy)));
    }
}

/// A column of the matrix of second derivatives of E - p V.
std::vector<double> column(const FabricEnergy& energy, const BlockMatrix& matrix, const Positions& x,
                           double pressure, std::size_t i) {
    std::vector<double> unit(x.size(), 0.0);
    std::vector<double> out(x.size());
    unit[i] = 1;
    matrix.multiply(unit.data(), out.data());
    energy.add_fans_product(x, pressure, unit.data(), out.data());
    return out;
}

TEST(FabricDerivatives, SecondDerivativesAgreeWithDifferences) {
    constexpr double pressure = 0.02;
    for (const Case& c : cases()) {
        SCOPED_TRACE(c.name);
        const FabricEnergy energy = energy_of(c.piece.problem);
        const Positions x = moved(c.piece, c.shift);
        BlockMatrix matrix = energy.hessian_matrix();
        energy.hessian(x, pressure, Curvature::exact, matrix);
        const auto gradient = [&](const Positions& at) {
            std::vector<double> out(at.size());
            std::vector<double> volume(at.size());
            energy.energy_gradient(at, out.data());
            energy.volume_gradient(at, volume.data());
            for (std::size_t i = 0; i < out.size(); ++i) out[i] -= pressure * volume[i];
            return out;
        };
        std::vector<std::vector<double>> columns;
        for (std::size_t i = 0; i < x.size(); ++i) columns.push_back(column(energy, matrix, x, pressure, i));
        DerivativeCheck check = check_of(energy);
        for (std::size_t i = 0; i < x.size(); i += 5) {
            std::vector<double> above = x;
            std::vector<double> below = x;
            above[i] += check.step;
            below[i] -= check.step;
            const std::vector<double> a = gradient(above);
            const std::vector<double> b = gradient(below);
            for (std::size_t r = 0; r < x.size(); ++r) {
                if (energy.is_fixed(r / 3) || energy.is_fixed(i / 3)) continue;
                const double expected = (a[r] - b[r]) / (2 * check.step);
                ASSERT_NEAR(columns[i][r], expected, 2e-6 * (1 + std::abs(expected))) << r << ", " << i;
            }
        }
        for (std::size_t i = 0; i < x.size(); ++i)
            for (std::size_t r = 0; r < i; ++r) ASSERT_NEAR(columns[i][r], columns[r][i], 1e-9);
    }
}

// x^T A x >= 0 for any x, and for the majorant no less than the square of what it stands for.
TEST(FabricDerivatives, WhatIsProjectedHasNoNegativeCurvature) {
    std::mt19937 random(11);
    std::normal_distribution<double> normal;
    for (const Case& c : cases()) {
        SCOPED_TRACE(c.name);
        const FabricEnergy energy = energy_of(c.piece.problem);
        const Positions x = moved(c.piece, c.shift);
        BlockMatrix projected = energy.hessian_matrix();
        BlockMatrix majorant = energy.one_ring_matrix();
        energy.hessian(x, 0, Curvature::projected, projected);
        energy.one_ring_majorant(x, majorant);
        Eigen::VectorXd v(x.size());
        Eigen::VectorXd a(x.size());
        Eigen::VectorXd b(x.size());
        for (int k = 0; k < 200; ++k) {
            for (double& entry : v) entry = normal(random);
            projected.multiply(v.data(), a.data());
            majorant.multiply(v.data(), b.data());
            EXPECT_GE(v.dot(a), -1e-9);
            EXPECT_GE(v.dot(b), v.dot(a) * (1 - 1e-12));
        }
    }
}

}  // namespace
}  // namespace roundwright::test
