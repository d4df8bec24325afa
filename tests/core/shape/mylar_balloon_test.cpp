#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/solve_shape.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

constexpr double flat_radius = 100;

/// Two flat discs joined at the rim, in `rounds` rounds; no hoop stiffness in compression, and stuffing so
/// slight that the meridians keep their length.
Shape mylar_balloon(int rounds) {
    ShapeProblem problem;
    const int half = rounds / 2;
    for (int i = 0; i <= rounds; ++i)
        problem.rest_loop_mm.push_back(2 * pi * flat_radius * std::min(i, rounds - i) / half);
    problem.rest_height_mm.assign(static_cast<std::size_t>(rounds), flat_radius / half);
    problem.last = MeridianEnd::pole;
    problem.area_stretch = 3e-5;
    ShapeOptions options;
    options.compression_factor = 1e-7;
    options.bending_stiffness = 1e-9;
    return solve_shape(problem, options);
}

double worst_miss(const Shape& balloon) {
    const double radius = balloon.width_mm / 2;
    return std::max({std::abs(radius / flat_radius / 0.762759763501813 - 1),
                     std::abs(balloon.height_mm / balloon.width_mm / 0.599070117367796 - 1),
                     std::abs(balloon.volume_mm3 / std::pow(flat_radius, 3) / 1.21852421611857 - 1)});
}

// W. H. Paulsen, What is the shape of a Mylar balloon?, Amer. Math. Monthly 101 (1994) 953-958; Mladenov and
// Oprea, Amer. Math. Monthly 110 (2003) 761-784. Digits computed from their formulas: r / a, t / 2 r, V /
// a^3.
TEST(MylarBalloon, HasItsShape) {
    const Shape balloon = mylar_balloon(200);
    ASSERT_EQ(balloon.termination, Termination::converged);
    EXPECT_LT(worst_miss(balloon), 0.001);
    EXPECT_NEAR(balloon.height_mm / flat_radius, 0.913893162088927, 0.002);
    EXPECT_NEAR(balloon.surface_mm2, pi * pi * std::pow(balloon.width_mm / 2, 2),
                0.005 * balloon.surface_mm2);
}

// The profile by arc length: s / a and x / r (same sources).
TEST(MylarBalloon, HasItsProfile) {
    const Shape balloon = mylar_balloon(200);
    ASSERT_EQ(balloon.termination, Termination::converged);
    const std::pair<std::size_t, double> profile[] = {
        {25, 0.327379323}, {50, 0.643594253}, {75, 0.897995292}};
    for (const auto& [round, expected] : profile)
        EXPECT_NEAR(balloon.radius_mm[round] / (balloon.width_mm / 2), expected, 0.001);
}

TEST(MylarBalloon, ConvergesWithRounds) {
    const double at_20 = worst_miss(mylar_balloon(20));
    const double at_60 = worst_miss(mylar_balloon(60));
    const double at_200 = worst_miss(mylar_balloon(200));
    EXPECT_GT(at_20, 3 * at_60);
    EXPECT_GT(at_60, at_200);
}

}  // namespace
}  // namespace roundwright::test
