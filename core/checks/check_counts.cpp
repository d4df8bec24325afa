#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/checks/families.h"

namespace roundwright {

namespace {

constexpr int most_rounds_put_in = 3;

/// Rounds from `below` to `count` that each grow to at most double, or shrink to at least half, of the one
/// below: as few as will do, each growing by the same ratio. Rounding up keeps both bounds.
std::vector<Round> workable_steps(const Round& like, int below, int count) {
    const double ratio = static_cast<double>(count) / below;
    const int rounds = static_cast<int>(std::ceil(std::abs(std::log2(ratio)) - 1e-9));
    std::vector<Round> steps;
    for (int i = 1; i < rounds; ++i) {
        const double stitches = below * std::pow(ratio, static_cast<double>(i) / rounds);
        steps.push_back(with_count(like, static_cast<int>(std::ceil(stitches - 1e-9))));
    }
    steps.push_back(with_count(like, count));
    return steps;
}

void check_count(const CheckInput& input, int index, std::vector<Check>& checks) {
    if (count_is_workable(input, index)) return;
    const Round& round = input.piece.rounds[static_cast<std::size_t>(index)];
    const CountRange range = workable_counts(input, index).value();
    const int below = input.loops_below(index);
    const int stitches = std::get<WorkedEvenly>(round.working).stitches;
    const bool increases = stitches > range.most;
    const int nearest = increases ? range.most : range.least;
    Check check{
        increases ? CheckCode::too_many_increases : CheckCode::too_many_decreases,
        Severity::error,
        input.piece_index,
        index,
        {stitches, below, nearest, Millimetres{std::abs(stitches - nearest) * input.stitch_width_mm()}},
        {{CureKind::set_count, {with_count(round, nearest)}, index, 1}}};
    const std::vector<Round> steps = workable_steps(round, below, stitches);
    if (steps.size() <= most_rounds_put_in + 1) {
        check.cures.push_back(
            {increases ? CureKind::spread_increases : CureKind::spread_decreases, steps, index, 1});
    }
    checks.push_back(check);
}

}  // namespace

void check_counts(const CheckInput& input, std::vector<Check>& checks) {
    for (int i = 0; i < std::min(input.rounds(), input.graphed_rounds()); ++i) check_count(input, i, checks);
}

}  // namespace roundwright
