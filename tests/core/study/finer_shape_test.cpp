#include <gtest/gtest.h>

#include "core/checks/run_checks.h"
#include "core/face/face_surface.h"
#include "core/reshape/resize.h"
#include "core/reshape/sculpt.h"
#include "core/study/study_surface.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright::test {
namespace {

/// The shape as a finer solver might find it, which has no meridian.
Shared<ShapeStage> every_stitch(const ShapeStage& round, Termination termination = Termination::converged) {
    auto stage = std::make_shared<ShapeStage>(round);
    stage->measures.fidelity = Fidelity::every_stitch;
    stage->measures.termination = termination;
    stage->measures.width_mm += 1;
    stage->revolved = {};
    return stage;
}

Toy ball_with_eyes() {
    Toy toy = stuffed_toy_of(ball(5));
    Feature eyes;
    eyes.round = 6;
    eyes.width_mm = 200;  // a check would have something to say
    toy.pieces[0].features = {eyes};
    return toy;
}

TEST(StepsOfAShape, ALaterOneNeverTakesThePlaceOfAFinerOneOfTheSameInputs) {
    const ShapeStage round = *study_shape(ball_with_eyes(), 0).shape;
    ShapeStage unsettled = round;
    unsettled.measures.termination = Termination::iteration_limit;
    const auto fine = every_stitch(round);
    const auto fine_unsettled = every_stitch(round, Termination::iteration_limit);
    ShapeStage other = round;
    other.problem.area_stretch = 0.01;
    ShapeStage other_unsettled = other;
    other_unsettled.measures.termination = Termination::line_search_failed;
    const struct {
        const char* what;
        const ShapeStage &next, &shown;
        bool takes;
    } steps[] = {
        {"the same again", round, round, true},
        {"finer", *fine, round, true},
        {"coarser", round, *fine, false},
        {"finer, but not settled", *fine_unsettled, round, false},
        {"finer, of one that is not settled either", *fine_unsettled, unsettled, true},
        {"settled now", round, unsettled, true},
        {"coarser, though the finer one is not settled", round, *fine_unsettled, false},
        {"of other inputs", other, *fine, true},
        {"of other inputs, not settled", other_unsettled, *fine, true},
    };
    for (const auto& step : steps)
        EXPECT_EQ(takes_the_place_of(step.next, step.shown), step.takes) << step.what;
}

TEST(StepsOfAShape, AFinerShapeStaysWhileItsInputsDo) {
    Toy toy = ball_with_eyes();
    const PieceStudy round = study_piece(toy, 0);
    const PieceStudy fine =
        with_checks(with_sizes(with_shape(round, every_stitch(*round.shape)), toy, 0, &round), toy, 0, &round);
    EXPECT_EQ(fine.measures().fidelity, Fidelity::every_stitch);
    EXPECT_EQ(fine.size().width_mm, (Range{fine.measures().width_mm, fine.measures().width_mm}));
    EXPECT_EQ(with_shape(fine, round.shape).shape, fine.shape);
    toy.pieces[0].features[0].stitches_apart = 8;
    EXPECT_EQ(study_piece(toy, 0, &fine).shape, fine.shape);
    toy.pieces[0].area_stretch = firm_stuffing_stretch;
    EXPECT_EQ(study_piece(toy, 0, &fine).measures().fidelity, Fidelity::round);
}

TEST(NoSurfaceOfRevolution, WhatIsAboutMeridiansSaysSo) {
    const Toy toy = ball_with_eyes();
    const PieceStudy round = study_piece(toy, 0);
    const PieceStudy fine = with_shape(round, every_stitch(*round.shape));
    ASSERT_TRUE(fine.measures().usable());
    EXPECT_FALSE(fine.revolved().usable());
    EXPECT_TRUE(study_surface(toy, 0, fine).mesh.indices.empty());
    EXPECT_TRUE(FaceSurface(toy.pieces[0], fine.revolved()).empty());
    EXPECT_FALSE(measures_at({6, 6}, toy.pieces[0], fine).usable());
    EXPECT_TRUE(measures_at({6, 6}, toy.pieces[0], round).usable());
}

TEST(NoSurfaceOfRevolution, ReshapingIsRefused) {
    PieceForm form = piece_form(stuffed_toy_of(ball(5)).pieces[0], {5, 5});
    Target wider;
    wider.scale = 1.5;
    EXPECT_TRUE(has_piece(resize(form, wider).code));
    EXPECT_FALSE(sculpt_start(form).outline.points.empty());
    form.fidelity = Fidelity::equivalent_round;
    EXPECT_TRUE(has_piece(resize(form, wider).code));
    form.fidelity = Fidelity::every_stitch;
    EXPECT_EQ(resize(form, wider).code, ReshapeCode::not_of_revolution);
    EXPECT_EQ(reshape_code_name(ReshapeCode::not_of_revolution), "not_of_revolution");
    const SculptStart start = sculpt_start(form);
    EXPECT_TRUE(start.outline.points.empty());
    EXPECT_FALSE(sculpt(start, start.outline, 0.5).usable);
}

}  // namespace
}  // namespace roundwright::test
