#include "core/language/round/even_spacing.h"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace roundwright {
namespace {

// Loops a stitch can take at once are bounded by Stitch::feet; a count that asks for more is worked as far as
// it goes, never wrapped round.
constexpr int most_feet = 65'535;

int remainder_of(int below, int stitches) { return stitches >= below ? stitches % below : below % stitches; }

void add_loop(GraphRound& round, Stitch stitch, int loop, int stitches_in_it) {
    for (int i = 0; i < stitches_in_it; ++i) {
        stitch.same_foot = i > 0;
        round.stitches.push_back({stitch, loop});
    }
}

void work_into_ring(GraphRound& round, Stitch stitch, int count) {
    round.stitches.assign(static_cast<std::size_t>(count), GraphStitch{stitch, 0});
}

void increase_evenly(GraphRound& round, const Stitch& stitch, int count, SpacingPhase phase) {
    const int below = round.loops_below;
    const auto more = even_places(count % below, below, phase);
    for (int loop = 0; loop < below; ++loop)
        add_loop(round, stitch, loop, count / below + (more[loop] ? 1 : 0));
}

void decrease_evenly(GraphRound& round, Stitch stitch, int count, SpacingPhase phase) {
    const int below = round.loops_below;
    const auto more = even_places(below % count, count, phase);
    int loop = 0;
    for (int i = 0; i < count; ++i) {
        const int feet = std::min(below / count + (more[i] ? 1 : 0), most_feet);
        stitch.feet = static_cast<std::uint16_t>(feet);
        round.stitches.push_back({stitch, loop});
        loop += feet;
    }
}

/// Chains are worked into nothing: they bridge the loops that stitches in their place would take.
void bridge(GraphRound& round) {
    std::vector<GraphStitch> bridged;
    for (std::size_t i = 0; i < round.stitches.size(); ++i) {
        auto [chain, loop] = round.stitches[i];
        const int feet = chain.feet;
        chain.feet = 0;
        chain.same_foot = false;
        chain.part = LoopPart::both;
        bridged.push_back({chain, loop});
        const bool shared = i + 1 < round.stitches.size() && round.stitches[i + 1].stitch.same_foot;
        for (int over = 0; over < feet && !shared && round.loops_below > 0; ++over)
            bridged.push_back({Stitch{.kind = StitchKind::skip}, loop + over});
    }
    round.stitches = std::move(bridged);
}

void leave_unworked(GraphRound& round) {
    for (int loop = 0; loop < round.loops_below; ++loop)
        round.stitches.push_back({Stitch{.kind = StitchKind::skip}, loop});
}

}  // namespace

std::vector<bool> even_places(int picks, int places, SpacingPhase phase) {
    std::vector<bool> picked(static_cast<std::size_t>(std::max(places, 0)), false);
    std::int64_t level = phase == SpacingPhase::at_middle ? places / 2 : 0;
    for (int j = 0; j < places; ++j) {
        level += picks;
        picked[j] = level >= places;
        if (picked[j]) level -= places;
    }
    return picked;
}

GraphRound even_round(const WorkedEvenly& working, int loops_below, SpacingPhase phase, std::uint16_t yarn) {
    GraphRound round;
    round.loops_below = std::max(loops_below, 0);
    const int count = std::max(working.stitches, 0);
    Stitch stitch;
    stitch.kind = working.kind;
    stitch.part = working.part;
    stitch.yarn = yarn;
    if (count == 0) return round;
    if (working.kind == StitchKind::skip)
        leave_unworked(round);
    else if (round.loops_below == 0)
        work_into_ring(round, stitch, count);
    else if (count >= round.loops_below)
        increase_evenly(round, stitch, count, phase);
    else
        decrease_evenly(round, stitch, count, phase);
    if (working.kind == StitchKind::chain) bridge(round);
    for (const GraphStitch& made : round.stitches) round.loops_left += loops_left(made.stitch);
    return round;
}

SpacingPhase phase_of(const WorkedEvenly& working, int loops_below, SpacingPhase below) {
    const bool shows = has_places(loops_below, working.stitches);
    return shows && working.spacing == Spacing::staggered ? other_phase(below) : below;
}

std::optional<WorkedEvenly> as_worked_evenly(const GraphRound& round, SpacingPhase below,
                                             std::uint16_t yarn) {
    if (round.stitches.empty() || round.first_below != 0) return std::nullopt;
    WorkedEvenly even;
    even.stitches = static_cast<int>(round.stitches.size());
    even.kind = round.stitches[0].stitch.kind;
    even.part = round.stitches[0].stitch.part;
    if (even.kind == StitchKind::chain || even.kind == StitchKind::skip) return std::nullopt;
    const bool shows = has_places(round.loops_below, even.stitches);
    for (const Spacing spacing : {Spacing::stacked, Spacing::staggered}) {
        even.spacing = spacing;
        if (even_round(even, round.loops_below, phase_of(even, round.loops_below, below), yarn) == round)
            return even;
        if (!shows) break;
    }
    return std::nullopt;
}

bool is_repeatable(int loops_below, int stitches) {
    if (loops_below <= 0 || stitches <= 0) return true;
    const int rest = remainder_of(loops_below, stitches);
    return rest == 0 || std::min(loops_below, stitches) % rest == 0;
}

bool has_places(int loops_below, int stitches) {
    return loops_below > 0 && stitches > 0 && remainder_of(loops_below, stitches) != 0;
}

}  // namespace roundwright
