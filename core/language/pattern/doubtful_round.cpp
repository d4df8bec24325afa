#include "core/language/pattern/doubtful_round.h"

#include <algorithm>
#include <vector>

#include "core/base/limits.h"

namespace roundwright {
namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);

struct Candidate {
    GoingOn::From from;
    int stitches;
};

// Words that were not understood make no count.
bool words_make_a_count(const ReadRound& read) {
    return !has_code(read, ReadCode::unknown_words) && !has_code(read, ReadCode::number_alone) &&
           !(has_code(read, ReadCode::bracket_not_closed) && read.syntax.open) &&
           !has_code(read, ReadCode::no_stitches) && !has_code(read, ReadCode::nothing_to_fill);
}

// The likeliest first.
std::vector<Candidate> candidates(const ReadRound& read, const RoundBelow& below, NextRounds& next) {
    using From = GoingOn::From;
    std::vector<Candidate> all;
    const auto add = [&](From from, int stitches) {
        const bool known = std::any_of(all.begin(), all.end(),
                                       [&](const Candidate& one) { return one.stitches == stitches; });
        if (!known && stitches > 0 && stitches <= most_stitches) all.push_back({from, stitches});
    };
    const bool counted = words_make_a_count(read);
    if (only_count_differs(read)) add(From::words, read.stitches);
    if (read.stated) add(From::stated_count, read.stated->count);
    if (const auto needed = next.needed(below)) add(From::next_rounds, *needed);
    if (!read.diagnostics.empty())
        for (const Mend& mend : read.diagnostics.front().mends)
            if (mend.stitches > 0) add(From::words, mend.stitches);
    if (counted) add(From::words, read.stitches);
    if (below.loops > 0) add(From::round_below, below.loops);
    return all;
}

}  // namespace

bool only_count_differs(const ReadRound& read) {
    return std::all_of(read.diagnostics.begin(), read.diagnostics.end(), [](const ReadDiagnostic& d) {
        return d.code == ReadCode::count_differs || d.severity != Severity::error;
    });
}

GoingOn going_on(const ReadRound& read, const RoundBelow& below, NextRounds& next) {
    GoingOn on;
    std::optional<NextRounds::Fit> best;
    bool alone = true;  // no other comes out as well
    for (const Candidate& one : candidates(read, below, next)) {
        RoundBelow on_that = below;
        on_that.loops = one.stitches;
        on_that.into_ring = false;
        const NextRounds::Fit fit = next.none() ? NextRounds::Fit{} : next.fit(on_that);
        // Against a printed count the next round alone is no proof: the slip may be its own.
        const bool against_count = one.from == GoingOn::From::next_rounds && read.stated;
        if (against_count && fit.proved < 2) continue;
        if (best && fit.proved == best->proved) alone = false;
        if (best && fit <= *best) continue;
        alone = !best || fit.proved > best->proved;
        best = fit;
        on.from = one.from;
        on.stitches = one.stitches;
    }
    on.confirmed = best && best->proved > 0 && alone;
    return on;
}

}  // namespace roundwright
