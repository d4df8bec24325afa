#include "core/reshape/finished_piece.h"

#include <cmath>
#include <gtest/gtest.h>

#include "core/gauge/combined_gauge.h"
#include "core/study/piece_study.h"

namespace roundwright {
namespace {

/// An invented puffin's body, worked at a known gauge and stuffed firmly.
Toy toy_as_worked() {
    Toy toy;
    toy.gauge = GivenGauge{{5.2, 4.9, 0, 0}};
    Piece& piece = toy.pieces.emplace_back();
    piece.name = "Body";
    piece.end = End::drawn_closed;
    piece.area_stretch = firm_stuffing_stretch;
    for (const int count : {6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 30, 30, 24, 24, 18, 12, 6})
        piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    return toy;
}

// What the forward solve says of a piece gives its gauge back, and the piece comes out as it was measured.
TEST(FinishedPiece, TheToyWithTheGaugeFoundHasTheSizeThatWasMeasured) {
    const Toy toy = toy_as_worked();
    const Shape shape = study_piece(toy, 0).revolved();
    const std::vector<Measured> measured{{MeasuredOf::width, shape.width_mm, 1, 0},
                                         {MeasuredOf::height, shape.height_mm, 1, 0}};
    const Calibration found = calibrate_piece(toy.pieces[0], measured, {{}, firm_stuffing_stretch});
    EXPECT_NEAR(found.gauge.stitch_width_mm, 5.2, 0.01);
    EXPECT_NEAR(found.gauge.round_height_mm, 4.9, 0.01);

    Toy unknown = toy;
    unknown.gauge = std::monostate{};
    const PieceStudy again = study_piece(with_calibration(unknown, 0, found), 0);
    EXPECT_TRUE(again.gauge_known);
    EXPECT_NEAR(again.measures().width_mm, shape.width_mm, 0.05);
    EXPECT_NEAR(again.measures().height_mm, shape.height_mm, 0.05);
    EXPECT_EQ(std::get<GivenGauge>(with_calibration(unknown, 0, found).gauge).found_on, "Body");
}

// From a width alone, width and height of the stitch are each known badly, since they trade for one another;
// with their correlation the piece is still said to be as wide as it was measured to be.
TEST(FinishedPiece, TheMeasuredSizeKeepsItsError) {
    const Toy toy = toy_as_worked();
    const Shape shape = study_piece(toy, 0).revolved();
    const Calibration found = calibrate_piece(toy.pieces[0], {{MeasuredOf::width, shape.width_mm, 1, 0}},
                                              {{}, firm_stuffing_stretch});
    PieceStudy study = study_piece(with_calibration(toy, 0, found), 0);
    EXPECT_NEAR(study.size().width_mm.high - study.measures().width_mm, 1, 0.5);
    study.gauge.error_correlation = 0;
    const SizeRange apart = size_range(study.problem(), study.revolved(), study.gauge, 0);
    EXPECT_GT(apart.width_mm.high - study.measures().width_mm, 1.7);
}

// The stuffing that the piece says is where a stretch that cannot be found stays.
TEST(FinishedPiece, AFreeStretchStaysWhereThePieceHasIt) {
    const Toy toy = toy_as_worked();
    const Shape shape = study_piece(toy, 0).revolved();
    const Calibration found = calibrate_piece(toy.pieces[0], {{MeasuredOf::width, shape.width_mm, 1, 0}});
    EXPECT_TRUE(found.has(CalibrationCode::left_free));
    EXPECT_NEAR(found.area_stretch, firm_stuffing_stretch, 0.3 * firm_stuffing_stretch);
}

// The lines that are kept say what the calibration said, and go on saying it when the rounds are changed.
TEST(FinishedPiece, ItsLinesGiveTheGaugeAndOutliveTheRounds) {
    Toy toy = toy_as_worked();
    const Shape shape = study_piece(toy, 0).revolved();
    const FinishedPiece finished{
        0,
        {{MeasuredOf::width, shape.width_mm, 1, 0}, {MeasuredOf::height, shape.height_mm, 1, 0}},
        "2026-05-03"};
    toy.gauge = CircleGauge{.rounds = 5, .increases = 6, .across_mm = 49};
    KnownBefore known{gauge_of_others(toy, 0), firm_stuffing_stretch};
    EXPECT_EQ(known.gauge, gauge_from(toy.gauge, toy.hook_mm));
    const Calibration found = calibrate_piece(toy.pieces[0], finished.measured, known);
    ASSERT_EQ(found.lines.size(), 2U);
    Toy with = with_finished_piece(toy, finished, found, true);
    const auto& several = std::get<SeveralGauge>(with.gauge);
    ASSERT_EQ(several.measurements.size(), 2U);
    EXPECT_EQ(std::get<FinishedPieceGauge>(several.measurements[1].what).piece, "Body");
    EXPECT_EQ(several.measurements[1].measured_on, "2026-05-03");
    const Gauge gauge = gauge_from(with.gauge, with.hook_mm).value();
    EXPECT_NEAR(gauge.stitch_width_mm, 5.2, 0.1);
    EXPECT_NEAR(gauge.round_height_mm, 4.9, 0.05);
    Piece other = with.pieces[0];
    other.rounds.pop_back();
    with.pieces[0] = other;
    EXPECT_EQ(gauge_from(with.gauge, with.hook_mm), gauge);
}

// One width cannot tell wide stitches from tall rounds: it is one line, along what it does know.
TEST(FinishedPiece, OneLengthIsOneLine) {
    const Toy toy = toy_as_worked();
    const Shape shape = study_piece(toy, 0).revolved();
    const Calibration found = calibrate_piece(toy.pieces[0], {{MeasuredOf::width, shape.width_mm, 1, 0}},
                                              {{}, firm_stuffing_stretch});
    ASSERT_EQ(found.lines.size(), 1U);
    const GaugeLine& line = found.lines[0];
    EXPECT_NEAR(line.of_width * std::log(5.2) + line.of_height * std::log(4.9), line.value, 1e-3);
}

TEST(FinishedPiece, OthersStayAndAreLeftOutWhereTheyDoNotCount) {
    Toy toy = toy_as_worked();
    const Shape shape = study_piece(toy, 0).revolved();
    const FinishedPiece finished{0, {{MeasuredOf::width, shape.width_mm, 1, 0}}, {}};
    const Calibration found = calibrate_piece(toy.pieces[0], finished.measured);
    toy.gauge = CircleGauge{.rounds = 5, .increases = 6, .across_mm = 49};
    EXPECT_TRUE(std::holds_alternative<GivenGauge>(with_finished_piece(toy, finished, found, false).gauge));
    toy.gauge = SeveralGauge{measurements_of(toy.gauge)};
    const Toy left_out = with_finished_piece(toy, finished, found, false);
    const auto& several = std::get<SeveralGauge>(left_out.gauge);
    EXPECT_FALSE(several.measurements[0].counts);
    EXPECT_TRUE(several.measurements[1].counts);
    // Measured again, it takes its own place.
    const Toy again = with_finished_piece(left_out, finished, found, true);
    EXPECT_EQ(std::get<SeveralGauge>(again.gauge).measurements.size(), 2U);
}

}  // namespace
}  // namespace roundwright
