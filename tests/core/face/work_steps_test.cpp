#include "core/face/work_steps.h"

#include <gtest/gtest.h>
#include <numbers>

namespace roundwright {
namespace {

// A head in stitches 5 mm wide: openings of 10, 19, 29 ... 57 mm and back.
Piece head() {
    Piece piece;
    for (const int count : {6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6})
        piece.rounds.emplace_back().working = WorkedEvenly{count};
    return piece;
}

std::vector<double> loops_of(const Piece& piece) {
    std::vector<double> loops{0};
    for (const Round& round : piece.rounds)
        loops.push_back(5.0 * std::get<WorkedEvenly>(round.working).stitches);
    return loops;
}

Feature eyes(int round, double washer_mm) {
    Feature feature;
    feature.kind = FeatureKind::safety_eye;
    feature.round = round;
    feature.washer_mm = washer_mm;
    return feature;
}

TEST(WorkSteps, EyesComeBeforeTheStuffingAndBothBeforeTheClose) {
    Piece piece = head();
    piece.features = {eyes(7, 14)};
    const std::vector<WorkStep> expected{{9, StepKind::fit_feature, 0},
                                         {11, StepKind::begin_stuffing, -1},
                                         {13, StepKind::finish_stuffing, -1}};
    EXPECT_EQ(work_steps(piece, loops_of(piece), 0), expected);
}

TEST(WorkSteps, AWasherTooLargeIsDueAsSoonAsItsGapIsThere) {
    Piece piece = head();
    piece.features = {eyes(12, 30)};
    const auto steps = work_steps(piece, loops_of(piece), 0);
    ASSERT_EQ(steps.size(), 3U);
    EXPECT_EQ(steps[1], (WorkStep{13, StepKind::fit_feature, 0}));
}

TEST(WorkSteps, WhatIsSewnOnIsNotFitted) {
    Piece piece = head();
    piece.features = {eyes(7, 14)};
    piece.features[0].kind = FeatureKind::embroidered_eye;
    for (const WorkStep& step : work_steps(piece, loops_of(piece), 0))
        EXPECT_NE(step.kind, StepKind::fit_feature);
}

TEST(WorkSteps, APieceLeftOpenIsStuffedAtItsEnd) {
    Piece piece = head();
    piece.rounds.resize(10);
    piece.end = End::left_open;
    EXPECT_EQ(work_steps(piece, loops_of(piece), 0), (std::vector<WorkStep>{{9, StepKind::stuff, -1}}));
    piece.area_stretch = unstuffed_stretch;
    EXPECT_TRUE(work_steps(piece, loops_of(piece), 0).empty());
}

TEST(WorkSteps, NothingIsKnownWithoutALoopForEveryRound) {
    const Piece piece = head();
    EXPECT_TRUE(work_steps(piece, {0, 30}, 0).empty());
    EXPECT_TRUE(work_steps(Piece{}, {0}, 0).empty());
}

}  // namespace
}  // namespace roundwright
