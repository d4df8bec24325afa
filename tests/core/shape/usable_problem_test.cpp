#include <cmath>
#include <gtest/gtest.h>

#include "core/shape/lies_limp.h"
#include "core/shape/meridian.h"
#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

ShapeProblem good() { return piece_of({6, 12, 12}, 0.04, MeridianEnd::drawn_closed); }

TEST(UsableProblem, LengthsAreBetweenAMillionthAndAMillionMetres) {
    for (const double length : {1e-6, 1e9}) {
        ShapeProblem problem = good();
        problem.rest_loop_mm[2] = length;
        EXPECT_TRUE(is_usable(problem)) << length;
        problem = good();
        problem.rest_height_mm[0] = length;
        EXPECT_TRUE(is_usable(problem)) << length;
        problem = good();
        problem.fan_height_mm = length;
        EXPECT_TRUE(is_usable(problem)) << length;
    }
    for (const double length : {0.99e-6, 1.01e9}) {
        ShapeProblem problem = good();
        problem.rest_loop_mm[2] = length;
        EXPECT_FALSE(is_usable(problem)) << length;
        problem = good();
        problem.rest_height_mm[0] = length;
        EXPECT_FALSE(is_usable(problem)) << length;
        problem = good();
        problem.fan_height_mm = length;
        EXPECT_FALSE(is_usable(problem)) << length;
    }
}

TEST(UsableProblem, StretchIsTenAtMost) {
    ShapeProblem problem = good();
    for (const double stretch : {0.0, 10.0}) {
        problem.area_stretch = stretch;
        EXPECT_TRUE(is_usable(problem)) << stretch;
    }
    for (const double stretch : {-1e-9, 10.1, std::nan("")}) {
        problem.area_stretch = stretch;
        EXPECT_FALSE(is_usable(problem)) << stretch;
    }
}

/// Only at a pole may a loop have no length.
TEST(UsableProblem, APoleNeedsNoLoop) {
    ShapeProblem problem = piece_of({6, 12}, 0.04, MeridianEnd::open);
    EXPECT_TRUE(is_usable(problem));
    problem.first = MeridianEnd::open;
    EXPECT_FALSE(is_usable(problem));
    problem.rest_loop_mm.front() = 20;
    EXPECT_TRUE(is_usable(problem));
    problem.rest_loop_mm.back() = 0;
    EXPECT_FALSE(is_usable(problem));
    problem.last = MeridianEnd::pole;
    EXPECT_TRUE(is_usable(problem));
    // One round between two poles encloses nothing; two do.
    problem.first = MeridianEnd::pole;
    EXPECT_TRUE(is_usable(problem));
    problem.rest_loop_mm = {0, 0};
    problem.rest_height_mm = {5};
    EXPECT_FALSE(is_usable(problem));
    problem.first = MeridianEnd::open;
    problem.rest_loop_mm = {20, 0};
    EXPECT_TRUE(is_usable(problem));
}

TEST(UsableProblem, ADrawnEndNeedsItsFan) {
    ShapeProblem problem = piece_of({6, 12}, 0.04, MeridianEnd::open);
    problem.fan_height_mm = 0;
    EXPECT_TRUE(is_usable(problem));
    problem.first = MeridianEnd::drawn_closed;
    problem.rest_loop_mm.front() = 20;
    EXPECT_FALSE(is_usable(problem));
    problem.first_fan_height_mm = 3;
    EXPECT_TRUE(is_usable(problem));
    problem.last = MeridianEnd::drawn_closed;  // the last fan has none of its own
    EXPECT_FALSE(is_usable(problem));
    problem.fan_height_mm = 2;
    EXPECT_TRUE(is_usable(problem));
    problem.first_fan_height_mm = 0;  // as high as the last one
    EXPECT_TRUE(is_usable(problem));
}

TEST(UsableOptions, AreStiffAndFinite) {
    const auto solves = [](const ShapeOptions& options) {
        return solve_shape(good(), options).termination != Termination::unusable_problem;
    };
    const auto with = [](double ShapeOptions::*value, double is) {
        ShapeOptions options;
        options.*value = is;
        return options;
    };
    EXPECT_TRUE(solves({}));
    for (double ShapeOptions::*stiffness : {&ShapeOptions::course_stiffness, &ShapeOptions::wale_stiffness}) {
        EXPECT_TRUE(solves(with(stiffness, 0.01)));
        for (const double bad : {0.0, -1.0, HUGE_VAL, std::nan("")})
            EXPECT_FALSE(solves(with(stiffness, bad))) << bad;
    }
    for (const double fine : {0.0, 1.0})
        EXPECT_TRUE(solves(with(&ShapeOptions::compression_factor, fine))) << fine;
    for (const double bad : {-0.01, 1.01, std::nan("")})
        EXPECT_FALSE(solves(with(&ShapeOptions::compression_factor, bad))) << bad;
    EXPECT_TRUE(solves(with(&ShapeOptions::bending_stiffness, 0)));
    for (const double bad : {-0.01, HUGE_VAL, std::nan("")})
        EXPECT_FALSE(solves(with(&ShapeOptions::bending_stiffness, bad))) << bad;
    for (const double bad : {0.0, -1e-9})
        EXPECT_FALSE(solves(with(&ShapeOptions::relative_gradient, bad))) << bad;
}

ShapeProblem unstuffed(const std::vector<int>& counts, MeridianEnd last) { return piece_of(counts, 0, last); }

ShapeProblem tube(int stitches, int rounds, double height = 5) {
    ShapeProblem problem =
        unstuffed(std::vector<int>(static_cast<std::size_t>(rounds), stitches), MeridianEnd::open);
    problem.first = MeridianEnd::open;
    problem.rest_loop_mm.front() = stitches * width_mm;
    problem.rest_height_mm.assign(problem.rest_height_mm.size(), height);
    return problem;
}

// Walls stand up to half of their opening's width: 40 stitches of 5 mm are 63.7 mm across.
TEST(LiesLimp, WallsHigherThanHalfTheirOpening) {
    EXPECT_FALSE(lies_limp(tube(40, 6)));  // 30 mm of 31.8
    EXPECT_TRUE(lies_limp(tube(40, 7)));
    ShapeProblem stuffed = tube(40, 7);
    stuffed.area_stretch = 0.01;
    EXPECT_FALSE(lies_limp(stuffed));
    EXPECT_FALSE(lies_on_its_face(tube(40, 7)));
}

// Two discs, 30 stitches across their rim: 47.7 mm. A wall of two rounds between them is 10 mm of 11.9.
TEST(LiesLimp, ClosedPiecesThatRiseAboveAQuarterOfTheirWidth) {
    const auto discs = [](int wall) {
        std::vector<int> counts{6, 12, 18, 24};
        counts.insert(counts.end(), static_cast<std::size_t>(wall) + 1, 30);
        counts.insert(counts.end(), {24, 18, 12, 6});
        return unstuffed(counts, MeridianEnd::drawn_closed);
    };
    EXPECT_TRUE(lies_on_its_face(discs(0)));
    EXPECT_TRUE(lies_on_its_face(discs(2)));
    EXPECT_FALSE(lies_limp(discs(2)));
    EXPECT_FALSE(lies_on_its_face(discs(3)));
    EXPECT_TRUE(lies_limp(discs(3)));
    ShapeProblem stuffed = discs(2);
    stuffed.area_stretch = 0.01;
    EXPECT_FALSE(lies_on_its_face(stuffed));
    ShapeProblem sewn = discs(2);
    sewn.sewn_straight = true;
    EXPECT_FALSE(lies_on_its_face(sewn));
    EXPECT_TRUE(lies_limp(sewn));
}

// Increases of two a round (0.32 of flat growth) hold a cone open, of one and a half (0.24) do not.
TEST(LiesLimp, WallsThatWidenTooLittle) {
    EXPECT_FALSE(lies_limp(unstuffed({4, 6, 8, 10, 12, 14, 16, 18, 20}, MeridianEnd::open)));
    EXPECT_TRUE(lies_limp(unstuffed({4, 5, 7, 8, 10, 11, 13, 14, 16}, MeridianEnd::open)));
    // Worked from the wide end, the same cone widens the other way.
    ShapeProblem from_the_mouth = unstuffed({18, 16, 14, 12, 10, 8, 6, 4}, MeridianEnd::open);
    from_the_mouth.first = MeridianEnd::open;
    from_the_mouth.rest_loop_mm.front() = 20 * width_mm;
    EXPECT_FALSE(lies_limp(from_the_mouth));
}

TEST(LiesLimp, NothingOfThreeRoundsOrAsShortAsThose) {
    EXPECT_FALSE(lies_limp(tube(8, 3)));
    EXPECT_TRUE(lies_limp(tube(8, 4)));
    EXPECT_FALSE(lies_limp(tube(8, 4, 3.7)));
    EXPECT_TRUE(lies_limp(tube(8, 4, 3.8)));
    EXPECT_FALSE(lies_on_its_face(unstuffed({6, 12, 6}, MeridianEnd::drawn_closed)));
    EXPECT_FALSE(lies_limp(ShapeProblem{}));
}

TEST(LiesLimp, NoRows) {
    ShapeProblem problem = tube(8, 12);
    lay_unstuffed(problem, Joining::rows);
    EXPECT_FALSE(problem.limp);
    lay_unstuffed(problem, Joining::joined);
    EXPECT_TRUE(problem.limp);
    EXPECT_FALSE(problem.on_its_face);
}

}  // namespace
}  // namespace roundwright::test
