#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

// k increases a round at w = h make a cone of half angle asin(k / 2 pi) (computed). Six would make 72.7326,
// but yield until they lie flat.
TEST(Cone, HalfAngleFromIncreasesPerRound) {
    const std::pair<int, double> cones[] = {{4, 39.5402}, {5, 52.7285}, {6, 90}};
    for (const auto& [k, degrees] : cones) {
        const Shape cone = solve_shape(piece_of(disc_counts(k, 12), unstuffed_stretch, MeridianEnd::open));
        ASSERT_EQ(cone.termination, Termination::converged);
        for (std::size_t i = 1; i <= 12; ++i) {
            const double across = cone.radius_mm[i] - cone.radius_mm[i - 1];
            const double up = cone.z_mm[i] - cone.z_mm[i - 1];
            EXPECT_NEAR(std::atan2(across, up) * 180 / pi, degrees, 1e-4) << k << " a round, round " << i;
        }
        EXPECT_NEAR(cone.energy, 0, 1e-9);
    }
}

ShapeProblem tube(std::vector<int> counts, double area_stretch) {
    ShapeProblem problem;
    problem.first = MeridianEnd::open;
    for (const int stitches : counts) problem.rest_loop_mm.push_back(stitches * width_mm);
    problem.rest_height_mm.assign(counts.size() - 1, width_mm);
    problem.area_stretch = area_stretch;
    return problem;
}

// A tube does not know which of its ends was worked first.
TEST(Tube, ReversedTableGivesTheMirroredShape) {
    std::vector<int> counts{24, 24, 30, 36, 36, 30, 20, 14, 14, 20, 28, 28, 18};
    for (const double stretch : {unstuffed_stretch, medium_stuffing_stretch}) {
        const Shape shape = solve_shape(tube(counts, stretch));
        std::reverse(counts.begin(), counts.end());
        const Shape mirrored = solve_shape(tube(counts, stretch));
        ASSERT_EQ(shape.termination, Termination::converged);
        ASSERT_EQ(mirrored.termination, Termination::converged);
        const std::size_t last = counts.size() - 1;
        for (std::size_t i = 0; i <= last; ++i) {
            EXPECT_NEAR(shape.radius_mm[i], mirrored.radius_mm[last - i], 1e-5);
            EXPECT_NEAR(shape.z_mm[i], shape.height_mm - mirrored.z_mm[last - i], 1e-5);
        }
        EXPECT_NEAR(shape.volume_mm3, mirrored.volume_mm3, 1e-6 * shape.volume_mm3);
    }
}

TEST(Tube, UnstuffedEvenTubeIsRelaxed) {
    const Shape shape = solve_shape(tube(std::vector<int>(20, 24), unstuffed_stretch));
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_NEAR(shape.width_mm, 24 * width_mm / pi, 1e-6);
    EXPECT_NEAR(shape.height_mm, 19 * width_mm, 1e-6);
    EXPECT_EQ(shape.pressure, 0);
}

}  // namespace
}  // namespace roundwright::test
