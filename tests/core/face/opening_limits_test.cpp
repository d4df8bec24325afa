#include <gtest/gtest.h>

#include "core/face/feature_fit.h"
#include "core/face/opening.h"

namespace roundwright {
namespace {

Piece stuffed(End end) {
    Piece piece;
    piece.end = end;
    return piece;
}

/// Stuffing begins while half the widest opening, or a hand, goes in; it ends before 12 mm.
TEST(OpeningLimits, StuffingBeginsAtHalfTheWidestOpening) {
    const StuffingTime wide =
        stuffing_time(stuffed(End::drawn_closed), {80, 100, 100, 60, 50, 49, 30, 12, 11.9, 20});
    EXPECT_EQ(wide.begin, 4);
    EXPECT_EQ(wide.finish, 7);
    const StuffingTime narrow = stuffing_time(stuffed(End::drawn_closed), {20, 40, 31, 30, 29.9, 12});
    EXPECT_EQ(narrow.begin, 3);  // fingers need 30 mm
    EXPECT_EQ(narrow.finish, 5);
    const StuffingTime tight = stuffing_time(stuffed(End::drawn_closed), {5, 11, 10, 5});
    EXPECT_EQ(tight.begin, 1);
    EXPECT_EQ(tight.finish, 1);
}

TEST(OpeningLimits, APieceLeftOpenIsStuffedAtItsEndWhereStuffingPasses) {
    EXPECT_EQ(stuffing_time(stuffed(End::left_open), {20, 40, 12}).begin, 2);
    EXPECT_EQ(stuffing_time(stuffed(End::sewn_straight), {20, 40, 12}).finish, 2);
    EXPECT_EQ(stuffing_time(stuffed(End::left_open), {20, 40, 11}).begin, 1);
    EXPECT_EQ(stuffing_time(stuffed(End::left_open), {20, 40, 11}).finish, 1);
    Piece empty = stuffed(End::drawn_closed);
    empty.area_stretch = 0;
    EXPECT_FALSE(stuffing_time(empty, {20, 40, 12}).begin);
    EXPECT_FALSE(stuffing_time(stuffed(End::drawn_closed), {}).begin);
}

TEST(OpeningLimits, FittingGoesByWasherAndFingers) {
    const std::vector<double> openings{10, 25, 40, 40, 30, 20, 9};
    FittingTime time = fitting_time(1, 20, openings, 0);
    EXPECT_EQ(time.earliest, 2);
    EXPECT_EQ(time.last_by_washer, 5);
    EXPECT_EQ(time.last_by_fingers, 4);
    EXPECT_EQ(time.recommended, 3);  // the last of the widest
    EXPECT_FALSE(time.other_end_open);
    time = fitting_time(3, 35, openings, 0);
    EXPECT_FALSE(time.last_by_washer);
    EXPECT_FALSE(time.recommended);
    time = fitting_time(4, 20, openings, 30);
    EXPECT_EQ(time.earliest, 5);
    EXPECT_EQ(time.last_by_washer, 5);
    EXPECT_FALSE(time.last_by_fingers);
    EXPECT_EQ(time.recommended, 5);
    EXPECT_TRUE(time.other_end_open);
    EXPECT_FALSE(fitting_time(4, 31, openings, 30).other_end_open);
    EXPECT_FALSE(fitting_time(4, 5, openings, 29).other_end_open);
}

TEST(OpeningLimits, OnlyAChainLeavesTheStartOpen) {
    const std::vector<double> loops{31.4159265358979, 60};
    EXPECT_NEAR(start_opening_mm(OpenTube{6}, loops, 0), 10, 1e-9);
    EXPECT_NEAR(start_opening_mm(ChainRing{6}, loops, 0), 10, 1e-9);
    EXPECT_EQ(start_opening_mm(MagicRing{}, loops, 0), 0);
    EXPECT_EQ(start_opening_mm(OvalChain{6}, loops, 0), 0);
    EXPECT_EQ(start_opening_mm(OpenTube{6}, {}, 0), 0);
    EXPECT_TRUE(openings_mm({5}, 0).empty());
    EXPECT_TRUE(openings_mm({}, 0).empty());
}

/// The maker's own washer, or one 4 mm wider than the narrower side of what it holds.
TEST(OpeningLimits, AWasherIsFourMillimetresWider) {
    Feature nose;
    nose.kind = FeatureKind::safety_nose;
    nose.width_mm = 12;
    nose.height_mm = 9;
    EXPECT_EQ(washer_diameter_mm(nose), 13);
    nose.washer_mm = 11;
    EXPECT_EQ(washer_diameter_mm(nose), 11);
    nose.kind = FeatureKind::felt_disc;
    EXPECT_EQ(washer_diameter_mm(nose), 0);
    // a^2 k / 2 for half diameter 5 and the sharper curvature.
    SurfacePoint at;
    at.meridian_curvature = 0.02;
    at.round_curvature = -0.04;
    EXPECT_NEAR(washer_gap_mm(10, at), 0.5, 1e-12);
}

}  // namespace
}  // namespace roundwright
