#include "core/face/smooth_profile.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

/// Points on a half circle of radius 10 about (0, 10), from the lower pole to the upper one.
std::vector<Vec2> half_circle(int parts) {
    std::vector<Vec2> points;
    for (int k = 0; k <= parts; ++k) {
        const double angle = pi * k / parts;
        points.emplace_back(k == 0 || k == parts ? 0 : 10 * std::sin(angle), 10 - 10 * std::cos(angle));
    }
    return points;
}

TEST(SmoothProfile, PassesEveryLoopByTheLengthOfItsChords) {
    const auto points = half_circle(12);
    const SmoothProfile profile(points, true, true);
    ASSERT_EQ(profile.loops(), 13);
    const double chord = 20 * std::sin(pi / 24);
    for (int k = 0; k <= 12; ++k) {
        EXPECT_NEAR(profile.along_of_loop(k), k * chord, 1e-12);
        EXPECT_LT((profile.at(k * chord).point - points[static_cast<std::size_t>(k)]).norm(), 1e-12) << k;
    }
    EXPECT_NEAR(profile.end(), 12 * chord, 1e-12);
}

/// Between its loops it keeps to the circle within a fiftieth of a millimetre, and turns as that does.
TEST(SmoothProfile, IsSmoothFromPoleToPole) {
    const SmoothProfile profile(half_circle(12), true, true);
    for (int k = 0; k <= 240; ++k) {
        const SmoothProfile::Sample here = profile.at(profile.end() * k / 240);
        EXPECT_NEAR((here.point - Vec2(0, 10)).norm(), 10, 0.02) << k;
        EXPECT_NEAR(here.tangent.norm(), 1, 0.03) << k;
        const Vec2 outwards = (here.point - Vec2(0, 10)).normalized();
        EXPECT_NEAR(here.tangent.normalized().dot(outwards), 0, 0.01) << k;
        EXPECT_NEAR(here.bend.dot(outwards), -0.1, 0.02) << k;
    }
    EXPECT_NEAR(profile.at(0).tangent.y(), 0, 1e-12);
    EXPECT_GT(profile.at(0).tangent.x(), 0.9);
    EXPECT_NEAR(profile.at(profile.end()).tangent.y(), 0, 1e-12);
    EXPECT_LT(profile.at(profile.end()).tangent.x(), -0.9);
    EXPECT_NEAR(profile.length_mm(0, profile.end()), 10 * pi, 0.02);
    EXPECT_NEAR(profile.length_mm(profile.end(), profile.end() / 2), 5 * pi, 0.02);
}

/// Where an end is no pole it runs out straight.
TEST(SmoothProfile, RunsOutStraightAtAnOpenEnd) {
    const SmoothProfile profile({Vec2(3, 0), Vec2(6, 4), Vec2(6, 9)}, false, false);
    EXPECT_LT((profile.at(0).tangent - Vec2(0.6, 0.8)).norm(), 1e-12);
    EXPECT_LT((profile.at(10).tangent - Vec2(0, 1)).norm(), 1e-12);
    // Over equal chords the tangent between is their mean.
    EXPECT_LT((profile.at(5).tangent - Vec2(0.3, 0.9)).norm(), 1e-12);
    EXPECT_LT((profile.at(-7).point - Vec2(3, 0)).norm(), 1e-12);
    EXPECT_LT((profile.at(99).point - Vec2(6, 9)).norm(), 1e-12);
}

/// The parabola through three points, where their chords are not alike.
TEST(SmoothProfile, WeighsItsChords) {
    const SmoothProfile profile({Vec2(0, 0), Vec2(1, 0), Vec2(1, 3)}, false, false);
    EXPECT_LT((profile.at(1).tangent - Vec2(0.75, 0.25)).norm(), 1e-12);
}

/// A straight line is followed exactly, its points repeated or not.
TEST(SmoothProfile, LeavesOutLoopsThatCoincide) {
    const SmoothProfile line({Vec2(1, 0), Vec2(2, 0), Vec2(2, 0), Vec2(5, 0)}, false, false);
    EXPECT_EQ(line.loops(), 3);
    EXPECT_LT((line.at(2.5).point - Vec2(3.5, 0)).norm(), 1e-12);
    EXPECT_LT((line.at(2.5).tangent - Vec2(1, 0)).norm(), 1e-12);
    EXPECT_LT(line.at(2.5).bend.norm(), 1e-12);
    EXPECT_NEAR(line.length_mm(0.5, 3.5), 3, 1e-12);
    EXPECT_TRUE(SmoothProfile({Vec2(1, 0), Vec2(1, 0)}, false, false).empty());
    EXPECT_TRUE(SmoothProfile().empty());
    EXPECT_EQ(SmoothProfile().end(), 0);
}

}  // namespace
}  // namespace roundwright
