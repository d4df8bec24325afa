#include <gtest/gtest.h>

#include "core/shape/fabric_signs.h"
#include "core/shape/lie.h"
#include "core/shape/measure_shape.h"
#include "core/shape/oval_plan.h"
#include "core/shape/size_range.h"
#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

/// A shape that belongs to another number of rounds says nothing of a piece, and nor does none.
TEST(ShapeOfAnotherPiece, SaysNothing) {
    const ShapeProblem short_one = piece_of({6, 12, 24, 48}, 0, MeridianEnd::open);
    const ShapeProblem long_one = piece_of({6, 12, 24, 48, 48}, 0, MeridianEnd::open);
    const Shape shape = solve_shape(short_one);
    ASSERT_EQ(lie_of_rounds(short_one, shape).size(), 4U);
    EXPECT_TRUE(lie_of_rounds(long_one, shape).empty());
    EXPECT_TRUE(lie_of_rounds(short_one, Shape{}).empty());
    EXPECT_TRUE(fabric_signs(long_one, shape).empty());
    EXPECT_TRUE(fabric_signs(short_one, Shape{}).empty());
    EXPECT_EQ(size_range(short_one, Shape{}, {5, 5, 1, 1}, 0).width_mm, Range{});
}

/// An oval's plan is that of an unstuffed oval whose rounds are nowhere narrower than its chain.
TEST(OvalPlanLimits, OnlyOfWhatIsWorkedAroundAChainAndWidens) {
    ShapeProblem oval = piece_of({14, 20, 26}, 0, MeridianEnd::open);
    oval.first = MeridianEnd::drawn_closed;
    oval.rest_loop_mm.front() = 60;
    oval.first_fan_height_mm = 60 / 6.283185307179586;
    oval.equivalent_round = true;
    Shape shape;
    shape.radius_mm = {10, 12, 16, 20};
    shape.z_mm = {0, 0, 0, 0};
    shape.course_stretch = {0, 0, 0, 0};
    shape.wale_stretch = {0, 0, 0};
    ASSERT_TRUE(oval_plan(oval, measures_of(oval, shape)));
    EXPECT_NEAR(oval_plan(oval, measures_of(oval, shape))->width_mm, 20, 1e-12);
    EXPECT_NEAR(oval_plan(oval, measures_of(oval, shape))->length_mm, 10 * 3.141592653589793 + 20, 1e-12);
    EXPECT_FALSE(oval_plan(oval, {}));
    shape.radius_mm[2] = 10;
    EXPECT_TRUE(oval_plan(oval, measures_of(oval, shape)));
    shape.radius_mm[2] = 9.99;
    EXPECT_FALSE(oval_plan(oval, measures_of(oval, shape)));
    shape.radius_mm[2] = 16;
    ShapeProblem other = oval;
    other.area_stretch = 0.01;
    EXPECT_FALSE(oval_plan(other, measures_of(other, shape)));
    other = oval;
    other.equivalent_round = false;
    EXPECT_FALSE(starts_oval(other));
    other = oval;
    other.first = MeridianEnd::open;
    EXPECT_FALSE(starts_oval(other));
    other = oval;
    other.first_fan_height_mm = 0;
    EXPECT_FALSE(starts_oval(other));
    EXPECT_TRUE(starts_oval(oval));
}

}  // namespace
}  // namespace roundwright::test
