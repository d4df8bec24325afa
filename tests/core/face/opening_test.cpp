#include "core/face/opening.h"

#include <gtest/gtest.h>
#include <numbers>

namespace roundwright {
namespace {

// The loop runs in the middle of the fabric, so half a thickness is in the way on either side.
TEST(Opening, LiesWithinTheFabric) {
    const std::vector<double> openings = openings_mm({0, 4, 60 * std::numbers::pi}, 2.5);
    EXPECT_EQ(openings[0], 0);
    EXPECT_NEAR(openings[1], 57.5, 1e-9);
    EXPECT_NEAR(start_opening_mm(ChainRing{6}, {20 * std::numbers::pi, 30}, 2.5), 17.5, 1e-9);
}

TEST(Opening, IsTheLoopLaidInACircle) {
    const std::vector<double> openings = openings_mm({0, 30, 60 * std::numbers::pi}, 0);
    ASSERT_EQ(openings.size(), 2u);
    EXPECT_NEAR(openings[0], 30 / std::numbers::pi, 1e-12);
    EXPECT_NEAR(openings[1], 60, 1e-12);
}

const std::vector<double> head_openings{10, 19, 29, 38, 48, 57, 57, 57, 57, 57, 48, 38, 29, 19, 10};

TEST(FittingTime, EndsWithTheLastRoundTheWasherPasses) {
    const FittingTime time = fitting_time(7, 16, head_openings, 0);
    EXPECT_EQ(time.earliest, 8);
    EXPECT_EQ(time.last_by_washer, 13);   // 19 mm
    EXPECT_EQ(time.last_by_fingers, 11);  // 38 mm; 29 is too narrow for 30
    EXPECT_EQ(time.recommended, 9);       // the last of the widest rounds
    EXPECT_FALSE(time.other_end_open);
}

TEST(FittingTime, OnEitherSideOfTheWashersLimit) {
    EXPECT_EQ(fitting_time(7, 19, head_openings, 0).last_by_washer, 13);
    EXPECT_EQ(fitting_time(7, 19.01, head_openings, 0).last_by_washer, 12);
    EXPECT_FALSE(fitting_time(13, 10.01, head_openings, 0).last_by_washer);
    EXPECT_TRUE(fitting_time(13, 10, head_openings, 0).last_by_washer);
}

TEST(FittingTime, ANeckShutsOffWhatLiesBelowIt) {
    const std::vector<double> neck{20, 40, 40, 10, 40, 40};
    EXPECT_EQ(fitting_time(0, 15, neck, 0).last_by_washer, 2);
}

TEST(FittingTime, AnOpenStartLeavesTime) {
    EXPECT_TRUE(fitting_time(7, 16, head_openings, 35).other_end_open);
    EXPECT_FALSE(fitting_time(7, 36, head_openings, 35).other_end_open);
}

TEST(StuffingTime, BeginsWhileAHandGoesInAndEndsBeforeTheCloseIsTooNarrow) {
    Piece piece;
    piece.end = End::drawn_closed;
    const StuffingTime time = stuffing_time(piece, head_openings);
    EXPECT_EQ(time.begin, 11);   // 38 mm
    EXPECT_EQ(time.finish, 13);  // 19 mm; 10 is too narrow for 12
    piece.area_stretch = 0;
    EXPECT_FALSE(stuffing_time(piece, head_openings).begin);
}

}  // namespace
}  // namespace roundwright
