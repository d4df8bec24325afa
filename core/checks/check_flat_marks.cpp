#include <algorithm>
#include <cmath>

#include "core/checks/families.h"
#include "core/checks/flat_growth.h"
#include "core/shape/fabric_limits.h"

namespace roundwright {

namespace {

std::optional<CheckCode> broken_promise(const CheckInput& input, int round) {
    if (!input.piece.rounds[static_cast<std::size_t>(round)].lies_flat) return std::nullopt;
    const RoundLie& lie = input.lies[static_cast<std::size_t>(round)];
    if (lie.lie == Lie::lies_flat) return std::nullopt;
    if (lie.lie == Lie::ruffles) return CheckCode::ruffles_though_flat;
    const double height_mm = input.problem.rest_height_mm[static_cast<std::size_t>(round)];
    // A round that does not grow may rise by the same share of its height as one that does.
    const bool rises = lie.lie == Lie::cups || std::abs(lie.rise_mm) > flat_up_to_rise * height_mm;
    return rises ? std::optional(CheckCode::cups_though_flat) : std::nullopt;
}

double how_bad(const CheckInput& input, int round, CheckCode code) {
    const RoundLie& lie = input.lies[static_cast<std::size_t>(round)];
    return code == CheckCode::ruffles_though_flat ? lie.spare_length_mm : std::abs(lie.rise_mm);
}

/// The marks taken off.
Cure without_marks(const CheckInput& input, RoundRun run) {
    Cure cure{CureKind::remove_flat_mark,
              {input.piece.rounds.begin() + run.first, input.piece.rounds.begin() + run.last + 1},
              run.first,
              run.last - run.first + 1};
    for (Round& round : cure.rounds) round.lies_flat = false;
    return cure;
}

std::vector<Cure> cures_of(const CheckInput& input, RoundRun run, CheckCode code) {
    std::vector<Cure> cures;
    const auto start = start_count_cure(input, run);
    if (const auto counts = start ? start : flat_counts_cure(input, run)) cures.push_back(*counts);
    if (code == CheckCode::ruffles_though_flat) {
        if (const auto spread = spread_cure(input, run)) cures.push_back(*spread);
    }
    cures.push_back(without_marks(input, run));
    return cures;
}

void check_run(const CheckInput& input, RoundRun run, CheckCode code, std::vector<Check>& checks) {
    int worst = run.first;
    for (int round = run.first; round <= run.last; ++round) {
        if (how_bad(input, round, code) > how_bad(input, worst, code)) worst = round;
    }
    const RoundLie& lie = input.lies[static_cast<std::size_t>(worst)];
    const int more = input.loops_left(worst) - input.loops_below(worst);
    std::vector<Argument> arguments = ruffle_arguments(input, worst);
    if (code == CheckCode::cups_though_flat) {
        arguments = {Millimetres{std::abs(lie.rise_mm)}, more, lie.flat_increase};
    }
    checks.push_back(
        {code, Severity::warning, input.piece_index, worst, arguments, cures_of(input, run, code)});
}

}  // namespace

void check_flat_marks(const CheckInput& input, std::vector<Check>& checks) {
    const int rounds = input.rounds_with_lie();
    for (int first = 0; first < rounds; ++first) {
        const auto code = broken_promise(input, first);
        if (!code) continue;
        int last = first;
        while (last + 1 < rounds && broken_promise(input, last + 1) == code) ++last;
        check_run(input, {first, last}, *code, checks);
        first = last;
    }
}

}  // namespace roundwright
