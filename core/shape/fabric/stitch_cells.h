#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/gauge/gauge.h"
#include "core/shape/fabric/fabric_problem.h"
#include "core/shape/shape_problem.h"
#include "core/stitches/stitch_graph.h"
#include "core/stitches/stitch_layout.h"
#include "core/stitches/stitch_slant.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Why a piece has no cells.
enum class CellsRefusal {
    none,
    no_rounds,
    round_without_loops,  ///< a round leaves no loop on the edge
    loops_left_hanging,   ///< loops that are neither worked into nor kept on the edge: a slit
    oval_in_rows,         ///< nothing is refused for this any more: rows around a chain are built
    touches_itself,       ///< so few stitches that the cells of one side lie on those of another
};

/// A node of an edge, so many loops from the start of its round.
struct EdgeNode {
    double at = 0;
    std::int32_t node = 0;
};

/// An edge of the fabric: the line of loops that a round leaves, or the one that round 1 is worked over.
/// Straight between its nodes, which ascend from 0 to `loops`. Where it closes on itself the last node is the
/// first; in a spiral it ends where the next one begins, one round higher.
struct CellEdge {
    double loops = 0;
    double loop_width_mm = 0;  ///< relaxed
    std::vector<EdgeNode> nodes;

    [[nodiscard]] bool is_point() const {
        return nodes.front().node == nodes.back().node && nodes.size() == 2;
    }
};

/// The cells of a piece, round by round, and the fabric that they make.
///
/// A stitch is a trapezoid in its own plane: below as wide as its share of the loops that it is worked into,
/// above one loop, and as high as its kind. Nodes are the boundaries of loops; where a stitch begins within a
/// loop, as an increase does, a node within it lets both fit. Stitches side by side share their sides, so in
/// a round of several kinds the edge slopes from one to the next; a chain hangs between its neighbours.
///
/// Into a magic ring the stitches are triangles with one common point. Around a chain those that share its
/// end fan out about it. A partial round tapers to nothing at its ends; the loops that it leaves alone stay
/// on the edge. A drawn end is a fan half a stitch high; an end that is sewn straight has its loops joined in
/// pairs, front to back. Rows make a sheet.
///
/// In a spiral every round ends where the next one begins, a round higher than it began itself. What the
/// first round lacks at its start, and has too much at its end, is half a round: its stitches grow from half
/// their height to one and a half. A closed end has the same the other way round; an open one its ledge. A
/// spiral with partial rounds, or of fewer than three rounds or loops somewhere, is given closed rounds.
///
/// In rounds stitches lean: what is relaxed leans with them, so columns drift and nothing is strained. Where
/// a stitch is worked into one loop of two, the fabric folds easily along it.
///
/// Rows around a chain are a sheet whose first edge lies double along the chain, open where they are turned.
struct StitchCells {
    CellsRefusal refusal = CellsRefusal::none;
    FabricProblem problem;
    std::vector<LaidRound> rounds;
    std::vector<CellEdge> edges;  ///< rounds + 1
    /// [round][cell]: number of its first triangle, and one entry more; a loop left alone has none.
    std::vector<std::vector<std::int32_t>> first_triangle;
    /// By how much the start of each edge, rounds + 1 of them, has moved on around the piece so that stitches
    /// stand on the whole over those that they are worked into, but for their slant; in turns, in the
    /// direction worked.
    std::vector<double> turns;
    double slant_stitches = 0;               ///< core/stitches/stitch_slant.h
    std::optional<std::int32_t> pole_below;  ///< the point of a magic ring
    std::optional<std::int32_t> pole_above;  ///< of a drawn end's fan
    bool rows = false;
    bool spiral = false;
    bool sewn = false;
    bool around_chain = false;

    [[nodiscard]] bool usable() const { return refusal == CellsRefusal::none; }
    /// Whether nothing is open.
    [[nodiscard]] bool closed() const;
};

/// By how much the loops of each edge (rounds + 1) and the stitches of each round have yielded, as shares of
/// their relaxed width and height; empty: not at all.
struct YieldedShares {
    std::vector<double> loops, heights;
};
/// Of a piece that lies down, the shares of the round solve (core/shape/yield_flat.h); none of others. Around
/// a chain the sides are as long as the chain, and loops yield at the ends alone, stitch by stitch
/// (core/shape/fabric/lay_flat.h): here it has the heights of the disc that its ends make.
[[nodiscard]] YieldedShares yielded_shares(const ShapeProblem& problem);

/// The cells of a piece at a gauge. The fabric's stretch is the piece's, but for a sheet, which holds
/// nothing. What is not stuffed is softened less where it is pushed together, since its waves themselves are
/// seen.
[[nodiscard]] StitchCells stitch_cells(const Piece& piece, const StitchGraph& graph, const Gauge& gauge,
                                       const YieldedShares& yielded = {},
                                       double slant_stitches = usual_slant_stitches);

}  // namespace roundwright
