#include "core/shape/loop_section.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr LoopSection sections[] = {{20, 20, 0}, {30, 4, 0}, {30, 4, 2.5}, {12, 1, -3}, {6, 3, 0.4}};

double length_by_points(const LoopSection& section) {
    constexpr int steps = 20'000;
    double sum = 0;
    Vec3 last = point_on(section, 0).place;
    for (int k = 1; k <= steps; ++k) {
        const Vec3 next = point_on(section, 2 * pi * k / steps).place;
        sum += (next - last).norm();
        last = next;
    }
    return sum;
}

TEST(LoopSection, OfEqualWidthAndDepthIsACircle) {
    for (double angle = -3; angle < 3; angle += 0.37) {
        const SectionPoint at = point_on({20, 20, 0}, angle, 1.5);
        EXPECT_NEAR(at.place.x(), 21.5 * std::sin(angle), 1e-9);
        EXPECT_NEAR(at.place.z(), 21.5 * std::cos(angle), 1e-9);
        EXPECT_NEAR(at.place.y(), 0, 1e-12);
        EXPECT_NEAR(at.normal.x(), std::sin(angle), 1e-9);
    }
}

TEST(LoopSection, IsAsLongAndAsLargeAsAStadium) {
    EXPECT_NEAR((LoopSection{30, 4, 0}.length_mm()), 2 * pi * 4 + 4 * 26, 1e-12);
    EXPECT_NEAR((LoopSection{30, 4, 0}.area_mm2()), pi * 16 + 8 * 52, 1e-12);
    for (const LoopSection& section : sections)
        EXPECT_NEAR(length_by_points(section), section.length_mm(), 1e-4 * section.length_mm());
}

// The places of its points are found again, whichever side they lie on.
TEST(LoopSection, FindsTheAngleOfAPoint) {
    for (const LoopSection& section : sections)
        for (double angle = -3.1; angle < 3.1; angle += 0.13)
            EXPECT_NEAR(nearest_angle(section, point_on(section, angle).place), angle, 1e-6)
                << section.half_width_mm << " " << section.bend;
}

TEST(LoopSection, ReachesNoFartherThanItSays) {
    for (const LoopSection& section : sections) {
        double right = 0;
        double up = -1e9;
        double down = 1e9;
        for (double angle = -pi; angle < pi; angle += 0.001) {
            const Vec3 at = point_on(section, angle).place;
            right = std::max(right, at.x());
            up = std::max(up, at.y());
            down = std::min(down, at.y());
        }
        EXPECT_NEAR(right, section.reach_mm(), 1e-3 * section.half_width_mm);
        EXPECT_NEAR(up, section.highest_mm(), 1e-2);
        EXPECT_NEAR(down, section.lowest_mm(), 1e-2);
    }
}

TEST(LoopSection, NormalsStandSquareOnTheCurve) {
    for (const LoopSection& section : sections) {
        for (double angle = -3; angle < 3; angle += 0.21) {
            const SectionPoint at = point_on(section, angle);
            const Vec3 along = point_on(section, angle + 1e-5).place - point_on(section, angle - 1e-5).place;
            EXPECT_NEAR(at.normal.norm(), 1, 1e-12);
            EXPECT_NEAR(at.normal.dot(along.normalized()), 0, 1e-3);
        }
    }
}

}  // namespace
}  // namespace roundwright
