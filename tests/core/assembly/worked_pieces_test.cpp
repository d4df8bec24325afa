#include "core/assembly/worked_pieces.h"

#include <gtest/gtest.h>
#include <numbers>

#include "core/assembly/study_solved.h"
#include "core/assembly/toy_measures.h"
#include "core/materials/yarn_use.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

struct WorkedPieces : ::testing::Test {
    Toy toy;
    WorkedPieces() {
        toy.hook_mm = 3.5;
        toy.yarns.resize(1);
        toy.gauge = GivenGauge{.gauge = {5, 5, 0, 0, 0}};
    }
    [[nodiscard]] std::vector<PieceStudy> studies() const {
        std::vector<PieceStudy> all;
        for (std::size_t i = 0; i < toy.pieces.size(); ++i) all.push_back(study_shape(toy, i));
        return all;
    }
    [[nodiscard]] Materials taken() const {
        const auto all = studies();
        return materials(toy, worked_pieces(toy, all));
    }
    [[nodiscard]] double grams_of_stuffing() const { return taken().stuffing_g.likely; }
    [[nodiscard]] double seam(std::size_t piece) const {
        return worked_pieces(toy, studies())[piece].seams_mm;
    }
};

TEST_F(WorkedPieces, OfAPieceStuffedInPartOnlyThatPartIsFilled) {
    Piece limb = test::cup_piece(24, 30);
    toy.pieces = PieceList{limb};
    const double whole = stuffed_volume_mm3(toy.pieces[0], studies()[0]);
    EXPECT_NEAR(whole, studies()[0].measures().volume_mm3, 1e-6);
    const double grams = grams_of_stuffing();
    limb.stuffed_rounds = RoundSpan{4, 18};  // fifteen of the tube's even rounds
    toy.pieces = PieceList{limb};
    const PieceStudy study = studies()[0];
    const double part = stuffed_volume_mm3(toy.pieces[0], study);
    // Those rounds are a cylinder, but for the wall that closes in at their ends.
    const double radius = study.measures().round(11).width_mm / 2;
    const double cylinder = std::numbers::pi * radius * radius *
                            (study.measures().round(18).height_mm - study.measures().round(3).height_mm);
    EXPECT_NEAR(part, cylinder, 0.05 * cylinder);
    EXPECT_LT(part, 0.6 * whole);
    EXPECT_NEAR(grams_of_stuffing(), grams * part / whole, 1e-6 * grams);
    EXPECT_NEAR(stuffed_volume_mm3(solved_piece(toy, 0, study)), part, 1e-6 * part);
    limb.stuffed_rounds = RoundSpan{0, 99};  // all that there are
    toy.pieces = PieceList{limb};
    EXPECT_NEAR(grams_of_stuffing(), grams, 1e-6 * grams);
    limb.area_stretch = 0;
    toy.pieces = PieceList{limb};
    EXPECT_EQ(grams_of_stuffing(), 0);
}

TEST_F(WorkedPieces, PelletsAreSummedWithTheirBags) {
    Piece foot = test::cup_piece(24, 6);
    foot.make = 2;
    foot.weight_grams = 8;
    toy.pieces = PieceList{test::ball_piece(36), foot};
    EXPECT_EQ(taken().pellets_g, 16);
    EXPECT_EQ(taken().pellet_bags, 2);
}

TEST_F(WorkedPieces, SeamsAreAsLongAsTheEdgesThatAreSewn) {
    Piece ear = test::even_piece("Ear", 8, 12, End::sewn_straight, 2);
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(18, 4), ear};
    EXPECT_EQ(seam(1), 0);
    EXPECT_NEAR(seam(2), 2 * 12 * 5 / 2.0, 1e-9);  // closed by itself, both of them
    toy.joins = {{.piece = {toy.pieces.id(1), 0},
                  .onto = {toy.pieces.id(0), 0},
                  .at = {.round = 10, .stitches_right = 7}},
                 {.piece = {toy.pieces.id(2), 0},
                  .onto = {toy.pieces.id(0), 0},
                  .pair = true,
                  .seam = Seam::straight,
                  .at = {.round = 5, .stitches_right = 8}}};
    EXPECT_NEAR(seam(1), 18 * 5, 1e-9);
    EXPECT_NEAR(seam(2), 2 * 12 * 5 / 2.0, 1e-9);
    EXPECT_EQ(seam(0), 0);
    toy.joins[0].seam = Seam::hung;
    EXPECT_EQ(seam(1), 0);
}

TEST_F(WorkedPieces, SewingTakesYarnBeyondTheTails) {
    toy.pieces = PieceList{test::ball_piece(60), test::cup_piece(48, 6)};
    const double apart = taken().yarns[0].metres.likely;
    toy.joins = {{.piece = {toy.pieces.id(1), 0}, .onto = {toy.pieces.id(0), 0}, .at = {.round = 14}}};
    const double sewn = taken().yarns[0].metres.likely;
    EXPECT_NEAR(sewn - apart, (3 * 48 * 5 - tail_mm) / 1000.0, 1e-9);
}

TEST_F(WorkedPieces, ChainsLieInEveryGapBetweenTheLegsThatABodyBeginsOn) {
    Piece leg = test::cup_piece(18, 6);
    leg.make = 3;
    Piece body = test::even_piece("Body", 10, 60);
    body.start = WorkedOn{.stitches = 18 * 3 + 2 * 2 * 3, .chains_between = 3};
    toy.pieces = PieceList{leg, body};
    EXPECT_EQ(worked_pieces(toy, studies())[1].gaps_between_edges, 1);
    for (int i = 0; i < 3; ++i)
        toy.joins.push_back({.piece = {toy.pieces.id(0), i},
                             .onto = {toy.pieces.id(1), 0},
                             .seam = Seam::worked_on,
                             .at = {.round = -1, .stitches_right = 20.0 * i}});
    const auto all = studies();
    const auto worked = worked_pieces(toy, all);
    ASSERT_EQ(worked[1].gaps_between_edges, 2);
    const auto use = [&](int gaps) {
        return single_crochets_of_yarn(toy.pieces[1], *worked[1].graph, 1, gaps)[0];
    };
    EXPECT_NEAR(use(2) - use(1), use(1) - use(0), 1e-9);
    EXPECT_GT(use(2), use(1));
    toy.joins.resize(1);
    EXPECT_EQ(worked_pieces(toy, all)[1].gaps_between_edges, 0);
}

}  // namespace
}  // namespace roundwright
