#pragma once

#include <vector>

#include "core/gauge/gauge.h"
#include "core/materials/estimate.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// How far back to rip what is on the hook, so that another piece can be worked from there.
struct FrogBack {
    int keep_rounds = 0;    ///< rounds 1 to this stay as they are
    int keep_stitches = 0;  ///< of the round after them, where it was being worked and goes on the same
    int undo_rounds = 0;    ///< a round begun counts
    int undo_stitches = 0;
    std::vector<Estimate> undo_yarn_mm;  ///< freed by it, one a yarn of the toy

    [[nodiscard]] Estimate yarn_mm() const;
};

/// The progress that a piece can have: no round or stitch past its own, a finished round counted as one.
[[nodiscard]] WorkedSoFar usable_progress(const WorkedSoFar& worked, const StitchGraph& graph);

/// Keeps the longest run of worked rounds that are stitch for stitch the same in both pieces: kind, loop,
/// feet, place and yarn, from the same start. A round that was only begun stays if what there is of it is the
/// same; any other round is undone whole.
[[nodiscard]] FrogBack frog_back(const Piece& old, const StitchGraph& old_graph, const Piece& piece,
                                 const StitchGraph& graph, const WorkedSoFar& worked);

/// The same where nothing worked so far can stay: another yarn or hook.
[[nodiscard]] FrogBack frog_everything(const Piece& old, const StitchGraph& old_graph,
                                       const WorkedSoFar& worked);

/// Fills in the yarn that is freed.
void measure_yarn(FrogBack& back, const Piece& old, const StitchGraph& old_graph, const WorkedSoFar& worked,
                  const Toy& toy, const Gauge& gauge);

/// The progress that is left when that has been undone.
[[nodiscard]] WorkedSoFar progress_kept(const WorkedSoFar& worked, const FrogBack& back);

}  // namespace roundwright
