#include "render/wording/shape_words.h"

#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/shape/highest_wave.h"
#include "core/study/fabric_stage.h"

namespace roundwright {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

/// One piece of so many stitches a round in a gauge of 5 x 5 mm.
Toy toy_of(std::initializer_list<int> counts) {
    Toy toy;
    toy.gauge = GivenGauge{{5, 5, 0.25, 0.25}};
    Piece piece;
    piece.name = "Head";
    for (const int stitches : counts) {
        Round round;
        round.working = WorkedEvenly{stitches};
        piece.rounds.push_back(round);
    }
    toy.pieces.push_back(piece);
    return toy;
}

PieceStudy study_of(std::initializer_list<int> counts, Start start = MagicRing{}, double stretch = 0) {
    Toy toy = toy_of(counts);
    toy.pieces[0].start = start;
    toy.pieces[0].area_stretch = stretch;
    return study_piece(toy, 0);
}

std::string size(const PieceStudy& study, LengthUnit units = LengthUnit::millimetres) {
    return size_words(study, units).toStdString();
}

std::string shape(const PieceStudy& study) {
    return shape_words(study, LengthUnit::millimetres).toStdString();
}

TEST(ShapeWords, AFlatPieceIsNotSoManyMillimetresTall) {
    // Six increases a round lie flat where a stitch is pi / 3 as wide as a round is tall.
    Toy disc = toy_of({6, 12, 18, 24, 30});
    disc.gauge = GivenGauge{{5.25, 5, 0, 0}};
    disc.pieces[0].area_stretch = 0;
    EXPECT_THAT(size(study_piece(disc, 0)), EndsWith(", flat"));
    EXPECT_THAT(size(study_of({6, 12, 18, 24, 24, 24})), HasSubstr("mm tall"));
}

TEST(ShapeWords, AnEarThatIsNotStuffedIsFlat) {
    Toy ear = toy_of({6, 12, 18, 24, 24, 24, 24, 24});
    ear.pieces[0].area_stretch = 0;
    ear.pieces[0].end = End::sewn_straight;
    const PieceStudy study = study_piece(ear, 0);
    EXPECT_THAT(shape(study), StartsWith("flat, two layers of fabric, 4\u00a0mm thick, widest at round "));
    EXPECT_THAT(shape(study), EndsWith(", sewn straight at the last round"));
    EXPECT_THAT(size(study), StartsWith("60\u00a0mm wide"));
    ear.pieces[0].area_stretch = medium_stuffing_stretch;
    EXPECT_THAT(shape(study_piece(ear, 0)), Not(HasSubstr("layers")));
    ear.pieces[0].start = OpenTube{6};
    EXPECT_THAT(shape(study_piece(ear, 0)), EndsWith(", open at the start, sewn straight at the last round"));
}

// A flattened tube of 24 stitches of 5 mm: 120 / pi less the fabric inside, and a sixth more over a ball.
TEST(ShapeWords, FabricIsSaidWithWhatFitsInside) {
    Toy cover = toy_of({6, 12, 18, 24, 24, 24, 24, 24});
    cover.yarns.emplace_back().weight = YarnWeight::medium;
    cover.pieces[0].area_stretch = 0;
    const PieceStudy study = study_piece(cover, 0);
    EXPECT_EQ(fabric_words(study, LengthUnit::millimetres).toStdString(),
              "fabric about 2.4\u00a0mm thick, 36\u00a0mm wide inside, fits over a ball of up to 42\u00a0mm");
    EXPECT_EQ(
        fabric_words(study, LengthUnit::inches).toStdString(),
        "fabric about 0.10\u00a0in thick, 1⅜\u00a0in wide inside, fits over a ball of up to 1⅝\u00a0in");
    EXPECT_THAT(shape(study), StartsWith("flat, two layers of fabric, 5\u00a0mm thick"));
    cover.pieces[0].area_stretch = medium_stuffing_stretch;
    EXPECT_THAT(fabric_words(study_piece(cover, 0), LengthUnit::millimetres).toStdString(),
                EndsWith("mm wide inside"));
    Toy disc = toy_of({6, 12, 18, 24, 30});
    disc.pieces[0].area_stretch = 0;
    disc.gauge = GivenGauge{{5.25, 5, 0, 0}};
    EXPECT_EQ(fabric_words(study_piece(disc, 0), LengthUnit::millimetres).toStdString(),
              "fabric about 1.8\u00a0mm thick");
    EXPECT_TRUE(fabric_words({}, LengthUnit::millimetres).isEmpty());
}

TEST(ShapeWords, RufflesAreSaidWithTheirHeight) {
    const PieceStudy study = study_of({8, 16, 24, 32, 40, 48});
    const double waves = highest_wave_mm(study.lies());
    ASSERT_GT(waves, 2);
    const std::string said = std::to_string(std::lround(waves)) + "\u00a0mm";
    EXPECT_THAT(size(study), EndsWith(", flat, edge waves " + said));
    EXPECT_THAT(shape(study), HasSubstr("with waves " + said + " high"));
    EXPECT_THAT(size(study, LengthUnit::inches), HasSubstr("\u00a0in"));
    EXPECT_THAT(shape(study_of({6, 12, 18, 24})), Not(HasSubstr("waves")));
}

TEST(ShapeWords, AnOvalOfEveryStitchHasThreeSizes) {
    Toy toy = toy_of({26, 32, 38, 44});
    toy.pieces[0].start = OvalChain{10};
    toy.pieces[0].area_stretch = medium_stuffing_stretch;
    const PieceStudy oval = as_worked(study_piece(toy, 0), toy, 0);
    EXPECT_THAT(size(oval), HasSubstr("\u00a0mm deep ("));
    EXPECT_THAT(size(oval), Not(HasSubstr("round piece")));
    EXPECT_THAT(shape(oval), Not(HasSubstr("round piece")));
}

TEST(ShapeWords, AStackedBallOfEveryStitchHasCorners) {
    Toy toy = toy_of({6, 12, 18, 24, 30, 36, 42, 48, 54, 60, 60, 60, 54, 48, 42, 36, 30, 24, 18, 12, 6});
    toy.pieces[0].area_stretch = medium_stuffing_stretch;
    toy.pieces[0].joining = Joining::joined;
    for (Round& round : toy.pieces[0].rounds)
        std::get<WorkedEvenly>(round.working).spacing = Spacing::stacked;
    const auto round = std::make_shared<const PieceStudy>(study_piece(toy, 0));
    EXPECT_THAT(shape(*with_every_stitch(round, toy, 0).study),
                HasSubstr("6 corners standing out by up to "));
    EXPECT_THAT(shape(*round), Not(HasSubstr("corner")));
}

TEST(ShapeWords, AnOvalIsSaidToBeShownRound) {
    const PieceStudy flat = study_of({26, 32, 38, 44}, OvalChain{10});
    EXPECT_THAT(size(flat), StartsWith("as a round piece "));
    EXPECT_THAT(shape(flat), StartsWith("An oval, shown and measured as the round piece"));
    EXPECT_THAT(shape(flat),
                HasSubstr("as an oval about 90"));  // 10 stitches and 8 rounds of 5 mm
    const PieceStudy stuffed = study_of({26, 32, 38, 44}, OvalChain{10}, medium_stuffing_stretch);
    EXPECT_THAT(shape(stuffed), HasSubstr("as the round piece"));
    EXPECT_THAT(shape(stuffed), Not(HasSubstr("as an oval about")));
    EXPECT_EQ(equivalent_round_words(study_of({6, 12, 18}), LengthUnit::millimetres), QString());
}

}  // namespace
}  // namespace roundwright
