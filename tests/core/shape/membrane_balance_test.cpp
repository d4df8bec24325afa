#include <cmath>
#include <functional>
#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

/// A surface of revolution from pole to pole as relaxed fabric in `rounds` rounds of equal parameter step.
ShapeProblem relaxed(const std::function<std::pair<double, double>(double)>& meridian, int rounds,
                     double area_stretch) {
    ShapeProblem problem;
    problem.last = MeridianEnd::pole;
    problem.area_stretch = area_stretch;
    auto [r0, z0] = meridian(0);
    problem.rest_loop_mm.push_back(0);
    for (int i = 1; i <= rounds; ++i) {
        const auto [r, z] = meridian(static_cast<double>(i) / rounds);
        problem.rest_loop_mm.push_back(2 * pi * r);
        problem.rest_height_mm.push_back(std::hypot(r - r0, z - z0));
        r0 = r;
        z0 = z;
    }
    return problem;
}

/// Tension along the meridian over the current loop: k_wale m / (1 + e), the mean of the walls on either
/// side.
double meridian_tension(const Shape& shape, const ShapeOptions& options, std::size_t loop) {
    const double m = (shape.wale_stretch[loop - 1] + shape.wale_stretch[loop]) / 2;
    return options.wale_stiffness * m / (1 + shape.course_stretch[loop]);
}

/// Tension along the loop over the current height: k_course e / (1 + m), less in compression.
double hoop_tension(const Shape& shape, const ShapeOptions& options, std::size_t loop) {
    const double m = (shape.wale_stretch[loop - 1] + shape.wale_stretch[loop]) / 2;
    const double e = shape.course_stretch[loop];
    const double factor = e < 0 ? options.compression_factor : 1;
    return factor * options.course_stiffness * e / (1 + m);
}

ShapeOptions membrane_only(double wale_stiffness) {
    ShapeOptions options;
    options.wale_stiffness = wale_stiffness;
    options.bending_stiffness = 1e-9;
    return options;
}

// Sphere: N = p R / 2 both ways (Timoshenko and Woinowsky-Krieger 1959, ch. 14; Flugge, Stresses in Shells,
// ch. 2; places from memory). Fabric as stiff both ways swells to a sphere.
TEST(Tension, Sphere) {
    const ShapeOptions options = membrane_only(1);
    const Shape sphere = solve_shape(
        relaxed([](double t) { return std::pair(50 * std::sin(pi * t), -50 * std::cos(pi * t)); }, 120, 0.04),
        options);
    ASSERT_EQ(sphere.termination, Termination::converged);
    EXPECT_NEAR(sphere.height_mm / sphere.width_mm, 1, 1e-3);
    const double expected = sphere.pressure * sphere.width_mm / 4;
    for (std::size_t loop = 5; loop <= 115; loop += 10) {
        EXPECT_NEAR(meridian_tension(sphere, options, loop), expected, 0.005 * expected);
        EXPECT_NEAR(hoop_tension(sphere, options, loop), expected, 0.005 * expected);
    }
}

// Cylinder with closed ends: hoop p R, axial p R / 2 (same sources).
TEST(Tension, Cylinder) {
    ShapeProblem tube;
    tube.rest_loop_mm.assign(81, 2 * pi * 20);
    tube.rest_height_mm.assign(80, 2.5);
    tube.first = MeridianEnd::open;
    tube.area_stretch = 0.04;
    const ShapeOptions options = membrane_only(0.5);
    const Shape shape = solve_shape(tube, options);
    ASSERT_EQ(shape.termination, Termination::converged);
    const double expected = shape.pressure * shape.radius_mm[40];
    EXPECT_NEAR(hoop_tension(shape, options, 40), expected, 1e-3 * expected);
    EXPECT_NEAR(meridian_tension(shape, options, 40), expected / 2, 1e-3 * expected);
}

// Cut any shape across: what its walls pull along the axis is what the stuffing pushes on the cut, p times
// the mean disc of the wall (equilibrium of the part below the cut).
TEST(Tension, BalancesOnEveryCut) {
    const ShapeOptions options = membrane_only(0.5);
    for (const MeridianEnd end : {MeridianEnd::drawn_closed, MeridianEnd::open}) {
        const ShapeProblem pear = piece_of({6, 12, 18, 24, 30, 30, 30, 24, 18, 18, 18, 15, 12}, 0.06, end);
        const Shape shape = solve_shape(pear, options);
        ASSERT_EQ(shape.termination, Termination::converged);
        for (std::size_t i = 1; i < shape.radius_mm.size(); ++i) {
            const double a = shape.radius_mm[i - 1];
            const double b = shape.radius_mm[i];
            const double rise = shape.z_mm[i] - shape.z_mm[i - 1];
            const double width = (pear.rest_loop_mm[i - 1] + pear.rest_loop_mm[i]) / 2;
            const double pull =
                options.wale_stiffness * width * shape.wale_stretch[i - 1] * rise / std::hypot(rise, b - a);
            const double push = shape.pressure * pi / 3 * (a * a + a * b + b * b);
            EXPECT_NEAR(pull, push, 1e-5 * push) << "round " << i;
        }
    }
}

Shape spheroid(double a, double b) {
    return solve_shape(
        relaxed([&](double t) { return std::pair(a * std::sin(pi * t), -b * std::cos(pi * t)); }, 200, 1e-4),
        membrane_only(0.5));
}

// Oblate spheroid: the hoop tension at the equator is p a (1 - a^2 / (2 b^2)), compression where a / b is
// above sqrt 2 (same sources).
TEST(Tension, OblateSpheroidWrinklesAboveRootTwo) {
    const Shape rounder = spheroid(1.38 * 50, 50);
    const Shape flatter = spheroid(1.45 * 50, 50);
    ASSERT_EQ(rounder.termination, Termination::converged);
    ASSERT_EQ(flatter.termination, Termination::converged);
    EXPECT_GT(rounder.course_stretch[100], 0);
    EXPECT_LT(flatter.course_stretch[100], 0);
}

// a = 2, b = 1, p = 1: pole 2, equator meridian 1 (computed from the same formulas).
TEST(Tension, OblateSpheroidAtPoleAndEquator) {
    const Shape shape = spheroid(1.2 * 50, 50);
    const ShapeOptions options = membrane_only(0.5);
    const double at_equator = shape.pressure * 60 / 2;
    EXPECT_NEAR(meridian_tension(shape, options, 100), at_equator, 0.005 * at_equator);
    const double at_pole = shape.pressure * 60 * 60 / 50 / 2;
    EXPECT_NEAR(meridian_tension(shape, options, 6), at_pole, 0.02 * at_pole);
}

}  // namespace
}  // namespace roundwright::test
