#include "core/reshape/choose_counts.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>
#include <random>

#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using std::numbers::pi;

// Every workable sequence of counts up to `most`, tried one by one.
double least_cost(const CountProblem& problem, int most, std::vector<int>& counts) {
    if (counts.size() == problem.wanted.size()) return counts_cost(problem, counts);
    double least = std::numeric_limits<double>::infinity();
    for (int n = problem.least; n <= most; ++n) {
        counts.push_back(n);
        least = std::min(least, least_cost(problem, most, counts));
        counts.pop_back();
    }
    return least;
}

CountProblem random_problem(std::mt19937& random) {
    std::uniform_real_distribution<double> wanted(3, 16);
    std::uniform_int_distribution<int> few(0, 3);
    CountProblem problem;
    for (int i = 0; i < 4; ++i) problem.wanted.push_back(wanted(random));
    problem.tidiness = 0.25 * few(random);
    problem.start_count = 3 + few(random);
    problem.flat_growth = 4 + few(random);
    problem.loops_below = few(random) == 0 ? 8 : 0;
    if (few(random) == 0) problem.kept = {8, 3 + 4 * few(random)};
    if (few(random) == 0) problem.accepted = {5, 7, 11, 0};
    return problem;
}

TEST(ChooseCounts, CostsAsLittleAsTheBestOfAllSequences) {
    std::mt19937 random(11);
    for (int i = 0; i < testing::random_cases(60); ++i) {
        CountProblem problem = random_problem(random);
        if (problem.kept.size() == 2) problem.kept[1] = std::clamp(problem.kept[1], 4, 16);
        const CountChoice choice = choose_counts(problem);
        std::vector<int> counts;
        EXPECT_NEAR(choice.cost, least_cost(problem, 22, counts), 1e-9);
        EXPECT_NEAR(choice.cost, counts_cost(problem, choice.counts), 1e-9);
        EXPECT_TRUE(choice.is_least);
    }
}

TEST(ChooseCounts, NeverMoreThanDoublesOrHalves) {
    std::mt19937 random(12);
    std::uniform_real_distribution<double> wanted(0, 400);
    for (int i = 0; i < testing::random_cases(2'000); ++i) {
        CountProblem problem;
        for (int r = 0; r < 12; ++r) problem.wanted.push_back(wanted(random));
        problem.tidiness = i % 5 / 4.0;
        const CountChoice choice = choose_counts(problem);
        EXPECT_TRUE(std::isfinite(counts_cost(problem, choice.counts)));
    }
}

// Handbook circle: a parallel of a sphere of radius R at arc length s from the pole is 2 pi R sin(s/R) long.
TEST(ChooseCounts, WithoutTidinessTakesTheNearestStitchOnASphere) {
    CountProblem problem;
    problem.tidiness = 0;
    const double radius = 11.37;  // stitches and rounds of the same size
    for (int i = 1; i < pi * radius; ++i) problem.wanted.push_back(2 * pi * radius * std::sin(i / radius));
    const auto counts = choose_counts(problem).counts;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        auto nearer = counts;
        nearer[i] += problem.wanted[i] > counts[i] ? 1 : -1;
        EXPECT_TRUE(std::abs(counts[i] - problem.wanted[i]) <= 0.5 ||
                    std::isinf(counts_cost(problem, nearer)))
            << "round " << i + 1 << ": " << counts[i] << " for " << problem.wanted[i];
    }
}

TEST(ChooseCounts, FullyTidyCountsAreMultiplesOfTheStart) {
    CountProblem problem;
    problem.tidiness = 1;
    const double radius = 11.37;
    for (int i = 1; i < pi * radius - 1; ++i)
        problem.wanted.push_back(2 * pi * radius * std::sin(i / radius));
    for (int count : choose_counts(problem).counts) EXPECT_EQ(count % 6, 0) << count;
}

TEST(ChooseCounts, AnAcceptedAwkwardCountStays) {
    CountProblem problem;
    problem.wanted = {6, 12, 17, 17, 12};
    problem.accepted = {6, 12, 17, 17, 12};
    EXPECT_EQ(choose_counts(problem).counts, (std::vector<int>{6, 12, 17, 17, 12}));
    problem.accepted.clear();
    EXPECT_EQ(choose_counts(problem).counts, (std::vector<int>{6, 12, 18, 18, 12}));
}

// Forty-eight, and hardly more for two rounds: a single round of 54, tidy as it is, would stand out as a rim.
TEST(ChooseCounts, ASmoothSwellingGetsNoRim) {
    CountProblem problem;
    problem.wanted = {48, 48, 50.6, 51.6, 50.6, 48, 48};
    problem.tidiness = 0.8;
    const auto counts = choose_counts(problem).counts;
    for (std::size_t i = 1; i + 1 < counts.size(); ++i)
        EXPECT_LT(std::abs(counts[i + 1] - 2 * counts[i] + counts[i - 1]), 1.5 * 2 * pi) << "round " << i + 1;
}

TEST(ChooseCounts, FewerStitchesThanCanBeWorkedCostInfinitely) {
    CountProblem problem;
    problem.wanted = {6, 14};
    EXPECT_TRUE(std::isinf(counts_cost(problem, {6, 13})));
    EXPECT_FALSE(std::isinf(counts_cost(problem, {6, 12})));
    problem.wanted = {13, 6};
    EXPECT_TRUE(std::isinf(counts_cost(problem, {13, 6})));
    EXPECT_TRUE(std::isinf(counts_cost(problem, {6})));
}

TEST(ChooseCounts, NothingWantedGivesNothing) { EXPECT_TRUE(choose_counts({}).counts.empty()); }

}  // namespace
}  // namespace roundwright
