#include "core/checks/flat_growth.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/shape/fabric_limits.h"

namespace roundwright {

namespace {

/// A round ruffles from about this share of flat growth on.
constexpr double most_growth = 1 + ruffles_above_share;
/// Below this share it cups: it grows by the cosine of the angle that it rises at.
const double least_growth = std::sqrt(1 - flat_up_to_rise * flat_up_to_rise);

/// Stitches that a disc is usually started with, which are those it grows by: common practice.
std::optional<int> usual_start(StitchKind kind) {
    switch (kind) {
        case StitchKind::single_crochet:
            return 6;
        case StitchKind::half_double_crochet:
            return 8;
        case StitchKind::double_crochet:
            return 12;
        default:
            return std::nullopt;
    }
}

/// The usual start where it lies flat at this gauge, else as many stitches as lie flat.
int flat_start(const CheckInput& input, int round, StitchKind kind) {
    const double flat = input.lies[static_cast<std::size_t>(round)].flat_increase;
    const auto usual = usual_start(kind);
    const bool fits = usual && *usual >= least_growth * flat && *usual <= most_growth * flat;
    return fits ? *usual : flat_step(input, round);
}

/// A piece that grows from a ring by as many stitches a round as it started with.
struct GrowthFromStart {
    int start = 0;   ///< 0: the piece is worked otherwise
    int rounds = 0;  ///< that grow so
};

/// Every later round is to be worked evenly to a multiple of the start.
GrowthFromStart growth_from_start(const CheckInput& input) {
    GrowthFromStart growth;
    for (const Round& round : input.piece.rounds) {
        const auto* even = std::get_if<WorkedEvenly>(&round.working);
        if (even == nullptr || even->stitches < 1) return {};
        if (growth.start == 0) growth.start = even->stitches;
        if (even->stitches % growth.start != 0) return {};
        const auto i = static_cast<int>(&round - input.piece.rounds.data());
        if (i == growth.rounds && even->stitches == growth.start * (i + 1)) ++growth.rounds;
    }
    return growth;
}

}  // namespace

int flat_step(const CheckInput& input, int round) {
    const double flat = input.lies[static_cast<std::size_t>(round)].flat_increase;
    return std::isfinite(flat) ? std::max(1, static_cast<int>(std::min(most_growth * flat, 1e6))) : 1;
}

std::optional<Cure> spread_cure(const CheckInput& input, RoundRun run) {
    const int below = input.loops_below(run.first);
    const int count = input.loops_left(run.last);
    const int step = flat_step(input, run.last);
    const int rounds_now = run.last - run.first + 1;
    const int rounds_needed = (std::abs(count - below) + step - 1) / step;
    if (rounds_needed <= rounds_now) return std::nullopt;
    const Round& like = input.piece.rounds[static_cast<std::size_t>(run.last)];
    return Cure{count > below ? CureKind::spread_increases : CureKind::spread_decreases,
                in_steps(like, below, count, rounds_needed), run.first, rounds_now};
}

std::optional<Cure> start_count_cure(const CheckInput& input, RoundRun run) {
    const auto [start, rounds] = growth_from_start(input);
    if (input.loops_below(0) > 0 || rounds < 2 || run.first >= rounds) return std::nullopt;
    const auto kind = std::get<WorkedEvenly>(input.piece.rounds.front().working).kind;
    const int flat = flat_start(input, std::min(rounds - 1, run.last), kind);
    if (flat == start) return std::nullopt;
    Cure cure{CureKind::change_start_count, {}, 0, input.rounds()};
    for (const Round& round : input.piece.rounds)
        cure.rounds.push_back(
            with_count(round, std::get<WorkedEvenly>(round.working).stitches / start * flat));
    return cure;
}

std::optional<Cure> flat_counts_cure(const CheckInput& input, RoundRun run) {
    const bool from_ring = run.first <= 1 && input.loops_below(0) == 0;
    const int first = from_ring ? 0 : run.first;
    const int below = input.loops_below(first);
    const int grows = input.loops_left(run.last) >= below ? 1 : -1;
    Cure cure{
        from_ring ? CureKind::change_start_count : CureKind::set_count, {}, first, run.last - first + 1};
    bool changes = false;
    int count = below;
    for (int i = first; i <= run.last; ++i) {
        count = std::max(1, count + grows * flat_step(input, i));
        changes = changes || count != input.loops_left(i);
        cure.rounds.push_back(with_count(input.piece.rounds[static_cast<std::size_t>(i)], count));
    }
    return changes ? std::optional<Cure>(cure) : std::nullopt;
}

}  // namespace roundwright
