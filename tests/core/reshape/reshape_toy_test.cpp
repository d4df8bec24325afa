#include "core/reshape/reshape_toy.h"

#include <cmath>
#include <gtest/gtest.h>

#include "tests/core/reshape/random_piece.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::even_counts;

Toy two_balls() {
    Toy toy;
    toy.hook_mm = 3.5;
    toy.gauge = SwatchGauge{20, 100, 20, 100, false, 1, 0};
    toy.yarns.resize(1);
    toy.pieces = {ball_piece(6), ball_piece(4)};
    toy.pieces[0].worked = {11, 0, {60, 60, 60, 60, 60, 60, 60, 60, 60, 60, 60}};
    return toy;
}

Target width(double mm) {
    Target target;
    target.width_mm = mm;
    return target;
}

TEST(ReshapeToy, ChangesThePieceAndKeepsWhatIsWorkedOfIt) {
    const Toy toy = two_balls();
    const ReshapedToy made = reshape_toy(toy, toy, {0}, width(40));
    ASSERT_EQ(made.pieces.size(), 1u);
    EXPECT_TRUE(made.all_met());
    EXPECT_EQ(even_counts(made.toy.pieces[0]), even_counts(ball_piece(4)));
    EXPECT_EQ(made.toy.pieces[1], toy.pieces[1]);
    EXPECT_EQ(made.pieces[0].back.keep_rounds, 4);
    EXPECT_EQ(made.toy.pieces[0].worked, (WorkedSoFar{4, 0, {60, 60, 60, 60}}));
    EXPECT_GT(made.pieces[0].back.yarn_mm().likely, 5'000);
}

TEST(ReshapeToy, AThickerHookTakesFewerStitchesAndUndoesEverything) {
    const Toy toy = two_balls();
    const Toy thicker = with_hook(toy, 4.5);
    EXPECT_NEAR(gauge_of(thicker).stitch_width_mm, 5 * 4.5 / 3.5, 1e-9);
    const ReshapedToy made = reshape_toy(toy, thicker, {0, 1}, {});
    ASSERT_EQ(made.pieces.size(), 2u);
    EXPECT_EQ(made.toy.hook_mm, 4.5);
    for (const ReshapedPiece& piece : made.pieces) {
        EXPECT_EQ(piece.made.code, ReshapeCode::met);
        EXPECT_LT(piece.made.form.piece.rounds.size(), toy.pieces[piece.piece].rounds.size());
        EXPECT_EQ(piece.back.keep_rounds, 0);
    }
    EXPECT_EQ(made.pieces[0].back.undo_rounds, 11);
    EXPECT_EQ(made.toy.pieces[0].worked, WorkedSoFar{});
}

// Nothing else changes than the scale of every length: so does the shape.
TEST(ReshapeToy, TheSameRoundsInHalfTheYarnAreHalfTheSize) {
    const Toy toy = two_balls();
    Toy half = toy;
    half.gauge = SwatchGauge{40, 100, 40, 100, false, 1, 0};
    const ReshapedToy made = same_rounds(toy, half, {0, 1});
    ASSERT_EQ(made.pieces.size(), 2u);
    for (const ReshapedPiece& piece : made.pieces) {
        EXPECT_EQ(piece.made.code, ReshapeCode::met);
        EXPECT_NEAR(piece.made.reached().width_mm, piece.made.before.width_mm / 2, 1e-6);
        EXPECT_NEAR(piece.made.reached().height_mm, piece.made.before.height_mm / 2, 1e-6);
        EXPECT_EQ(made.toy.pieces[piece.piece].rounds, toy.pieces[piece.piece].rounds);
    }
    EXPECT_EQ(made.pieces[0].back.undo_rounds, 11);
    EXPECT_EQ(made.toy.pieces[0].worked, WorkedSoFar{});
}

TEST(ReshapeToy, TheSameRoundsInTheSameYarnAreLeftAsTheyAre) {
    const Toy toy = two_balls();
    const ReshapedToy made = same_rounds(toy, toy, {0, 7});
    ASSERT_EQ(made.pieces.size(), 1u);
    EXPECT_EQ(made.pieces[0].made.code, ReshapeCode::unchanged);
    EXPECT_EQ(made.pieces[0].back.undo_rounds, 0);
    EXPECT_EQ(made.toy, toy);
}

TEST(ReshapeToy, APieceWithoutRoundsHasNoSizeInAnyYarn) {
    Toy toy = two_balls();
    toy.pieces[1].rounds.clear();
    const ReshapedToy made = same_rounds(toy, with_hook(toy, 5), {1});
    EXPECT_EQ(made.pieces[0].made.code, ReshapeCode::unusable_piece);
}

TEST(ReshapeToy, AGivenGaugeAndACircleFollowTheHookToo) {
    Toy toy = two_balls();
    toy.gauge = GivenGauge{{5, 4.6, 0, 0}};
    const Gauge thinner = gauge_of(with_hook(toy, 3.0));
    EXPECT_NEAR(thinner.stitch_width_mm, 5 * 3.0 / 3.5, 1e-9);
    EXPECT_GT(thinner.stitch_width_error_mm, 0);
    toy.gauge = CircleGauge{5, 6, 50, CircleLie::flat, 1, 0};
    const double before = gauge_of(toy).stitch_width_mm;
    EXPECT_NEAR(gauge_of(with_hook(toy, 7.0)).stitch_width_mm, 2 * before, 1e-7);
}

// Each of several measurements was made with the hook that the toy had.
TEST(ReshapeToy, SeveralMeasurementsFollowTheHookToo) {
    Toy toy = two_balls();
    const FinishedPieceGauge finished{"Head", {}, {{1, 0, std::log(5.0), 0.01}, {0, 1, std::log(5.0), 0.01}}};
    toy.gauge = SeveralGauge{{{CircleGauge{5, 6, 50, CircleLie::flat, 1, 0}, {}, {}},
                              {SwatchGauge{20, 100, 20, 100, false, 1, 3}, {}, {}},
                              {finished, {}, {}}}};
    const double before = gauge_of(toy).round_height_mm;
    EXPECT_NEAR(gauge_of(with_hook(toy, 4.5)).round_height_mm, before * 4.5 / 3.5, 0.02 * before);
    const Toy thicker = with_hook(toy, 4.5);
    const auto& kept = std::get<SeveralGauge>(thicker.gauge).measurements;
    EXPECT_EQ(std::get<CircleGauge>(kept[0].what).hook_mm, 3.5);
    EXPECT_EQ(std::get<SwatchGauge>(kept[1].what).hook_mm, 3);
    EXPECT_EQ(std::get<FinishedPieceGauge>(kept[2].what).hook_mm, 3.5);
}

TEST(ReshapeToy, AnotherWeightIsEstimated) {
    const Toy bulky = with_yarn_weight(two_balls(), YarnWeight::bulky);
    EXPECT_EQ(std::get<EstimatedGauge>(bulky.gauge).weight, YarnWeight::bulky);
    EXPECT_EQ(bulky.yarns[0].weight, YarnWeight::bulky);
}

TEST(ReshapeToy, NothingWantedChangesNothing) {
    const Toy toy = two_balls();
    const ReshapedToy made = reshape_toy(toy, toy, {0}, {});
    EXPECT_EQ(made.pieces[0].made.code, ReshapeCode::nothing_wanted);
    EXPECT_EQ(made.toy, toy);
}

}  // namespace
}  // namespace roundwright
