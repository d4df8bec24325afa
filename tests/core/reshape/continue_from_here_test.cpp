#include "core/reshape/continue_from_here.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <random>

#include "core/reshape/count_cost.h"
#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::even_counts;
using testing::piece_of;

const Gauge five_mm{5, 5, 0, 0};

Target width(double mm) {
    Target target;
    target.width_mm = mm;
    return target;
}

constexpr int most_stitches = 36;
constexpr std::size_t most_more_rounds = 9;

/// Every workable way on of so many rounds in all, one by one, in search of one that costs less than `bound`.
/// Nothing is left out but what costs more already up to some round: no later one costs less than nothing.
class Enumeration {
  public:
    Enumeration(const FitProblem& problem, std::size_t rounds, double bound)
        : problem_(problem),
          whole_(count_problem(problem, problem.scale,
                               places_of_rounds(problem.profile, problem.scale, problem.fan_rounds,
                                                int(rounds), int(problem.kept.size())))),
          cost_(whole_),
          least_(bound) {}

    double least() {
        std::vector<int> counts = problem_.kept;
        go_on(counts, 0);
        return least_;
    }

  private:
    void go_on(std::vector<int>& counts, double so_far) {
        const std::size_t round = counts.size();
        if (round == whole_.wanted.size()) {
            least_ = std::min(least_, continuation_cost(problem_, counts));
            return;
        }
        const int below = counts.back();
        for (int n = std::max(3, (below + 1) / 2); n <= std::min(most_stitches, 2 * below); ++n) {
            const double cost = so_far + cost_.of_step(round, below, n) + cost_.of_count(round, n);
            if (cost > least_) continue;
            counts.push_back(n);
            go_on(counts, cost);
            counts.pop_back();
        }
    }

    const FitProblem& problem_;
    CountProblem whole_;
    CountCost cost_;
    double least_;
};

double least_cost(const FitProblem& problem, double bound) {
    for (std::size_t more = 0; more <= most_more_rounds; ++more)
        bound = Enumeration(problem, problem.kept.size() + more, bound).least();
    return bound;
}

// Balls of a few rounds, a part of them worked, wanted smaller, larger, wider or taller, at every tidiness.
TEST(BestContinuation, EqualsExhaustiveSearch) {
    std::mt19937 random(51);
    std::uniform_real_distribution<double> scale(0.5, 1.3);
    std::uniform_int_distribution<int> keep(1, 5);
    int longest = 0;
    for (int i = 0; i < testing::random_cases(600); ++i) {
        const PieceForm ball = piece_form(ball_piece(2 + i % 3), five_mm);
        Target target;
        target.width_mm = scale(random) * ball.shape.width_mm;
        if (i % 3 == 0) target.height_mm = scale(random) * ball.shape.height_mm;
        ReshapeTask task = reshape_task(ball, target, {i % 5 / 5.0, {}});
        ASSERT_EQ(task.code, ReshapeCode::met);
        const auto counts = even_counts(ball.piece);
        task.problem.kept.assign(counts.begin(), counts.begin() + keep(random));
        const Continuation best = best_continuation(task.problem);
        const auto more = best.counts.size() - task.problem.kept.size();
        if (more > most_more_rounds) continue;
        longest = std::max(longest, int(more));
        EXPECT_NEAR(best.cost, least_cost(task.problem, best.cost), 1e-9) << "case " << i;
        EXPECT_NEAR(best.cost, continuation_cost(task.problem, best.counts), 1e-9);
    }
    EXPECT_EQ(longest, int(most_more_rounds));
}

TEST(ContinueFromHere, WithoutRippingNothingIsUndone) {
    std::mt19937 random(52);
    for (int i = 0; i < testing::random_cases(60); ++i) {
        const PieceForm form = piece_form(testing::random_piece(random), five_mm);
        const int rounds = static_cast<int>(form.piece.rounds.size());
        const WorkedSoFar worked{std::uniform_int_distribution<int>(1, rounds)(random), 2, {}};
        Target target;
        target.scale = std::uniform_real_distribution<double>(0.6, 1.6)(random);
        const auto ways = continue_from_here(form, target, worked, 3);
        if (ways.empty()) continue;
        for (std::size_t ripped = 0; ripped < ways.size(); ++ripped) {
            EXPECT_LE(ways[ripped].back.undo_rounds, static_cast<int>(ripped));
            EXPECT_TRUE(ways[ripped].made.form.graph.problems.empty());
        }
    }
}

TEST(ContinueFromHere, RippingMoreComesNearer) {
    const PieceForm ball = piece_form(ball_piece(6), five_mm);
    const auto ways = continue_from_here(ball, width(42), {9, 0, {}}, 8);
    ASSERT_GE(ways.size(), 3u);
    EXPECT_GT(ways.front().made.reached().width_mm, 50);  // what is on the hook is that wide already
    EXPECT_GT(ways.front().shape_error_mm, 2);
    EXPECT_EQ(ways.back().shape_error_mm, 0);  // from there on it is the wanted piece itself
    EXPECT_EQ(ways.back().made.code, ReshapeCode::met);
    for (std::size_t i = 1; i < ways.size(); ++i)
        EXPECT_LE(ways[i].shape_error_mm, ways[i - 1].shape_error_mm + 1) << i;
}

TEST(ContinueFromHere, ALargerPieceGrowsOnFlatFromWhatThereIs) {
    const PieceForm ball = piece_form(ball_piece(6), five_mm);
    const auto ways = continue_from_here(ball, width(78), {7, 0, {}}, 0);
    ASSERT_EQ(ways.size(), 1u);
    const auto counts = even_counts(ways.front().made.form.piece);
    EXPECT_EQ(std::vector<int>(counts.begin(), counts.begin() + 7),
              (std::vector<int>{6, 12, 18, 24, 30, 36, 36}));
    EXPECT_GT(*std::max_element(counts.begin(), counts.end()), 42);
    for (std::size_t i = 7; i < counts.size(); ++i) EXPECT_LE(counts[i] - counts[i - 1], 9);
}

TEST(ContinueFromHere, AllOfATargetThatCanBeWorkedOnFrom) {
    const PieceForm ball = piece_form(ball_piece(6), five_mm);
    const auto ways = continue_from_here(ball, width(78), {5, 0, {}}, 3);
    ASSERT_EQ(ways.size(), 1u);
    EXPECT_EQ(ways.front().shape_error_mm, 0);
    EXPECT_EQ(ways.front().back.undo_rounds, 0);
}

TEST(ContinueFromHere, KeptRoundsKeepTheirWords) {
    Piece piece = ball_piece(5);
    piece.rounds[1].working = AsWritten{"inc around"};
    piece.rounds[1].note = "mark the first stitch";
    PieceForm form = piece_form(piece, five_mm);
    const auto ways = continue_from_here(form, width(35), {6, 0, {}}, 0);
    ASSERT_EQ(ways.size(), 1u);
    EXPECT_EQ(ways.front().made.form.piece.rounds[1], piece.rounds[1]);
}

TEST(ContinueFromHere, AnotherYarnHasNoWayOn) {
    const PieceForm ball = piece_form(ball_piece(4), five_mm);
    Target target;
    target.gauge = Gauge{4, 4, 0, 0};
    EXPECT_TRUE(continue_from_here(ball, target, {3, 0, {}}, 3).empty());
}

}  // namespace
}  // namespace roundwright
