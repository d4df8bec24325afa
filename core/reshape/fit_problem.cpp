#include "core/reshape/fit_problem.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/limits.h"
#include "core/shape/fabric_limits.h"

namespace roundwright {
namespace {

constexpr int six_in_the_ring = 6;

double whole(double value) { return std::floor(value + 0.5); }

// A chain that round 1 goes straight on from has the loops of round 1.
bool goes_straight_on(const StitchProfile& profile) {
    return std::abs(profile.stitches_at(1) - profile.stitches.front()) < 0.5;
}

int whole_foundation(const FitProblem& problem, const ProfileScale& scale) {
    const double loops = scale.around * problem.profile.stitches.front();
    if (problem.foundation == Foundation::loops_in_pairs) return 2 * std::max(1, int(whole(loops / 2)));
    return std::max(3, int(whole(loops)));
}

int foundation_loops(const FitProblem& problem, const ProfileScale& scale, const CountProblem& counts,
                     int first_round) {
    if (problem.foundation == Foundation::none) return 0;
    if (!problem.kept.empty()) return problem.kept_foundation;
    if (problem.foundation == Foundation::ring_of_chains) return whole_foundation(problem, scale);
    return counts.loops_below > 0 ? counts.loops_below : first_round;
}

// Loops that limit round 1; 0: none, or they follow it.
int loops_below_first(const FitProblem& problem, const ProfileScale& scale) {
    if (problem.foundation == Foundation::none || problem.foundation == Foundation::ring_of_chains) return 0;
    if (!problem.kept.empty()) return problem.kept_foundation;
    if (problem.foundation == Foundation::loops && goes_straight_on(problem.profile)) return 0;
    return whole_foundation(problem, scale);
}

}  // namespace

RoundsDraft RoundsCut::draft() const {
    RoundsDraft draft;
    draft.stitches.assign(counts.begin(), counts.end());
    draft.ends_at = ends_at;
    draft.foundation = foundation;
    return draft;
}

int usual_start_count(const Gauge& gauge) {
    const double most = (1 + ruffles_above_share) * flat_growth(gauge);
    // Below this share of flat growth it cups: it grows by the cosine of the angle that it rises at.
    const double least = std::sqrt(1 - flat_up_to_rise * flat_up_to_rise) * flat_growth(gauge);
    return six_in_the_ring <= most && six_in_the_ring >= least ? six_in_the_ring
                                                               : std::max(3, static_cast<int>(most));
}

double flat_growth(const Gauge& gauge) {
    return 2 * std::numbers::pi * gauge.round_height_mm / gauge.stitch_width_mm;
}

std::vector<double> as_parts(const std::vector<double>& places, const StitchProfile& profile) {
    std::vector<double> parts;
    for (double place : places) parts.push_back(place / profile.rounds());
    return parts;
}

RoundsDraft draft_in_parts(const FitProblem& problem, const ProfileScale& scale, int rounds) {
    const auto places = places_of_rounds(problem.profile, scale, problem.fan_rounds, rounds, 0);
    RoundsDraft draft;
    draft.stitches = wanted_stitches(problem.profile, scale, places, flat_growth(problem.gauge));
    for (double& count : draft.stitches) count = std::max(count, 1.0);
    if (problem.foundation != Foundation::none)
        draft.foundation = std::max(scale.around * problem.profile.stitches.front(), 1.0);
    draft.ends_at = as_parts(places, problem.profile);
    draft.height_factor = std::max(rounds_wanted(problem.profile, scale, problem.fan_rounds), 0.25) / rounds;
    return draft;
}

CountProblem count_problem(const FitProblem& problem, const ProfileScale& scale,
                           const std::vector<double>& places) {
    CountProblem counts;
    counts.flat_growth = flat_growth(problem.gauge);
    counts.half_round = counts.flat_growth / 4;
    counts.wanted = wanted_stitches(problem.profile, scale, places, counts.flat_growth);
    counts.kept = problem.kept;
    if (problem.accepted_at) counts.accepted = problem.accepted_at(places);
    counts.loops_below = loops_below_first(problem, scale);
    counts.start_count = problem.start_count;
    counts.tidiness = problem.tidiness;
    return counts;
}

RoundsCut cut_profile(const FitProblem& problem, const ProfileScale& scale, int rounds, double tidiness) {
    const auto places =
        places_of_rounds(problem.profile, scale, problem.fan_rounds, rounds, int(problem.kept.size()));
    RoundsCut cut;
    cut.scale = scale;
    cut.problem = count_problem(problem, scale, places);
    cut.tidiness = tidiness;
    cut.ends_at = as_parts(places, problem.profile);
    choose_counts_of(problem, cut);
    return cut;
}

void choose_counts_of(const FitProblem& problem, RoundsCut& cut) {
    cut.problem.tidiness = cut.tidiness;
    cut.counts = choose_counts(cut.problem).counts;
    cut.problem.tidiness = problem.tidiness;
    cut.foundation = foundation_loops(problem, cut.scale, cut.problem, cut.counts.front());
}

std::vector<int> nearest_numbers_of_rounds(const FitProblem& problem, const ProfileScale& scale) {
    const double wanted = rounds_wanted(problem.profile, scale, problem.fan_rounds);
    const int least = std::max<int>(1, static_cast<int>(problem.kept.size()));
    const int n = static_cast<int>(whole(std::clamp(wanted, 1.0, double(max_rounds_per_piece))));
    const int other = wanted > n ? n + 1 : n - 1;
    std::vector<int> numbers;
    for (int k : {n, other, 2 * n - other})
        if (k >= least && k <= int(max_rounds_per_piece)) numbers.push_back(k);
    if (numbers.empty()) numbers.push_back(least);
    return numbers;
}

}  // namespace roundwright
