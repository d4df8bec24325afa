#include "core/reshape/frog_back.h"

#include <algorithm>

#include "core/materials/yarn_use.h"
#include "core/stitches/stitch_measure.h"

namespace roundwright {
namespace {

int stitches_in(const StitchGraph& graph, int round) {
    return round < static_cast<int>(graph.rounds.size())
               ? static_cast<int>(graph.rounds[static_cast<std::size_t>(round)].stitches.size())
               : 0;
}

int stitches_worked(const StitchGraph& graph, const WorkedSoFar& worked) {
    int sum = worked.stitches;
    for (int i = 0; i < worked.rounds; ++i) sum += stitches_in(graph, i);
    return sum;
}

bool starts_alike(const Piece& a, const StitchGraph& graph_a, const Piece& b, const StitchGraph& graph_b) {
    return a.start == b.start && a.joining == b.joining &&
           graph_a.foundation_loops == graph_b.foundation_loops;
}

bool begins_alike(const GraphRound& a, const GraphRound& b, int stitches) {
    return a.first_below == b.first_below && a.loops_below == b.loops_below &&
           static_cast<int>(b.stitches.size()) >= stitches &&
           std::equal(a.stitches.begin(), a.stitches.begin() + stitches, b.stitches.begin());
}

int rounds_alike(const StitchGraph& a, const StitchGraph& b, int most) {
    const auto first = a.rounds.begin();
    const auto last = first + std::min(most, static_cast<int>(std::min(a.rounds.size(), b.rounds.size())));
    return static_cast<int>(std::mismatch(first, last, b.rounds.begin()).first - first);
}

FrogBack undone(const StitchGraph& graph, const WorkedSoFar& worked, int keep_rounds, int keep_stitches) {
    FrogBack back;
    back.keep_rounds = keep_rounds;
    back.keep_stitches = keep_stitches;
    const bool part_goes = worked.stitches > keep_stitches;
    back.undo_rounds = worked.rounds - keep_rounds + (part_goes ? 1 : 0);
    back.undo_stitches =
        stitches_worked(graph, worked) - stitches_worked(graph, {keep_rounds, keep_stitches, {}});
    return back;
}

StitchGraph first_rounds(const StitchGraph& graph, int rounds) {
    return {graph.foundation_loops, {graph.rounds.begin(), graph.rounds.begin() + rounds}};
}

// Single crochets' worth of yarn in what has been worked.
std::vector<double> yarn_worked(const Piece& piece, const StitchGraph& graph, int rounds, int stitches,
                                std::size_t yarns) {
    auto use = single_crochets_of_yarn(piece, first_rounds(graph, rounds), yarns);
    for (int i = 0; i < stitches; ++i) {
        const Stitch& made =
            graph.rounds[static_cast<std::size_t>(rounds)].stitches[static_cast<std::size_t>(i)].stitch;
        use[made.yarn < yarns ? made.yarn : 0] += yarn_in_sc(made);
    }
    return use;
}

}  // namespace

Estimate FrogBack::yarn_mm() const {
    Estimate sum;
    for (const Estimate& yarn : undo_yarn_mm) sum += yarn;
    return sum;
}

WorkedSoFar usable_progress(const WorkedSoFar& worked, const StitchGraph& graph) {
    WorkedSoFar usable = worked;
    usable.rounds = std::clamp(worked.rounds, 0, static_cast<int>(graph.rounds.size()));
    usable.stitches = std::clamp(worked.stitches, 0, stitches_in(graph, usable.rounds));
    if (usable.stitches > 0 && usable.stitches == stitches_in(graph, usable.rounds)) {
        ++usable.rounds;
        usable.stitches = 0;
    }
    return usable;
}

FrogBack frog_back(const Piece& old, const StitchGraph& old_graph, const Piece& piece,
                   const StitchGraph& graph, const WorkedSoFar& so_far) {
    const WorkedSoFar worked = usable_progress(so_far, old_graph);
    if (!starts_alike(old, old_graph, piece, graph)) return undone(old_graph, worked, 0, 0);
    const int keep = rounds_alike(old_graph, graph, worked.rounds);
    const auto next = static_cast<std::size_t>(keep);
    const bool part_stays = keep == worked.rounds && worked.stitches > 0 && next < graph.rounds.size() &&
                            begins_alike(old_graph.rounds[next], graph.rounds[next], worked.stitches);
    return undone(old_graph, worked, keep, part_stays ? worked.stitches : 0);
}

FrogBack frog_everything(const Piece&, const StitchGraph& old_graph, const WorkedSoFar& so_far) {
    return undone(old_graph, usable_progress(so_far, old_graph), 0, 0);
}

void measure_yarn(FrogBack& back, const Piece& old, const StitchGraph& old_graph, const WorkedSoFar& so_far,
                  const Toy& toy, const Gauge& gauge) {
    const WorkedSoFar worked = usable_progress(so_far, old_graph);
    const std::size_t yarns = std::max<std::size_t>(toy.yarns.size(), 1);
    const auto all = yarn_worked(old, old_graph, worked.rounds, worked.stitches, yarns);
    const auto kept = yarn_worked(old, old_graph, back.keep_rounds, back.keep_stitches, yarns);
    const Estimate each = single_crochet_yarn_mm(gauge, toy.making);
    back.undo_yarn_mm.clear();
    for (std::size_t i = 0; i < yarns; ++i) back.undo_yarn_mm.push_back(each * (all[i] - kept[i]));
}

WorkedSoFar progress_kept(const WorkedSoFar& worked, const FrogBack& back) {
    WorkedSoFar kept;
    kept.rounds = back.keep_rounds;
    kept.stitches = back.keep_stitches;
    const auto rounds = std::min<std::size_t>(
        worked.seconds_of_round.size(), std::size_t(back.keep_rounds + (back.keep_stitches > 0 ? 1 : 0)));
    kept.seconds_of_round.assign(worked.seconds_of_round.begin(), worked.seconds_of_round.begin() + rounds);
    return kept;
}

}  // namespace roundwright
