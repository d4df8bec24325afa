#include "core/assembly/toy_measures.h"

#include <cmath>
#include <gtest/gtest.h>

#include "core/assembly/assembled_studies.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

struct WholeToy : ::testing::Test {
    AssembledToy made() {
        studies.clear();
        for (std::size_t i = 0; i < toy.pieces.size(); ++i) studies.push_back(study_piece(toy, i));
        return assemble(toy, studies);
    }
    ToyMeasures measures() {
        const AssembledToy assembled = made();
        return toy_measures(assembled, studies);
    }
    ToyMass mass() {
        const AssembledToy assembled = made();
        return toy_mass(assembled, studies);
    }
    PieceCopy copy(std::size_t piece, int number = 0) const { return {toy.pieces.id(piece), number}; }
    int rounds(std::size_t piece) const { return static_cast<int>(toy.pieces[piece].rounds.size()); }
    Toy toy;
    std::vector<PieceStudy> studies;
};

TEST_F(WholeToy, OfOnePieceIsThePiece) {
    toy.pieces = PieceList{test::ball_piece(36)};
    const ToyMeasures found = measures();
    const PieceStudy& study = studies[0];
    EXPECT_NEAR(found.width_mm.likely, study.measures().width_mm, 0.05);
    EXPECT_NEAR(found.depth_mm.likely, study.measures().width_mm, 0.05);
    EXPECT_NEAR(found.height_mm.likely, study.measures().height_mm, 0.05);
    EXPECT_NEAR(found.height_mm.low, study.size().height_mm.low, 0.1);
    EXPECT_NEAR(found.width_mm.high, study.size().width_mm.high, 0.1);
    EXPECT_TRUE(found.complete);
    EXPECT_TRUE(found.overlaps.empty());
}

TEST_F(WholeToy, AHeadOnABodyIsAsTallAsBothLessWhatSinks) {
    toy.pieces = PieceList{test::ball_piece(48), test::ball_piece(36)};
    const Join join{.piece = copy(1),
                    .onto = copy(0),
                    .end = JoinedEnd::start,
                    .seam = Seam::closed,
                    .at = {.round = rounds(0) - 1},
                    .sink_mm = 4};
    toy.joins = {join};
    const ToyMeasures found = measures();
    const double both = studies[0].measures().height_mm + studies[1].measures().height_mm;
    // The drawn end's fan lies up to half a stitch above the last loop.
    EXPECT_NEAR(found.height_mm.likely, both - 4, 2.5);
    EXPECT_NEAR(found.width_mm.likely, studies[0].measures().width_mm, 0.05);
    EXPECT_LT(found.height_mm.low, found.height_mm.likely);
    EXPECT_GT(found.height_mm.high, found.height_mm.likely);
    EXPECT_TRUE(found.overlaps.empty());
    EXPECT_EQ(found.apart, 0u);
}

TEST_F(WholeToy, WhatItsPartsWeighAddsUp) {
    toy.pieces = PieceList{test::ball_piece(48)};
    const ToyMass plain = mass();
    toy.pieces[0].weight_grams = 20;
    toy.pieces[0].features = {{.name = {}, .round = 8}};
    const ToyMass heavy = mass();
    EXPECT_GT(heavy.features[0].grams.likely, 0.1);
    EXPECT_LT(heavy.features[0].grams.likely, 5);
    EXPECT_NEAR(heavy.grams().likely, plain.grams().likely + 20 + heavy.features[0].grams.likely, 1e-9);
    // 20 g of 560 kg/m3 fill the lowest 36 cm3.
    EXPECT_NEAR(
        (heavy.pellets[0].centre - lowest_part(*made().solids[0], -Vec3::UnitY(), 20 / 0.00056).centre)
            .norm(),
        0, 1e-9);
    EXPECT_LT(heavy.centre().y(), plain.centre().y() - 5);
    // A ball evenly filled has its mass in its middle.
    EXPECT_NEAR(plain.stuffing[0].centre.y() / studies[0].measures().height_mm, 0.5, 0.03);
}

TEST_F(WholeToy, PelletsInItsBaseHoldWhatWouldTip) {
    toy.pieces = PieceList{test::ball_piece(30), test::ball_piece(54)};
    toy.joins = {{.piece = copy(1),
                  .onto = copy(0),
                  .end = JoinedEnd::start,
                  .seam = Seam::closed,
                  .at = {.round = rounds(0) - 1},
                  .lean_right_degrees = 40}};
    const ToyMeasures tips = measures();
    EXPECT_FALSE(tips.rest.stands());
    EXPECT_LT(tips.stable_degrees.high, 0);
    toy.joins[0].lean_right_degrees = 0;
    const ToyMeasures stands = measures();
    EXPECT_TRUE(stands.rest.stands());
    EXPECT_GT(stands.stable_degrees.likely, tips.stable_degrees.likely);
    toy.pieces[0].weight_grams = 80;
    EXPECT_GT(measures().stable_degrees.likely, stands.stable_degrees.likely);
}

TEST_F(WholeToy, LyingItIsAsTallAsItWasDeep) {
    toy.pieces = PieceList{test::cup_piece(24, 16)};
    toy.pieces[0].end = End::sewn_straight;
    toy.stance = Stance::lying;
    const ToyMeasures found = measures();
    EXPECT_LT(found.height_mm.likely, studies[0].measures().height_mm);
    EXPECT_TRUE(found.rest.stands());
}

TEST_F(WholeToy, PiecesThatRunIntoEachOtherAreListed) {
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(24, 4), test::cup_piece(24, 4)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 9, .stitches_right = 6}},
                 {.piece = copy(2), .onto = copy(0), .at = {.round = 9, .stitches_right = -6}}};
    EXPECT_TRUE(measures().overlaps.empty());
    toy.joins[1].at.stitches_right = 3;
    const ToyMeasures close = measures();
    ASSERT_EQ(close.overlaps.size(), 1u);
    EXPECT_EQ(close.overlaps[0].one, 1u);
    EXPECT_EQ(close.overlaps[0].other, 2u);
    EXPECT_GT(close.overlaps[0].volume_mm3, 100);
    // Sunk in deeply is what the maker said; leant into the other it is not.
    toy.joins.pop_back();
    toy.joins[0].sink_mm = 6;
    EXPECT_TRUE(measures().overlaps.empty());
    toy.joins[0].sink_mm = 0;
    toy.joins[0].lean_degrees = 100;
    EXPECT_EQ(measures().overlaps.size(), 1u);
}

TEST_F(WholeToy, WhatIsJoinedToNothingIsNoPartOfItsSize) {
    toy.pieces = PieceList{test::ball_piece(36), test::cup_piece(18, 3), test::ball_piece(60)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 5}}};
    const ToyMeasures found = measures();
    EXPECT_EQ(found.apart, 1u);
    EXPECT_LT(found.width_mm.likely, studies[2].measures().width_mm);
}

TEST_F(WholeToy, WithoutPiecesHasNoMeasures) {
    EXPECT_FALSE(measures().usable());
    toy.pieces = PieceList{Piece{}};
    const ToyMeasures found = measures();
    EXPECT_FALSE(found.usable());
    EXPECT_FALSE(found.complete);
}

}  // namespace
}  // namespace roundwright
