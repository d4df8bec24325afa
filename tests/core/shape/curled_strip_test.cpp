#include "core/shape/curled_strip.h"

#include <gtest/gtest.h>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

// By hand, with stitches 5 mm wide and rows 5 mm high, on a chain of 30: the inner edge is 150 mm long.
// k = 2: r = 5 / 1 = 5, 150 / (2 pi 5) = 4.775 turns; k = 3: r = 2.5, 9.549 turns; k = 4: r = 5 / 3, 14.324.
TEST(CurledStrip, HasTheRadiusHOverKLessOne) {
    for (const auto& [k, radius, turns] :
         {std::tuple{2, 5.0, 4.774648}, std::tuple{3, 2.5, 9.549297}, std::tuple{4, 5.0 / 3, 14.323945}}) {
        const auto strip = curled_strip(30, k, 5, 5, 2);
        ASSERT_TRUE(strip);
        EXPECT_NEAR(strip->inner_radius_mm, radius, 1e-12);
        EXPECT_NEAR(strip->outer_radius_mm, radius + 5, 1e-12);
        EXPECT_NEAR(strip->turns, turns, 1e-6);
        EXPECT_NEAR(strip->length_mm, 2 * turns, 2e-6);
    }
}

TEST(CurledStrip, BothItsEdgesGoAroundAsOften) {
    const auto strip = curled_strip(24, 3, 4.2, 4.5, 2);
    ASSERT_TRUE(strip);
    EXPECT_NEAR(strip->inner_mm, 24 * 4.2, 1e-12);
    EXPECT_NEAR(strip->outer_mm, 3 * 24 * 4.2, 1e-12);
    EXPECT_NEAR(strip->outer_mm / (2 * pi * strip->outer_radius_mm), strip->turns, 1e-12);
}

TEST(CurledStrip, OneStitchAChainLiesStraight) {
    EXPECT_FALSE(curled_strip(20, 1, 5, 5, 2));
    EXPECT_FALSE(curled_strip(20, 0.5, 5, 5, 2));
    EXPECT_FALSE(curled_strip(0, 3, 5, 5, 2));
}

TEST(CurledStrip, IsFoundInAPieceWorkedInRowsOnAChain) {
    Piece tail;
    tail.start = OpenTube{20};
    tail.joining = Joining::rows;
    const Gauge gauge{5, 4, 0, 0, 0};
    const auto strip = curled_strip(tail, {60}, gauge, 2);
    ASSERT_TRUE(strip);
    EXPECT_NEAR(strip->inner_radius_mm, 4.0 / 2, 1e-12);
    EXPECT_NEAR(strip->stitches_a_chain, 3, 1e-12);
    EXPECT_FALSE(curled_strip(tail, {20}, gauge, 2));
    EXPECT_FALSE(curled_strip(tail, {}, gauge, 2));
    tail.joining = Joining::spiral;
    EXPECT_FALSE(curled_strip(tail, {60}, gauge, 2));
}

}  // namespace
}  // namespace roundwright
