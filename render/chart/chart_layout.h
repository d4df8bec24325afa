#pragma once

#include <vector>

#include <QPointF>
#include <QRectF>

#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright::render {

/// Where a stitch stands in a chart. Lengths are in single crochets: one is a stitch's width and a round's
/// height; x right, y up, the middle of the start at (0, 0).
struct ChartStitch {
    int round = 0;
    int stitch = 0;
    Stitch made;
    std::vector<QPointF> feet;  ///< one for each loop it is worked into; none for a chain
    QPointF head;
    QPointF outward;           ///< unit, from the start outwards at the head
    double share = 0;          ///< of the way around, 0..1, at the head
    double width = 1;          ///< room it has at its head
    bool shares_foot = false;  ///< with the stitch before or after it
};

/// The edge that a round leaves.
struct ChartEdge {
    std::vector<QPointF> line;  ///< through its heads in order, and along the loop where they stand apart
    int round = 0;
    bool whole = true;  ///< false: a round over a part of the edge
};

/// The number beside a round's first stitch.
struct ChartNumber {
    int round = 0;
    QPointF place;
};

/// How the piece starts, drawn at the middle.
struct ChartStart {
    /// `round_below`: the part starts on a round charted elsewhere; its edge stands in `chains`.
    enum class Kind { magic_ring, chain_ring, chains, round_below } kind = Kind::magic_ring;
    std::vector<QPointF> chains;  ///< middles of a ring's, a tube's or an oval's chains
    std::vector<QPointF> along;   ///< unit, the way each chain lies
};

/// A symbol chart before it is drawn. In the round it is worked anticlockwise (right-handed, right side seen)
/// from a gap on the right, in which the rounds are numbered; around an oval start it is oval; a piece worked
/// in rows is charted in rows, from right to left and back. A part that closes is drawn inwards from its
/// widest round, as the closing end is seen from outside: there the work goes clockwise.
struct ChartLayout {
    std::vector<ChartStitch> stitches;
    std::vector<ChartNumber> numbers;
    std::vector<ChartEdge> edges;  ///< one a round
    ChartStart start;
    bool in_rows = false;
    bool inwards = false;
    QRectF bounds;    ///< y up
    int repeats = 1;  ///< turned by a whole turn over this the chart is the same; 1: no repeat
};

/// Rounds charted together.
struct ChartPart {
    int first = 0;  ///< from 0
    int rounds = 0;
    bool inwards = false;
};

/// A piece in parts that each lie fairly flat: one grows outwards from its start, the next closes inwards,
/// and so on where the piece widens again. Narrowing by less than a third makes no part of its own.
[[nodiscard]] std::vector<ChartPart> chart_parts(const Piece& piece, const StitchGraph& graph);

[[nodiscard]] ChartLayout chart_layout(const Piece& piece, const StitchGraph& graph, const ChartPart& part);

/// Largest number of equal parts of a turn into which the full rounds [first, first + rounds) divide, stitch
/// for stitch.
[[nodiscard]] int chart_repeats(const StitchGraph& graph, int first, int rounds);

}  // namespace roundwright::render
