#include <gtest/gtest.h>

#include "core/shape/own_depth.h"
#include "core/study/fabric_stage.h"
#include "core/study/studied_piece.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright::test {
namespace {

std::shared_ptr<const PieceStudy> studied(const Toy& toy, const PieceStudy* before = nullptr) {
    return std::make_shared<const PieceStudy>(study_piece(toy, 0, before));
}

Toy sole() {
    Toy toy = toy_of({26, 32, 38, 44});
    toy.gauge = GivenGauge{{5, 5, 0.25, 0.25}};
    toy.pieces[0].start = OvalChain{10};
    return toy;
}

TEST(EveryStitchStudy, KeepsTheRoundShapeAndItsChecks) {
    const Toy toy = stuffed_toy_of(ball(5));
    const auto round = studied(toy);
    const EveryStitchStudy fine = with_every_stitch(round, toy, 0);
    ASSERT_FALSE(fine.refused());
    EXPECT_EQ(fine.study->measures().fidelity, Fidelity::every_stitch);
    EXPECT_EQ(fine.study->shape->round_solved, round->shape);
    EXPECT_EQ(fine.study->checked, round->checked);
    EXPECT_EQ(with_checks(*fine.study, toy, 0, round.get()).checked, round->checked)
        << "checks are judged by the round solver, whose cures they offer";
    EXPECT_TRUE(fine.study->round_solved().usable());
    const PieceStudy back = as_round_solved(*fine.study);
    EXPECT_EQ(back.shape, round->shape);
    EXPECT_EQ(back.size(), round->size());
}

TEST(EveryStitchStudy, ItsRangeIsAsWideInProportion) {
    const Toy toy = stuffed_toy_of(ball(5));
    const auto round = studied(toy);
    const auto fine = with_every_stitch(round, toy, 0).study;
    const auto share = [](const Range& range, double mm) { return range.high / mm; };
    EXPECT_NE(fine->measures().height_mm, round->measures().height_mm);
    EXPECT_LT(fine->size().height_mm.low, fine->measures().height_mm);
    EXPECT_NEAR(share(fine->size().height_mm, fine->measures().height_mm),
                share(round->size().height_mm, round->measures().height_mm), 1e-9);
    EXPECT_NEAR(share(fine->size().width_mm, fine->measures().width_mm),
                share(round->size().width_mm, round->measures().width_mm), 1e-9);
}

TEST(EveryStitchStudy, TheNextRoundShapeStartsFromTheRoundOne) {
    const Toy toy = stuffed_toy_of(ball(5));
    const auto round = studied(toy);
    const auto fine = with_every_stitch(round, toy, 0).study;
    const Toy edited = stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 29, 30, 24, 18, 12, 6});
    const PieceStudy after_round = study_shape(edited, 0, round.get());
    const PieceStudy after_fine = study_shape(edited, 0, fine.get());
    EXPECT_EQ(after_fine.measures(), after_round.measures()) << "to the bit";
    EXPECT_EQ(after_fine.measures().fidelity, Fidelity::round);
}

TEST(EveryStitchStudy, AnEditOfTheFaceKeepsIt) {
    Toy toy = stuffed_toy_of(ball(5));
    const auto fine = with_every_stitch(studied(toy), toy, 0).study;
    Feature eyes;
    eyes.round = 6;
    toy.pieces[0].features = {eyes};
    EXPECT_EQ(studied(toy, fine.get())->shape, fine->shape);
}

TEST(EveryStitchStudy, OtherStitchesOfTheSameCountsFallBackToTheRoundShape) {
    Toy toy = stuffed_toy_of(ball(5));
    const auto round = studied(toy);
    const auto fine = with_every_stitch(round, toy, 0).study;
    for (Round& each : toy.pieces[0].rounds)
        std::get<WorkedEvenly>(each.working).spacing = Spacing::staggered;
    EXPECT_EQ(studied(toy, fine.get())->shape, round->shape) << "which is solved already";
}

TEST(EveryStitchStudy, OneThatIsTooLargeIsRefused) {
    const Toy toy = stuffed_toy_of(ball(5));
    const auto round = studied(toy);
    const EveryStitchStudy refused = with_every_stitch(round, toy, 0, {.most_stitches = 100});
    EXPECT_EQ(refused.refusal, EveryStitchRefusal::too_large);
    EXPECT_EQ(refused.study, round);
}

TEST(EveryStitchStudy, WhatLeavesTheProgramIsThePiecesOwnShape) {
    const Toy round = stuffed_toy_of(ball(5));
    EXPECT_EQ(as_worked(*studied(round), round, 0).measures().fidelity, Fidelity::round);
    const Toy oval = sole();
    EXPECT_EQ(as_worked(*studied(oval), oval, 0).measures().fidelity, Fidelity::every_stitch);
    Toy bent = stuffed_toy_of({});
    bent.pieces[0].start = OpenTube{24};
    bent.pieces[0].end = End::left_open;
    for (const char* words :
         {"sc in each st around", "sc in each st around",
          "starting in 7th st, sc in next 12, leave rem sts unworked", "sc in each st around"})
        bent.pieces[0].rounds.emplace_back().working = AsWritten{words};
    EXPECT_EQ(as_worked(*studied(bent), bent, 0).measures().fidelity, Fidelity::every_stitch);
}

TEST(EveryStitchStudy, AnOvalHasADepthOfItsOwn) {
    const Toy toy = sole();
    const PieceStudy oval = as_worked(*studied(toy), toy, 0);
    const auto depth = own_depth_mm(oval.measures());
    ASSERT_TRUE(depth.has_value());
    EXPECT_GT(oval.measures().width_mm - *depth, 20) << "its increases all around draw it rounder";
    EXPECT_LT(oval.measures().width_mm - *depth, 50) << "than its chain of ten stitches";
    const Range range = depth_range(oval.measures(), oval.size().width_mm);
    EXPECT_LT(range.low, *depth);
    EXPECT_GT(range.high, *depth);
    EXPECT_FALSE(own_depth_mm(studied(stuffed_toy_of(ball(4)))->measures()).has_value());
}

// The same piece at another gauge: all three lengths in proportion.
TEST(EveryStitchStudy, AtAnotherGaugeItsSizesChangeAsTheRoundOnesDo) {
    const Toy toy = sole();
    const PieceStudy oval = as_worked(*studied(toy), toy, 0);
    const Gauge larger{5.5, 5.5, 0, 0};
    const PieceMeasures there = measures_at(larger, toy.pieces[0], oval);
    EXPECT_NEAR(there.width_mm / oval.measures().width_mm, 1.1, 0.01);
    EXPECT_NEAR(there.depth_mm / oval.measures().depth_mm, 1.1, 0.01);
}

}  // namespace
}  // namespace roundwright::test
