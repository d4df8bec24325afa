#include "core/reshape/count_cost.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/language/round/even_spacing.h"
#include "core/rounds/workable_counts.h"

namespace roundwright {
namespace {

constexpr double repeated_round = 0.2;  // stitch in every stitch: no count is awkward to work
constexpr double free_jump = 0.5;       // of flat growth: six and none in turn for three a round
constexpr int largest_unit = 12;        // a start count above this gives no useful grid of tidy counts
constexpr double over_limit = 1e8;      // a stitch: more than any likeness or tidiness

double tidiness_weight(double tidiness) {
    const double t = std::clamp(tidiness, 0.0, 1.0);
    return t < 1 ? std::min(3 * t / (1 - t), 1e6) : 1e6;
}

double squared(double value) { return value * value; }

}  // namespace

CountCost::CountCost(const CountProblem& problem)
    : problem_(problem), unit_(tidy_unit(problem)), weight_(tidiness_weight(problem.tidiness)) {}

double CountCost::wanted(std::size_t round) const {
    return std::max(problem_.wanted[round], double(problem_.least));
}

double CountCost::tolerance(std::size_t round) const {
    return std::max(problem_.half_round, 0.02 * wanted(round));
}

double CountCost::of_count(std::size_t round, int count) const {
    return squared((count - wanted(round)) / tolerance(round));
}

double CountCost::of_step(std::size_t round, int below, int count) const {
    const double awkward = weight_ * awkwardness(round, below, count) + of_limits(round, below, count);
    return below <= 0 ? awkward : of_excess(round, below, count) + of_jump(round, below, count) + awkward;
}

double CountCost::awkwardness(std::size_t round, int below, int count) const {
    if (below <= 0) return awkwardness_of(round, count);
    const bool uneven = !accepts(round, count) && !is_repeatable(below, count);
    return awkwardness_of(round, count) * (count == below ? repeated_round : 1) + (uneven ? 0.5 : 0);
}

double CountCost::of_limits(std::size_t round, int below, int count) const {
    double over = 0;
    if (!problem_.most_growth.empty()) over += std::max(0.0, count - below - problem_.most_growth[round]);
    if (!problem_.most_closing.empty()) over += std::max(0.0, below - count - problem_.most_closing[round]);
    return over_limit * over;
}

bool CountCost::accepts(std::size_t round, int count) const {
    return round < problem_.accepted.size() && problem_.accepted[round] == count;
}

double CountCost::awkwardness_of(std::size_t round, int count) const {
    if (count % unit_ == 0 || accepts(round, count)) return 0;
    return 2 * count % unit_ == 0 ? 0.5 : 1;
}

double CountCost::wanted_step(std::size_t round) const {
    return problem_.wanted[round] - (round > 0 ? problem_.wanted[round - 1] : problem_.loops_below);
}

double CountCost::of_excess(std::size_t round, int below, int count) const {
    const double allowed = std::max(problem_.flat_growth, std::abs(wanted_step(round)));
    return squared(std::max(0.0, std::abs(count - below) - allowed - 1) / tolerance(round));
}

// Growth and closing that the wanted counts do not have, one after the other, make an edge.
double CountCost::of_jump(std::size_t round, int below, int count) const {
    const double off = std::abs(count - below - wanted_step(round)) / problem_.flat_growth;
    return squared(std::max(0.0, off - free_jump) / (free_jump / 2));
}

int tidy_unit(const CountProblem& problem) {
    return problem.start_count <= largest_unit ? std::max(problem.start_count, 1) : 1;
}

double counts_cost(const CountProblem& problem, const std::vector<int>& counts) {
    if (counts.size() != problem.wanted.size()) return std::numeric_limits<double>::infinity();
    const CountCost cost(problem);
    double sum = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        if (i < problem.kept.size()) {
            if (counts[i] != problem.kept[i]) return std::numeric_limits<double>::infinity();
            continue;
        }
        const int below = i > 0 ? counts[i - 1] : problem.loops_below;
        if (counts[i] < problem.least || !can_be_worked(below, counts[i]))
            return std::numeric_limits<double>::infinity();
        sum += cost.of_step(i, below, counts[i]) + cost.of_count(i, counts[i]);
    }
    return sum;
}

double awkward_rounds(const CountProblem& problem, const std::vector<int>& counts) {
    const CountCost cost(problem);
    double sum = 0;
    for (std::size_t i = problem.kept.size(); i < counts.size(); ++i)
        sum += cost.awkwardness(i, i > 0 ? counts[i - 1] : problem.loops_below, counts[i]);
    return sum;
}

}  // namespace roundwright
