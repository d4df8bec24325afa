#include "core/reshape/finished_piece.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace roundwright
