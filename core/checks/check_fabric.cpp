#include <algorithm>

#include "core/checks/families.h"
#include "core/checks/flat_growth.h"

namespace roundwright {

namespace {

std::vector<Cure> cures_of(const CheckInput& input, RoundRun run) {
    std::vector<Cure> cures;
    const auto start = start_count_cure(input, run);
    const auto counts = start ? std::nullopt : flat_counts_cure(input, run);
    for (const auto& cure : {start, spread_cure(input, run), counts}) {
        if (cure) cures.push_back(*cure);
    }
    return cures;
}

/// A run of rounds that lie alike gets one check, at the round with the most length to spare.
void check_run(const CheckInput& input, RoundRun run, std::vector<Check>& checks) {
    const auto& lies = input.lies;
    const auto worst = std::max_element(
        lies.begin() + run.first, lies.begin() + run.last + 1,
        [](const RoundLie& a, const RoundLie& b) { return a.spare_length_mm < b.spare_length_mm; });
    const int round = static_cast<int>(worst - lies.begin());
    const int more = input.loops_left(round) - input.loops_below(round);
    Check check{CheckCode::gathers, Severity::warning, input.piece_index, round, {}, cures_of(input, run)};
    if (worst->lie == Lie::ruffles) {
        check.code = CheckCode::ruffles;
        check.arguments = ruffle_arguments(input, round);
    } else {
        check.arguments = {-more, Millimetres{worst->spare_length_mm}};
    }
    checks.push_back(check);
}

/// Whether the lie of a round is a matter of the fabric: a count that cannot be worked has a check of its
/// own, and so has a mark that is not kept.
bool counts_here(const CheckInput& input, int round) {
    const Lie lie = input.lies[static_cast<std::size_t>(round)].lie;
    const bool marked_flat = input.piece.rounds[static_cast<std::size_t>(round)].lies_flat;
    if (lie != Lie::gathers && lie != Lie::ruffles) return false;
    if (!count_is_workable(input, round) || !words_come_out(input, round)) return false;
    return lie == Lie::gathers || (lie == Lie::ruffles && !marked_flat);
}

}  // namespace

void check_fabric(const CheckInput& input, std::vector<Check>& checks) {
    const int rounds = input.rounds_with_lie();
    for (int first = 0; first < rounds; ++first) {
        if (!counts_here(input, first)) continue;
        const Lie lie = input.lies[static_cast<std::size_t>(first)].lie;
        int last = first;
        while (last + 1 < rounds && counts_here(input, last + 1) &&
               input.lies[static_cast<std::size_t>(last) + 1].lie == lie) {
            ++last;
        }
        check_run(input, {first, last}, checks);
        first = last;
    }
}

}  // namespace roundwright
