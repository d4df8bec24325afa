#pragma once

#include <optional>
#include <vector>

#include "core/checks/check.h"
#include "core/gauge/fabric_thickness.h"
#include "core/gauge/gauge.h"
#include "core/rounds/piece_graph.h"
#include "core/rounds/workable_counts.h"
#include "core/shape/fabric_signs.h"
#include "core/shape/lie.h"
#include "core/shape/piece_measures.h"
#include "core/shape/shape_problem.h"
#include "core/toy/toy.h"

namespace roundwright {

/// What the families of checks look at: one piece and what was computed from it. It holds references only.
struct CheckInput {
    const Piece& piece;
    int piece_index = 0;  ///< what `Check::piece` becomes
    const PieceGraph& graph;
    const Gauge& gauge;
    bool gauge_known = true;  ///< false: a usual one stands in
    const ShapeProblem& problem;
    const PieceMeasures& measures;
    const std::vector<RoundLie>& lies;     ///< one a round; none without a shape
    const std::vector<FabricSign>& signs;  ///< none without a shape
    /// The same shape as the face sees it; not usable where it is no surface of revolution.
    const Shape& revolved;
    FabricThickness fabric{};  ///< of 0 mm: not known

    [[nodiscard]] int rounds() const { return static_cast<int>(piece.rounds.size()); }
    [[nodiscard]] double stitch_width_mm() const { return gauge.stitch_width_mm; }
    /// Loops that round i is worked over (0: into a ring), and loops on the edge when it is done. Only for
    /// rounds below `graphed_rounds()`.
    [[nodiscard]] int graphed_rounds() const { return static_cast<int>(graph.graph.rounds.size()); }
    /// Rounds for which the fabric's lie is known; 0 where no shape was found.
    [[nodiscard]] int rounds_with_lie() const;
    [[nodiscard]] int loops_below(int round) const;
    [[nodiscard]] int loops_left(int round) const;
};

/// What an evenly worked round may count over the loops below it. Nothing where any count goes: a written
/// round, or one worked into a ring.
[[nodiscard]] std::optional<CountRange> workable_counts(const CheckInput& input, int round);
/// Whether a round can be worked as it stands: its count, or its words.
[[nodiscard]] bool count_is_workable(const CheckInput& input, int round);
[[nodiscard]] bool words_come_out(const CheckInput& input, int round);

/// The arguments of a check on a round that ruffles.
[[nodiscard]] std::vector<Argument> ruffle_arguments(const CheckInput& input, int round);

/// A round like this one, but worked evenly to another count.
[[nodiscard]] Round with_count(const Round& round, int stitches);

/// Rounds like `like` whose counts go from `below` (exclusive) to `count` in `rounds` equal steps.
[[nodiscard]] std::vector<Round> in_steps(const Round& like, int below, int count, int rounds);

}  // namespace roundwright
