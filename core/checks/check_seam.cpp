#include "core/checks/families.h"

namespace roundwright {

namespace {

/// The last round with a stitch more, or, where it grew no further than that, fewer.
std::vector<Cure> even_count(const CheckInput& input, int round) {
    const Round& last = input.piece.rounds[static_cast<std::size_t>(round)];
    if (!std::holds_alternative<WorkedEvenly>(last.working)) return {};
    const auto range = workable_counts(input, round);
    const int stitches = input.loops_left(round);
    const bool closes = round > 0 && stitches < input.loops_below(round);
    const int even = closes ? stitches - 1 : stitches + 1;
    if (even < 2 || (range && !range->holds(even))) return {};
    return {{CureKind::set_count, {with_count(last, even)}, round, 1}};
}

}  // namespace

void check_seam(const CheckInput& input, std::vector<Check>& checks) {
    if (input.piece.end != End::sewn_straight) return;
    if (input.piece.joining == Joining::rows) {
        checks.push_back({CheckCode::rows_not_flattened, Severity::warning, input.piece_index, -1, {}, {}});
        return;
    }
    const int last = input.graphed_rounds() - 1;
    if (last < 0 || last + 1 != input.rounds() || input.loops_left(last) % 2 == 0) return;
    checks.push_back({CheckCode::odd_seam,
                      Severity::note,
                      input.piece_index,
                      last,
                      {input.loops_left(last)},
                      even_count(input, last)});
}

}  // namespace roundwright
