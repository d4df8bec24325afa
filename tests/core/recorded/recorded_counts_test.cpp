#include <cmath>
#include <gtest/gtest.h>

#include "core/reshape/choose_counts.h"
#include "core/reshape/count_windows.h"
#include "core/reshape/match_fabric.h"
#include "core/reshape/trim_counts.h"
#include "tests/core/recorded/numbers.h"
#include "tests/core/shape/shape_tables.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

/// Wanted counts of a swelling with a waist, in so many rounds.
std::vector<double> swelling(int rounds, double widest) {
    std::vector<double> wanted;
    for (int i = 1; i <= rounds; ++i) {
        const double t = 3.14159265358979 * i / (rounds + 1);
        wanted.push_back(widest * (std::sin(t) - 0.3 * std::sin(3 * t) * std::sin(3 * t)) + 2);
    }
    return wanted;
}

std::vector<CountProblem> problems() {
    std::vector<CountProblem> all;
    for (const int rounds : {1, 5, 12, 30})
        for (const double tidiness : {0.0, 0.3, 0.5, 0.8, 1.0}) {
            CountProblem problem;
            problem.wanted = swelling(rounds, 3.1 * rounds + 9);
            problem.tidiness = tidiness;
            all.push_back(problem);
            problem.start_count = 8;
            problem.loops_below = 12;
            problem.flat_growth = 7.2;
            problem.half_round = 1.8;
            all.push_back(problem);
            if (rounds < 5) continue;
            problem.kept = {9, 13, 17};
            problem.accepted.assign(static_cast<std::size_t>(rounds), 0);
            problem.accepted[3] = 19;
            problem.most_growth.assign(static_cast<std::size_t>(rounds), 4);
            problem.most_closing.assign(static_cast<std::size_t>(rounds), 5);
            all.push_back(problem);
            problem.start_count = 15;
            problem.kept = {40};
            problem.least = 7;
            problem.most_pairs = 50;
            all.push_back(problem);
        }
    return all;
}

TEST(RecordedCounts, AreChosenAsBefore) {
    RecordedText text;
    for (const CountProblem& problem : problems()) {
        const CountChoice choice = choose_counts(problem);
        text.line("chosen") << problem.wanted.size() << problem.tidiness << choice.is_least << choice.cost
                            << awkward_rounds(problem, choice.counts) << counts_cost(problem, choice.counts);
        text.line("  counts").each(choice.counts);
        text.line("  windows");
        const auto likely = likely_windows(problem);
        for (const Window& window : likely) text << window.low << window.high;
        text.line("  within");
        for (const Window& window : windows_within(problem, 20, likely)) text << window.low << window.high;
        std::vector<int> other = choice.counts;
        for (std::size_t i = problem.kept.size(); i < other.size(); i += 2) other[i] += 2;
        text.line("  others_cost") << counts_cost(problem, other) << awkward_rounds(problem, other);
    }
    testing::expect_as_recorded("chosen_counts.txt", text);
}

TEST(RecordedCounts, AreTrimmedAsBefore) {
    RecordedText text;
    for (const CountProblem& problem : problems()) {
        if (problem.wanted.size() < 5) continue;
        const std::vector<int> counts = choose_counts(problem).counts;
        SizeSlope slope;
        for (std::size_t i = 0; i < counts.size(); ++i) {
            slope.width_mm.push_back(0.4 + 0.1 * std::sin(static_cast<double>(i)));
            slope.height_mm.push_back(0.05 * std::cos(static_cast<double>(i)) - 0.02);
        }
        for (const Size& missing : {Size{3, 0}, Size{-4, 1}, Size{0, -2}})
            text.line("trimmed").each(trimmed_counts(problem, counts, slope, missing, 1.2, 0.3));
    }
    testing::expect_as_recorded("trimmed_counts.txt", text);
}

constexpr int points = 17;

Silhouette vase() {
    Silhouette outline;
    for (int i = 0; i < points; ++i)
        outline.points.emplace_back(20 + 6 * std::sin(0.5 * i), 4.5 * i + 0.1 * i * i);
    return outline;
}

/// A made-up fabric: loops as long as their stitches ask, a little wider in the middle, rounds as high as
/// asked.
std::optional<TriedFabric> bulging(const FabricAlong& fabric) {
    TriedFabric tried{vase(), {}};
    double z = 0;
    for (int i = 0; i < points; ++i) {
        const auto at = static_cast<std::size_t>(i);
        Vec2& point = tried.made.points[at];
        point.x() *= (1.1 + 0.1 * std::sin(0.2 * i)) / (1 + fabric.course_stretch[at]);
        if (i > 0) z += 4.4 * std::sqrt(5 / fabric.round_mm[at - 1]);
        point.y() = z;
        tried.part.push_back(static_cast<double>(i) / (points - 1));
    }
    return tried;
}

TEST(RecordedCounts, FabricIsMatchedAsBefore) {
    RecordedText text;
    const FabricAlong first{std::vector<double>(points, 0.01), std::vector<double>(points - 1, 5.0)};
    for (const auto& [from, to] :
         std::vector<std::pair<int, int>>{{0, 16}, {0, 5}, {4, 12}, {11, 16}, {7, 8}}) {
        std::vector<bool> moved(points - 1, false);
        for (int i = from; i < to; ++i) moved[static_cast<std::size_t>(i)] = true;
        const FabricAlong made = matched_fabric(vase(), first, moved, 5, bulging);
        text.line("course").each(made.course_stretch);
        text.line("round").each(made.round_mm);
    }
    testing::expect_as_recorded("matched_fabric.txt", text);
}

/// Hard pieces: counts that jump, tall rounds beside low ones, all ends, limp and blown up.
ShapeProblem hard_piece(Numbers& numbers) {
    const int rounds = numbers.next(2, 40);
    std::vector<int> counts{numbers.next(3, 12)};
    while (static_cast<int>(counts.size()) < rounds) {
        const int below = counts.back();
        counts.push_back(std::min(400, std::max(3, numbers.next((below + 1) / 2, 2 * below))));
    }
    constexpr double stretches[] = {0, 0.01, 0.04, 0.2};
    const double stretch = stretches[numbers.next(0, 3)];
    ShapeProblem problem =
        piece_of(counts, stretch, numbers.next(0, 1) == 0 ? MeridianEnd::open : MeridianEnd::drawn_closed);
    if (numbers.next(0, 2) == 0) {
        problem.first = numbers.next(0, 1) == 0 ? MeridianEnd::open : MeridianEnd::drawn_closed;
        problem.rest_loop_mm.front() = 5.0 * numbers.next(3, 30);
    }
    for (double& height : problem.rest_height_mm) height = 0.5 * numbers.next(3, 20);
    return problem;
}

TEST(RecordedShapes, HardPiecesComeOutAsBefore) {
    RecordedText text;
    Numbers numbers(20261128);
    for (int i = 0; i < 120; ++i) {
        const Shape shape = solve_shape(hard_piece(numbers));
        text.line("piece") << i << static_cast<int>(shape.termination) << shape.iterations << shape.width_mm
                           << shape.height_mm << shape.volume_mm3 << shape.area_stretch << shape.energy;
    }
    testing::expect_as_recorded("hard_shapes.txt", text, {1e-5, 1e-4});
}

}  // namespace
}  // namespace roundwright::test
