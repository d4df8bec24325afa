#include "core/study/next_measurement.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace roundwright {
namespace {

Toy toy_with(const GaugeSource& source) {
    Toy toy;
    toy.gauge = source;
    Piece head;
    head.name = "Head";
    head.end = End::drawn_closed;
    for (const int count : {6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6})
        head.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    Piece leg;
    leg.name = "Leg";
    for (const int count : {6, 12, 12, 12, 12, 12, 12, 12, 12})
        leg.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    toy.pieces.push_back(head);
    toy.pieces.push_back(leg);
    return toy;
}

std::vector<NextMeasurement> next_of(const Toy& toy) {
    std::vector<PieceStudy> studies;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) studies.push_back(study_shape(toy, i));
    return next_measurements(toy, studies);
}

const NextMeasurement& find(const std::vector<NextMeasurement>& all, NextMeasurementKind kind) {
    return *std::ranges::find(all, kind, &NextMeasurement::kind);
}

TEST(NextMeasurement, HelpsMostFirstAndNeverHarms) {
    const auto next = next_of(toy_with(EstimatedGauge{YarnWeight::medium}));
    ASSERT_EQ(next.size(), 2U + 2 * 3);
    EXPECT_TRUE(std::ranges::is_sorted(next, {}, &NextMeasurement::error_after));
    for (const NextMeasurement& one : next) {
        EXPECT_GT(one.error_before, 0.1);
        EXPECT_LE(one.error_after, one.error_before * (1 + 1e-9));
        EXPECT_GE(one.error_after, 0);
    }
}

// An estimate is mostly out in size, which a circle settles.
TEST(NextMeasurement, ACircleSettlesMostOfAnEstimate) {
    const auto next = next_of(toy_with(EstimatedGauge{YarnWeight::medium}));
    const NextMeasurement& circle = find(next, NextMeasurementKind::circle);
    EXPECT_LT(circle.error_after, 0.6 * circle.error_before);
}

// Size and ratio are known after a swatch in rounds; nothing helps much more.
TEST(NextMeasurement, LittleHelpsAfterASwatch) {
    const SwatchGauge swatch{.stitches = 20, .width_mm = 100, .rounds = 20, .height_mm = 100};
    const auto next = next_of(toy_with(swatch));
    EXPECT_LT(next.front().error_before, 0.04);
}

// A circle leaves the ratio open: a tall piece's height tells more than a second circle.
TEST(NextMeasurement, AfterACircleAFinishedPieceOrASwatchHelpsMoreThanAnotherCircle) {
    const CircleGauge circle{.rounds = 5, .increases = 6, .across_mm = 50};
    const auto next = next_of(toy_with(circle));
    EXPECT_NE(next.front().kind, NextMeasurementKind::circle);
}

TEST(NextMeasurement, SaysWhetherThePieceIsFinished) {
    Toy toy = toy_with(EstimatedGauge{YarnWeight::medium});
    toy.pieces[1].worked.rounds = 9;
    for (const NextMeasurement& one : next_of(toy)) {
        if (one.kind != NextMeasurementKind::finished_piece) continue;
        EXPECT_EQ(one.finished, one.piece == 1);
    }
}

TEST(NextMeasurement, NothingWithoutPieces) {
    EXPECT_TRUE(next_measurements(Toy{}, {}).empty());
    Toy empty;
    empty.pieces.emplace_back();
    EXPECT_TRUE(next_of(empty).empty());
}

}  // namespace
}  // namespace roundwright
