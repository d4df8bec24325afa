#include <gtest/gtest.h>

#include "core/reshape/finished_piece.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

const char* word(CalibrationCode code) {
    constexpr const char* words[] = {"unusable_piece", "left_free", "not_told_apart", "measurements_disagree",
                                     "not_converged"};
    return words[static_cast<std::size_t>(code)];
}

void tell(RecordedText& text, const char* name, const Calibration& found) {
    text.line(name) << found.usable() << found.gauge.stitch_width_mm << found.gauge.round_height_mm
                    << found.gauge.stitch_width_error_mm << found.gauge.round_height_error_mm
                    << found.gauge.error_correlation << found.area_stretch << found.area_stretch_error
                    << found.residual_mm << found.iterations;
    text.line("  modelled").each(found.modelled_mm);
    for (const CalibrationNote& note : found.notes)
        text.line("  note") << word(note.code) << static_cast<int>(note.value) << static_cast<int>(note.other)
                            << note.measured;
}

/// What a maker may have measured on a piece that came out so.
std::vector<std::pair<const char*, std::vector<Measured>>> measurements(const Shape& shape) {
    const double around =
        2 * 3.14159265358979 * *std::max_element(shape.radius_mm.begin(), shape.radius_mm.end());
    return {
        {"width", {{MeasuredOf::width, 1.1 * shape.width_mm, 1}}},
        {"both",
         {{MeasuredOf::width, 1.05 * shape.width_mm, 1}, {MeasuredOf::height, 0.97 * shape.height_mm, 2}}},
        {"tape",
         {{MeasuredOf::circumference, 1.02 * around, 3},
          {MeasuredOf::circumference_of_round, 0.6 * around, 3, 2},
          {MeasuredOf::height, shape.height_mm, 2}}},
        {"odd ones",
         {{MeasuredOf::width, 1.5 * shape.width_mm, 1},
          {MeasuredOf::circumference, 0.8 * around, 1},
          {MeasuredOf::height, shape.height_mm, 1}}}};
}

TEST(RecordedCalibration, FindsAsBefore) {
    RecordedText text;
    for (const char* name : {"smallest ball", "egg", "cone, open", "tall stitches", "oval sole with sides",
                             "bowl", "leg from a chain", "cushion sewn straight"}) {
        const Piece& piece = varied_piece(name).toy.pieces[0];
        const auto at = static_cast<std::size_t>(&varied_piece(name) - varied_pieces().data());
        text.heading(name);
        for (const auto& [what, measured] : measurements(varied_studies()[at].shape)) {
            tell(text, what, calibrate_piece(piece, measured));
            KnownBefore known;
            known.gauge = Gauge{4.8, 5.1, 0.3, 0.2, 0.5};
            tell(text, "  with_gauge", calibrate_piece(piece, measured, known));
            known.gauge->error_correlation = 1;
            tell(text, "  with_one_error", calibrate_piece(piece, measured, known));
            known.gauge.reset();
            known.area_stretch = 0.06;
            tell(text, "  with_stretch", calibrate_piece(piece, measured, known));
        }
    }
    testing::expect_as_recorded("calibrations.txt", text, {1e-4, 1e-5});
}

/// Nothing is found where nothing can be.
TEST(RecordedCalibration, RefusesWhatIsNoMeasurement) {
    const Piece& ball = varied_piece("smallest ball").toy.pieces[0];
    const auto refused = [&](const std::vector<Measured>& measured, const KnownBefore& known = {}) {
        const Calibration found = calibrate_piece(ball, measured, known);
        return !found.usable() && found.has(CalibrationCode::unusable_piece);
    };
    const int rounds = static_cast<int>(ball.rounds.size());
    const Measured width{MeasuredOf::width, 40, 2};
    EXPECT_FALSE(refused({width}));
    EXPECT_TRUE(refused({}));
    EXPECT_TRUE(refused({{MeasuredOf::width, 0, 2}}));
    EXPECT_TRUE(refused({width, {MeasuredOf::height, -1, 2}}));
    EXPECT_TRUE(refused({{MeasuredOf::width, 40, 0}}));
    EXPECT_TRUE(refused({{MeasuredOf::circumference_of_round, 40, 2, -1}}));
    EXPECT_TRUE(refused({{MeasuredOf::circumference_of_round, 40, 2, rounds}}));
    EXPECT_FALSE(refused({{MeasuredOf::circumference_of_round, 40, 2, rounds - 1}}));
    EXPECT_FALSE(refused({{MeasuredOf::circumference_of_round, 40, 2, 0}}));
    KnownBefore known;
    known.gauge = Gauge{0, 5, 0, 0, 0};
    EXPECT_TRUE(refused({width}, known));
    known.gauge = Gauge{5, 0, 0, 0, 0};
    EXPECT_TRUE(refused({width}, known));
    known.gauge.reset();
    known.area_stretch = -0.01;
    EXPECT_TRUE(refused({width}, known));
    known.area_stretch = 0;
    EXPECT_FALSE(refused({width}, known));
}

}  // namespace
}  // namespace roundwright::test
