#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/shape/membrane.h"
#include "core/shape/solve_shape.h"

namespace roundwright {
namespace {

/// A limb: a closed tip of 6 to 24 stitches, a long wall, an open end.
ShapeProblem limb(int wall = 30) {
    ShapeProblem problem;
    problem.rest_loop_mm = {0};
    for (int n = 6; n <= 24; n += 6) problem.rest_loop_mm.push_back(4.0 * n);
    for (int i = 0; i < wall; ++i) problem.rest_loop_mm.push_back(96);
    problem.rest_height_mm.assign(problem.rest_loop_mm.size() - 1, 4);
    problem.area_stretch = 0.04;
    problem.stitch_width_mm = 4;
    return problem;
}

double mean_stretch(const ShapeProblem& problem, const Shape& shape, int first, int last) {
    double area = 0, sum = 0;
    for (int round = first; round <= last; ++round) {
        const auto i = static_cast<std::size_t>(round);
        const double part = problem.rest_loop_mm[i + 1] * problem.rest_height_mm[i];
        area += part;
        sum += part * (std::max(0.0, shape.course_stretch[i + 1]) + std::max(0.0, shape.wale_stretch[i]));
    }
    return sum / area;
}

TEST(StuffedRounds, AreStretchedAndTheOthersAreNot) {
    ShapeProblem problem = limb();
    problem.stuffed_rounds = RoundSpan{0, 15};
    const Shape shape = solve_shape(problem);
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_NEAR(shape.area_stretch, 0.04, 1e-6);
    EXPECT_NEAR(mean_stretch(problem, shape, 0, 15), 0.04, 0.006);
    for (std::size_t i = 22; i < shape.course_stretch.size(); ++i)
        EXPECT_NEAR(shape.course_stretch[i], 0, 2e-3) << i;
    // In the middle of the stuffed wall the hoop is stretched as in a limb stuffed throughout.
    const Shape whole = solve_shape(limb(12));
    EXPECT_NEAR(shape.course_stretch[10], whole.course_stretch[10], 0.01);
    EXPECT_GT(shape.course_stretch[10], 0.02);
}

/// Along the axis the wall below the stuffing's end carries p pi r^2, as that of a closed vessel does: its
/// tension is p r / 2, and around it p r (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
/// ch. 14).
TEST(StuffedRounds, PushAsAVesselDoes) {
    ShapeProblem problem = limb(40);
    problem.stuffed_rounds = RoundSpan{0, 25};
    const Shape shape = solve_shape(problem);
    ASSERT_EQ(shape.termination, Termination::converged);
    const ShapeOptions options;
    const double around = options.course_stiffness * shape.course_stretch[14];
    const double along = options.wale_stiffness * shape.wale_stretch[13];
    EXPECT_NEAR(along / around, 0.5, 0.03);
}

TEST(StuffedRounds, AtTheFarEndTheyLeaveTheTipAlone) {
    ShapeProblem problem = limb();
    problem.stuffed_rounds = RoundSpan{20, 33};
    const Shape shape = solve_shape(problem);
    ASSERT_EQ(shape.termination, Termination::converged);
    EXPECT_NEAR(shape.course_stretch[8], 0, 5e-3);
    EXPECT_GT(shape.course_stretch[27], 0.02);
    EXPECT_GT(shape.volume_mm3, 0);
}

TEST(StuffedRounds, OfAllRoundsAreTheWholePiece) {
    const ShapeProblem problem = limb();
    ShapeProblem said = problem;
    said.stuffed_rounds = RoundSpan{0, 33};
    const Shape whole = solve_shape(problem), same = solve_shape(said);
    EXPECT_EQ(whole.radius_mm, same.radius_mm);
    EXPECT_EQ(whole.z_mm, same.z_mm);
    Piece piece;
    for (int n = 6; n <= 36; n += 6)
        piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
    piece.stuffed_rounds = RoundSpan{0, 5};
    StitchGraph graph;
    EXPECT_FALSE(shape_problem(piece, graph, {}).stuffed_rounds);
}

TEST(StuffedRounds, SettleFromWarmStartsAndWhateverTheSpan) {
    for (int first = 0; first < 34; first += 3)
        for (int last = first; last < 34; last += 4) {
            ShapeProblem problem = limb();
            problem.stuffed_rounds = RoundSpan{first, last};
            const Shape cold = solve_shape(problem);
            EXPECT_EQ(cold.termination, Termination::converged) << first << " to " << last;
            const Shape warm = solve_shape(problem, {}, &cold);
            EXPECT_EQ(warm.termination, Termination::converged);
            EXPECT_NEAR(warm.height_mm, cold.height_mm, 0.01 * cold.height_mm);
        }
}

}  // namespace
}  // namespace roundwright
