#include "core/reshape/fit_problem.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/base/limits.h"

namespace roundwright {
namespace {

const Gauge square{5, 5, 0, 0};

/// A cone of ten rounds, six more a round, worked as it is.
FitProblem cone(Foundation foundation = Foundation::none) {
    FitProblem problem;
    problem.profile.at_round = {0, 10};
    problem.profile.stitches = {0, 60};
    problem.gauge = square;
    problem.foundation = foundation;
    problem.tidiness = 0;
    return problem;
}

/// A tube of ten rounds over so many loops.
FitProblem tube(Foundation foundation, double loops = 14, double first = 14) {
    FitProblem problem = cone(foundation);
    problem.profile.at_round = {0, 1, 10};
    problem.profile.stitches = {loops, first, first};
    problem.profile.ring_start = false;
    return problem;
}

TEST(FlatGrowth, IsTwoPiOfRoundOverStitch) {
    EXPECT_NEAR(flat_growth({5, 4, 0, 0}), 2 * std::numbers::pi * 0.8, 1e-12);
}

// Six lie flat where flat growth is between 6 / 1.05 and 6 / 0.828: h / w from 0.91 to 1.15.
TEST(UsualStartCount, IsSixWhereSixLieFlat) {
    EXPECT_EQ(usual_start_count({1, 1, 0, 0}), 6);
    EXPECT_EQ(usual_start_count({1, 0.91, 0, 0}), 6);
    EXPECT_EQ(usual_start_count({1, 0.90, 0, 0}), 5);
    EXPECT_EQ(usual_start_count({1, 1.15, 0, 0}), 6);
    EXPECT_EQ(usual_start_count({1, 1.16, 0, 0}), 7);
    EXPECT_EQ(usual_start_count({1, 0.4, 0, 0}), 3);
    EXPECT_EQ(usual_start_count({1, 2, 0, 0}), 13);
}

TEST(NearestNumbersOfRounds, TheNearestFirstThenItsNeighbours) {
    const auto numbers = [](double along, std::vector<int> kept = {}) {
        FitProblem problem = cone();
        problem.kept = std::move(kept);
        return nearest_numbers_of_rounds(problem, {1, along});
    };
    EXPECT_EQ(numbers(0.74), (std::vector<int>{7, 8, 6}));
    EXPECT_EQ(numbers(0.76), (std::vector<int>{8, 7, 9}));
    EXPECT_EQ(numbers(0.8), (std::vector<int>{8, 7, 9}));
    EXPECT_EQ(numbers(0.12), (std::vector<int>{1, 2}));
    EXPECT_EQ(numbers(0.02), (std::vector<int>{1, 2}));
    EXPECT_EQ(numbers(0.5, {6, 12, 18, 24, 30}), (std::vector<int>{5, 6}));
    EXPECT_EQ(numbers(0.2, {6, 12, 18, 24, 30}), (std::vector<int>{5}));
    const int most = static_cast<int>(max_rounds_per_piece);
    EXPECT_EQ(numbers(most / 10.0), (std::vector<int>{most, most - 1}));
    EXPECT_EQ(numbers(900), (std::vector<int>{most, most - 1}));
}

TEST(CutProfile, IntoWholeRoundsAndStitches) {
    const RoundsCut cut = cut_profile(cone(), {0.5, 0.5}, 5, 0);
    EXPECT_EQ(cut.counts, (std::vector<int>{6, 12, 18, 24, 30}));
    EXPECT_EQ(cut.foundation, 0);
    EXPECT_EQ(cut.ends_at, (std::vector<double>{0.2, 0.4, 0.6, 0.8, 1}));
    const RoundsDraft draft = cut.draft();
    EXPECT_EQ(draft.stitches, (std::vector<double>{6, 12, 18, 24, 30}));
    EXPECT_EQ(draft.ends_at, cut.ends_at);
    EXPECT_EQ(draft.height_factor, 1);
    EXPECT_NEAR(cut.problem.half_round, cut.problem.flat_growth / 4, 1e-12);
}

/// A chain that round 1 goes straight on from has round 1's loops; one that it does not limits round 1.
TEST(CutProfile, BeginsWithItsFoundation) {
    const auto foundation = [](const FitProblem& problem, double around) {
        return cut_profile(problem, {around, 1}, 10, 0).foundation;
    };
    EXPECT_EQ(foundation(tube(Foundation::loops), 1), 14);
    EXPECT_EQ(foundation(tube(Foundation::loops), 1.6), 22);
    EXPECT_EQ(foundation(tube(Foundation::loops, 14, 20), 1), 14);
    EXPECT_EQ(foundation(tube(Foundation::loops, 14, 20), 1.46), 20);
    EXPECT_EQ(foundation(tube(Foundation::loops, 4, 7), 0.4), 3);
    EXPECT_EQ(foundation(tube(Foundation::ring_of_chains, 6, 12), 1), 6);
    EXPECT_EQ(foundation(tube(Foundation::ring_of_chains, 6, 12), 1.4), 8);
    EXPECT_EQ(foundation(tube(Foundation::loops_in_pairs, 14, 14), 1), 14);
    EXPECT_EQ(foundation(tube(Foundation::loops_in_pairs, 14, 14), 1.1), 16);
    EXPECT_EQ(foundation(tube(Foundation::loops_in_pairs, 14, 14), 0.05), 2);
    FitProblem kept = tube(Foundation::loops, 14, 20);
    kept.kept = {20};
    kept.kept_foundation = 17;
    EXPECT_EQ(foundation(kept, 2), 17);
}

TEST(CountProblemOfAProfile, LimitsRoundOneByItsChain) {
    const auto below = [](const FitProblem& problem) {
        return count_problem(problem, {1, 1}, {1, 2}).loops_below;
    };
    EXPECT_EQ(below(cone()), 0);
    EXPECT_EQ(below(tube(Foundation::ring_of_chains, 6, 12)), 0);
    EXPECT_EQ(below(tube(Foundation::loops)), 0);
    EXPECT_EQ(below(tube(Foundation::loops, 14, 14.4)), 0);
    EXPECT_EQ(below(tube(Foundation::loops, 14, 14.6)), 14);
    EXPECT_EQ(below(tube(Foundation::loops_in_pairs)), 14);
    FitProblem told = cone();
    told.accepted_at = [](const std::vector<double>& places) { return std::vector<int>(places.size(), 9); };
    EXPECT_EQ(count_problem(told, {1, 1}, {1, 2}).accepted, (std::vector<int>{9, 9}));
}

/// Stitches in parts, and rounds a little higher or lower than one worked.
TEST(DraftInParts, IsAsLongAsTheScaledProfile) {
    const RoundsDraft draft = draft_in_parts(cone(), {0.5, 0.52}, 5);
    EXPECT_NEAR(draft.height_factor, 5.2 / 5, 1e-12);
    EXPECT_NEAR(draft.stitches[2], 18, 1e-9);
    EXPECT_EQ(draft.foundation, 0);
    EXPECT_NEAR(draft_in_parts(tube(Foundation::loops), {0.5, 1}, 10).foundation, 7, 1e-12);
    EXPECT_EQ(draft_in_parts(tube(Foundation::loops), {0.01, 1}, 10).foundation, 1);
    EXPECT_EQ(draft_in_parts(tube(Foundation::loops), {0.01, 1}, 10).stitches[4], 1);
    EXPECT_NEAR(draft_in_parts(cone(), {1, 0.001}, 1).height_factor, 0.25, 1e-12);
}

}  // namespace
}  // namespace roundwright
