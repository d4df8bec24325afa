#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Where the increases or decreases of an evenly worked round fall: at the end of every repeat, or in the
/// middle of it. Rounds of the same phase stack their increases; rounds of the other phase put theirs
/// between.
enum class SpacingPhase { at_end, at_middle };

/// `picks` places among `places`, as evenly as whole numbers allow: every gap is floor(places / picks) or one
/// more. At place j when (j picks + offset) / places passes a whole number on the way to j + 1.
/// Source: G. Toussaint, The Euclidean Algorithm Generates Traditional Musical Rhythms, BRIDGES 2005, 47-56.
/// Requires 0 <= picks <= places.
[[nodiscard]] std::vector<bool> even_places(int picks, int places, SpacingPhase phase);

/// The stitches of an evenly worked round over `loops_below` loops (0: into a ring).
///
/// With as many stitches as loops or more, every loop holds floor(N / below) stitches or one more; with
/// fewer, every stitch takes floor(below / N) loops together or one more. So any count can be worked over any
/// other; whether it should be is for a check to say. The round's loops are filled to the last one. Returns
/// an empty round over `loops_below` when `working.stitches` is below 1.
[[nodiscard]] GraphRound even_round(const WorkedEvenly& working, int loops_below, SpacingPhase phase,
                                    std::uint16_t yarn);

[[nodiscard]] constexpr SpacingPhase other_phase(SpacingPhase phase) {
    return phase == SpacingPhase::at_end ? SpacingPhase::at_middle : SpacingPhase::at_end;
}

/// The phase of an evenly worked round, when `below` is that of the last round below whose places show:
/// stacked keeps it, staggered changes it.
[[nodiscard]] SpacingPhase phase_of(const WorkedEvenly& working, int loops_below, SpacingPhase below);

/// The count, stitch and spacing that give exactly this round when they are worked evenly in `yarn`, if there
/// are any.
[[nodiscard]] std::optional<WorkedEvenly> as_worked_evenly(const GraphRound& round, SpacingPhase below,
                                                           std::uint16_t yarn);

/// Whether an even round of `stitches` over `loops_below` is one group repeated without a rest.
[[nodiscard]] bool is_repeatable(int loops_below, int stitches);

/// Whether the round has increases or decreases to place, that is, whether its phase shows.
[[nodiscard]] bool has_places(int loops_below, int stitches);

}  // namespace roundwright
