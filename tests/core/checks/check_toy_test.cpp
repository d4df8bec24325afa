#include <gtest/gtest.h>

#include "core/checks/run_checks.h"
#include "core/gauge/usual_gauge.h"
#include "core/study/toy_checks.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

TEST(CheckGauge, MissingOneIsSaidWithWhatStandsIn) {
    Toy toy = toy_of(disc(6, 3));
    EXPECT_EQ(named(checks_of(toy)), "");
    toy.gauge = std::monostate{};
    const PieceStudy study = study_piece(toy, 0);
    EXPECT_FALSE(study.gauge_known);
    EXPECT_EQ(study.gauge, usual_gauge(toy.hook_mm));
    ASSERT_EQ(named(study.checks()), "gauge_missing round 0; ");
    EXPECT_EQ(study.checks()[0].severity, Severity::note);
    EXPECT_EQ(study.checks()[0].piece, -1);
    EXPECT_EQ(study.checks()[0].arguments.at(0), Argument(Millimetres{study.gauge.stitch_width_mm}));
}

TEST(CheckGauge, IsSaidOncePerToy) {
    Toy toy = toy_of(disc(9, 4));
    toy.gauge = std::monostate{};
    toy.pieces.push_back(toy.pieces[0]);
    const std::vector<PieceStudy> studies{study_piece(toy, 0), study_piece(toy, 1)};
    EXPECT_EQ(named(checks_of_toy(studies)), "gauge_missing round 0; ruffles round 4; ruffles round 4; ");
    EXPECT_EQ(checks_of_toy(studies)[2].piece, 1);
}

TEST(CheckLimits, MostStitchesAndOneMore) {
    std::vector<int> counts(20, 10'000);
    EXPECT_EQ(named(checks_of(toy_of(counts), CheckCode::too_many_stitches)), "");
    ++counts.back();
    const PieceStudy study = study_piece(toy_of(counts), 0);
    ASSERT_EQ(named(study.checks()), "too_many_stitches round 0; ");
    EXPECT_EQ(study.checks()[0].arguments, (std::vector<Argument>{200'001, 200'000}));
    EXPECT_FALSE(study.measures().usable());
}

TEST(CheckLimits, VastCountsAreSaidAndNotWorkedOut) {
    const PieceStudy study = study_piece(toy_of(std::vector<int>(2'000, 200'000)), 0);
    ASSERT_EQ(named(study.checks()), "too_many_stitches round 0; ");
    EXPECT_EQ(study.checks()[0].arguments[0], Argument(400'000'000));
    EXPECT_TRUE(study.graph().graph.rounds.empty());
}

TEST(CheckSolver, OnlyAShapeThatWasNotFoundIsSaid) {
    const Toy toy = toy_of(disc(6, 3));
    const PieceStudy study = study_piece(toy, 0);
    PieceMeasures measures = study.measures();
    for (const auto& [termination, said] :
         {std::pair{Termination::converged, ""}, std::pair{Termination::cancelled, ""},
          std::pair{Termination::iteration_limit, "not_converged round 0; "},
          std::pair{Termination::line_search_failed, "not_converged round 0; "},
          std::pair{Termination::unusable_problem, "not_converged round 0; "}}) {
        measures.termination = termination;
        EXPECT_EQ(named(run_checks({toy.pieces[0], 0, study.graph(), study.gauge, study.gauge_known,
                                    study.problem(), measures, study.lies(), study.shape->signs,
                                    study.revolved()})),
                  said);
    }
}

std::vector<Check> unsettled(const Toy& toy) {
    const PieceStudy study = study_piece(toy, 0);
    PieceMeasures measures = study.measures();
    measures.termination = Termination::iteration_limit;
    std::vector<Check> found;
    for (Check& check :
         run_checks({toy.pieces[0], 0, study.graph(), study.gauge, study.gauge_known, study.problem(),
                     measures, study.lies(), study.shape->signs, study.revolved()}))
        if (check.code == CheckCode::not_converged) found.push_back(std::move(check));
    return found;
}

// Only what no stitch and no round can be keeps a shape from being found, and then it is named.
TEST(CheckSolver, SaysWhyNoShapeWasFound) {
    Toy flat = toy_of(disc(6, 3));
    flat.gauge = GivenGauge{{5, 0.01, 0, 0}};
    ASSERT_EQ(named(unsettled(flat)), "not_converged round 0; ");
    EXPECT_EQ(unsettled(flat)[0].arguments, (std::vector<Argument>{3, Millimetres{5}, Millimetres{0.01}}));
    const Toy steep = toy_of({6, 12, 560, 1});
    ASSERT_EQ(unsettled(steep).size(), 1U);
    EXPECT_EQ(unsettled(steep)[0].round, 3);
    EXPECT_EQ(unsettled(steep)[0].arguments, (std::vector<Argument>{4, 560, 1}));
    EXPECT_EQ(unsettled(toy_of(disc(6, 3)))[0].arguments, (std::vector<Argument>{3}));
}

TEST(CheckSolver, EmptyPieceHasNothingToMend) { EXPECT_EQ(named(checks_of(toy_of({}))), ""); }

TEST(StudyPiece, StoppedStudyIsNotCalledWrong) {
    std::stop_source source;
    source.request_stop();
    const PieceStudy study = study_piece(stuffed_toy_of(ball(8)), 0, nullptr, source.get_token());
    EXPECT_EQ(study.measures().termination, Termination::cancelled);
    EXPECT_EQ(named(study.checks()), "");
}

TEST(StudyPiece, WarmStudyGivesTheSameShape) {
    Toy toy = stuffed_toy_of(ball(8));
    const PieceStudy before = study_piece(toy, 0);
    toy.pieces[0].rounds[10].working = WorkedEvenly{47};
    const PieceStudy cold = study_piece(toy, 0);
    const PieceStudy warm = study_piece(toy, 0, &before);
    EXPECT_NEAR(warm.measures().width_mm, cold.measures().width_mm, 1e-3);
    EXPECT_NEAR(warm.measures().height_mm, cold.measures().height_mm, 1e-3);
}

/// Rounds that more than double, twenty of them: two cures each. `more` even rounds after them.
Toy twenty_errors(int more) {
    std::vector<int> counts{20};
    for (int i = 0; i < 20; ++i) counts.insert(counts.end(), {50, 25, 20});
    counts.insert(counts.end(), static_cast<std::size_t>(more), 20);
    return toy_of(counts);
}

std::size_t cures_kept(const Toy& toy) {
    std::size_t cures = 0;
    for (const Check& check : checks_of(toy)) cures += check.cures.size();
    return cures;
}

/// Trying one takes a study of its own: 24 are tried, but fewer of a piece of more than 40,000 / 24 stitches.
/// Of the 20, 9 and 1 that are tried here so many are sound.
TEST(StudyPiece, TriesAsManyCuresAsThereIsTimeFor) {
    const std::size_t stitches = 20 + 20 * (50 + 25 + 20);
    EXPECT_EQ(stitches, 1920U);
    EXPECT_EQ(cures_kept(twenty_errors(0)), 16U);
    EXPECT_EQ(cures_kept(twenty_errors(static_cast<int>(4'000 - stitches) / 20)), 8U);
    EXPECT_EQ(cures_kept(twenty_errors(static_cast<int>(40'000 - stitches) / 20)), 1U);  // never none
}

TEST(Checks, AreInTheOrderOfRoundsWorstFirst) {
    const auto checks = checks_of(toy_of({6, 30, 36, 6}));
    for (std::size_t i = 1; i < checks.size(); ++i) {
        EXPECT_LE(checks[i - 1].round, checks[i].round);
        EXPECT_TRUE(checks[i - 1].round < checks[i].round || checks[i - 1].severity >= checks[i].severity);
    }
    EXPECT_GE(checks.size(), 2);
}

}  // namespace
}  // namespace roundwright
