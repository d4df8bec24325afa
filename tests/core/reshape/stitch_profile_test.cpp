#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/reshape/rounds_for_meridian.h"

namespace roundwright {
namespace {

using std::numbers::pi;

StitchProfile profile(std::vector<double> at_round, std::vector<double> stitches, bool ring = true,
                      bool closed = false) {
    return {std::move(at_round), std::move(stitches), ring, closed};
}

TEST(StitchProfile, IsStraightBetweenItsKnots) {
    const StitchProfile p = profile({0, 2, 3}, {0, 12, 10});
    EXPECT_EQ(p.rounds(), 3);
    EXPECT_EQ(p.stitches_at(-1), 0);
    EXPECT_EQ(p.stitches_at(0), 0);
    EXPECT_EQ(p.stitches_at(0.5), 3);
    EXPECT_EQ(p.stitches_at(2), 12);
    EXPECT_EQ(p.stitches_at(2.25), 11.5);
    EXPECT_EQ(p.stitches_at(3), 10);
    EXPECT_EQ(p.stitches_at(9), 10);
}

ShapeProblem three_rounds(MeridianEnd last) {
    ShapeProblem problem;
    problem.rest_loop_mm = {0, 30, 60, 50};
    problem.rest_height_mm = {5, 5, 8};
    problem.last = last;
    problem.fan_height_mm = 2.5;
    problem.stitch_width_mm = 5;
    return problem;
}

TEST(StitchProfile, OfAPieceHasALoopARoundAndItsFan) {
    const StitchProfile open = stitch_profile(three_rounds(MeridianEnd::open), 5);
    EXPECT_EQ(open.at_round, (std::vector<double>{0, 1, 2, 3}));
    EXPECT_EQ(open.stitches, (std::vector<double>{0, 6, 12, 10}));
    EXPECT_TRUE(open.ring_start);
    EXPECT_FALSE(open.drawn_closed);
    const StitchProfile closed = stitch_profile(three_rounds(MeridianEnd::drawn_closed), 5);
    EXPECT_EQ(closed.at_round.back(), 3 + 2.5 / 8);
    EXPECT_EQ(closed.stitches.back(), 0);
    EXPECT_TRUE(closed.drawn_closed);
}

TEST(StitchProfile, TakesAsManyRoundsAsItIsLongLessTheFan) {
    const StitchProfile open = profile({0, 10}, {0, 60});
    const StitchProfile closed = profile({0, 5, 10}, {0, 30, 0}, true, true);
    EXPECT_EQ(rounds_wanted(open, {1, 1.5}, 0.5), 15);
    EXPECT_EQ(rounds_wanted(closed, {1, 1.5}, 0.5), 14.5);
}

TEST(StitchProfile, PlacesSpreadOverTheWholeOrFromTheFarEnd) {
    const StitchProfile open = profile({0, 10}, {0, 60});
    EXPECT_EQ(places_of_rounds(open, {1, 1}, 0.5, 4, 0), (std::vector<double>{2.5, 5, 7.5, 10}));
    EXPECT_EQ(places_of_rounds(open, {1, 2}, 0.5, 4, 1), (std::vector<double>{8.5, 9, 9.5, 10}));
    EXPECT_EQ(places_of_rounds(open, {1, 0.25}, 0.5, 4, 1), (std::vector<double>{0, 2, 6, 10}));
    const StitchProfile closed = profile({0, 5, 10}, {0, 30, 0}, true, true);
    EXPECT_EQ(places_of_rounds(closed, {1, 1}, 1, 4, 0), (std::vector<double>{2, 4, 6, 8}));
}

TEST(StitchProfile, WantsItsStitchesTimesTheScale) {
    const StitchProfile p = profile({0, 4, 8}, {0, 24, 24});
    EXPECT_EQ(wanted_stitches(p, {1.5, 1.5}, {1, 2, 4, 8}, 100), (std::vector<double>{9, 18, 36, 36}));
}

/// Wider and no longer would ruffle: each round grows by what lies flat at most, or by what it does unscaled.
TEST(StitchProfile, GrowsNoFasterThanFlatOrThanItDidBefore) {
    const StitchProfile slow = profile({0, 4}, {0, 24});
    const auto held = wanted_stitches(slow, {2, 1}, {1, 2, 3, 4}, 6.5);
    EXPECT_EQ(held, (std::vector<double>{6.5, 13, 19.5, 26}));
    const StitchProfile fast = profile({0, 4}, {0, 40});
    EXPECT_EQ(wanted_stitches(fast, {2, 1}, {1, 2, 3, 4}, 6.5), (std::vector<double>{10, 20, 30, 40}));
    // A tenth that whole rounds leave over is no ruffle.
    EXPECT_NEAR(wanted_stitches(fast, {2, 1.05}, {1, 2, 3, 4}, 6.5)[1], 21, 1e-12);
    EXPECT_NEAR(wanted_stitches(fast, {2, 1.5}, {1, 2, 3, 4}, 6.5)[1], 22, 1e-12);
}

TEST(StitchProfile, ClosesNoFasterThanFlatEither) {
    const StitchProfile closing = profile({0, 4}, {24, 0}, false);
    EXPECT_EQ(wanted_stitches(closing, {2, 1}, {1, 2, 3, 4}, 6.5), (std::vector<double>{19.5, 13, 6.5, 0}));
}

/// The thread of a last round draws in one and a half flat rounds of stitches, or what it did before.
TEST(StitchProfile, TheLastRoundHasNoMoreThanTheThreadDrawsIn) {
    const StitchProfile p = profile({0, 4, 5}, {0, 24, 0}, true, true);
    EXPECT_EQ(wanted_stitches(p, {3, 1}, {1, 2, 3, 4}, 100).back(), 72);
    EXPECT_EQ(wanted_stitches(p, {3, 1}, {1, 2, 3, 4}, 6).back(), 24);
    EXPECT_EQ(wanted_stitches(p, {3, 1}, {1, 2, 3, 3.5}, 20).back(), 30);
}

TEST(FabricAlong, EvenlyStretchedSharesTheStretchByStiffness) {
    const Silhouette line{{Vec2(0, 0), Vec2(5, 0), Vec2(5, 9)}};
    const FabricAlong fabric = evenly_stretched(line, 0.06, {5, 4, 0, 0});
    // Twice as stiff along the rounds as across them: a third and two thirds.
    ASSERT_EQ(fabric.course_stretch.size(), 3U);
    ASSERT_EQ(fabric.round_mm.size(), 2U);
    EXPECT_NEAR(fabric.course_stretch[1], 0.02, 1e-12);
    EXPECT_NEAR(fabric.round_mm[0], 4 * 1.04, 1e-12);
}

TEST(StitchProfile, WalksASilhouetteInSteps) {
    const Silhouette line{{Vec2(0, 0), Vec2(10, 0), Vec2(10, 0), Vec2(10, 12)}};
    const StitchProfile p = stitch_profile(line, {{0, 0.25, 0.25, 0}, {5, 5, 6}}, 4);
    EXPECT_EQ(p.at_round,
              (std::vector<double>{0, 2, 4}));  // a point that stands on its neighbour counts once
    EXPECT_NEAR(p.stitches[1], 2 * pi * 10 / (4 * 1.25), 1e-12);
    EXPECT_NEAR(p.stitches[2], 2 * pi * 10 / 4, 1e-12);
    EXPECT_TRUE(p.ring_start);
    EXPECT_FALSE(p.drawn_closed);
    const StitchProfile turned =
        stitch_profile({{Vec2(10, 0), Vec2(10, 12), Vec2(0, 12)}}, {{0, 0, 0}, {6, 5}}, 4);
    EXPECT_FALSE(turned.ring_start);
    EXPECT_TRUE(turned.drawn_closed);
}

TEST(FabricAlong, AsSolvedHasTheStretchOfTheShape) {
    Shape shape;
    shape.radius_mm = {0, 5, 9, 8};
    shape.z_mm = {0, 1, 4, 12};
    shape.course_stretch = {0, 0.1, 0.2, 0.3};
    shape.wale_stretch = {0.02, 0.04, 0.5};
    shape.last_pole_z_mm = 18;
    const FabricAlong open = as_solved(three_rounds(MeridianEnd::open), shape);
    EXPECT_EQ(open.course_stretch, shape.course_stretch);
    EXPECT_EQ(open.round_mm, (std::vector<double>{5.1, 5.2, 12}));
    const FabricAlong closed = as_solved(three_rounds(MeridianEnd::drawn_closed), shape);
    EXPECT_EQ(closed.course_stretch.back(), 0.3);
    EXPECT_NEAR(closed.round_mm.back(), 10 * 8 / 2.5, 1e-12);  // a fan of 10 mm that is meant to be 2.5 high
}

}  // namespace
}  // namespace roundwright
