#include "core/reshape/silhouette.h"

#include <cmath>
#include <gtest/gtest.h>

namespace roundwright {
namespace {

/// A cylinder of radius 3 and height 4 with a flat base, worked from the middle of the base.
const Silhouette cup{{Vec2(0, 1), Vec2(3, 1), Vec2(3, 5)}};

TEST(Silhouette, HasTheSizesOfItsPoints) {
    EXPECT_EQ(arc_lengths(cup), (std::vector<double>{0, 3, 7}));
    EXPECT_EQ(width_mm(cup), 6);
    EXPECT_EQ(height_mm(cup), 4);
    EXPECT_EQ(height_mm({}), 0);
    EXPECT_EQ(width_mm({}), 0);
}

TEST(Silhouette, IsUsableWhereItEnclosesSomething) {
    EXPECT_TRUE(is_usable(cup));
    EXPECT_TRUE(is_usable({{Vec2(0, 0), Vec2(1, 0)}}));
    EXPECT_FALSE(is_usable({}));
    EXPECT_FALSE(is_usable({{Vec2(2, 0)}}));
    EXPECT_FALSE(is_usable({{Vec2(2, 0), Vec2(2, 0)}}));
    EXPECT_FALSE(is_usable({{Vec2(0, 0), Vec2(0, 3)}}));
    EXPECT_FALSE(is_usable({{Vec2(-1e-9, 0), Vec2(3, 0)}}));
    EXPECT_FALSE(is_usable({{Vec2(0, 0), Vec2(3, NAN)}}));
    EXPECT_FALSE(is_usable({{Vec2(0, 0), Vec2(INFINITY, 1)}}));
}

TEST(Silhouette, IsResampledInEqualPartsBetweenItsCorners) {
    const auto dense = resampled(cup, 1.5).points;
    const std::vector<Vec2> expected{{0, 1}, {1.5, 1}, {3, 1}, {3, 1 + 4.0 / 3}, {3, 1 + 8.0 / 3}, {3, 5}};
    ASSERT_EQ(dense.size(), expected.size());
    for (std::size_t i = 0; i < dense.size(); ++i) EXPECT_LT((dense[i] - expected[i]).norm(), 1e-12) << i;
    EXPECT_EQ(resampled(cup, 100).points, cup.points);
    EXPECT_TRUE(resampled({}, 1).points.empty());
}

TEST(Silhouette, IsThinnedToPointsThatFarApartAndBothEnds) {
    Silhouette line;
    for (int i = 0; i <= 10; ++i) line.points.emplace_back(i, 0);
    EXPECT_EQ(thinned(line, 4).points, (std::vector<Vec2>{{0, 0}, {4, 0}, {8, 0}, {10, 0}}));
    EXPECT_EQ(thinned(line, 0.5).points, line.points);
    EXPECT_EQ(thinned(line, 100).points, (std::vector<Vec2>{{0, 0}, {10, 0}}));
}

TEST(Silhouette, LiesAsFarApartAsItsPointsDo) {
    Silhouette wider = cup;
    for (Vec2& point : wider.points)
        if (point.x() > 0) point.x() += 2;
    // Points of the cup: 0 off the base, on it, and 0 and 2 off the wall; of the wider: 0, 2 and 2.
    EXPECT_NEAR(distance_mm(cup, wider), std::sqrt((0 + 0 + 4 + 0 + 4 + 4) / 6.0), 1e-12);
    EXPECT_NEAR(distance_mm(wider, cup), distance_mm(cup, wider), 1e-12);
    EXPECT_EQ(distance_mm(cup, cup), 0);
    EXPECT_EQ(distance_mm(cup, {{Vec2(0, 0)}}), 0);
    EXPECT_EQ(distance_mm({}, cup), 0);
}

/// Moved along the axis so that their middles meet.
TEST(Silhouette, DoesNotMindHowHighItStands) {
    Silhouette raised = cup, taller = cup;
    for (Vec2& point : raised.points) point.y() += 17;
    EXPECT_NEAR(distance_mm(cup, raised), 0, 1e-12);
    taller.points.back().y() += 2;
    // Its middle is 1 higher: the base lies 1 below the cup's, the rim 1 above.
    EXPECT_NEAR(distance_mm(cup, taller), std::sqrt((1 + 0 + 0 + 1 + 1 + 1) / 6.0), 1e-12);
}

TEST(Silhouette, OfAShapeEndsInThePoleItIsDrawnTo) {
    Shape shape;
    shape.radius_mm = {0, 4, 2};
    shape.z_mm = {0, 1, 5};
    shape.last_pole_z_mm = 5.5;
    EXPECT_EQ(silhouette_of(shape, MeridianEnd::open).points, (std::vector<Vec2>{{0, 0}, {4, 1}, {2, 5}}));
    EXPECT_EQ(silhouette_of(shape, MeridianEnd::drawn_closed).points.back(), Vec2(0, 5.5));
    EXPECT_TRUE(silhouette_of(Shape{}, MeridianEnd::drawn_closed).points.empty());
}

}  // namespace
}  // namespace roundwright
