#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

#include "core/rounds/piece_graph.h"
#include "core/shape/fabric/cells_start.h"
#include "core/shape/fabric/fabric_problem.h"
#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/fabric/stitch_cells.h"
#include "core/shape/solve_shape.h"

namespace roundwright::test {

/// A piece as cells, with positions to start from.
struct FabricPiece {
    FabricProblem problem;
    std::vector<Vec3> start;
    std::vector<std::vector<std::int32_t>> rings;  ///< the nodes along each round's top
    /// Nodes in the middle of a loop that is increased, each with the ends of that loop.
    std::vector<std::array<std::int32_t, 3>> middles;
};

struct FabricPieceOptions {
    double stitch_width_mm = 5;
    double round_height_mm = 5;
    double area_stretch = 0.04;
    bool staggered = true;  ///< increases of one round lie between those of the last
    bool drawn_closed = true;
};

inline Piece worked_piece(const std::vector<int>& counts, const Start& start, End end,
                          const FabricPieceOptions& options) {
    Piece piece;
    piece.start = start;
    piece.joining = Joining::joined;
    piece.end = end;
    piece.area_stretch = options.area_stretch;
    for (const int count : counts) {
        WorkedEvenly evenly{count};
        evenly.spacing = options.staggered ? Spacing::staggered : Spacing::stacked;
        piece.rounds.emplace_back().working = evenly;
    }
    return piece;
}

inline Gauge gauge_of(const FabricPieceOptions& options) {
    return {options.stitch_width_mm, options.round_height_mm, 0, 0};
}

inline StitchCells upright_cells(const Piece& piece, const FabricPieceOptions& options) {
    StitchCells cells = stitch_cells(piece, piece_graph(piece).graph, gauge_of(options), {}, 0);
    cells.problem.compression_factor = FabricProblem{}.compression_factor;
    return cells;
}

/// From an axis along y to one along z.
inline std::vector<Vec3> axis_up(std::vector<Vec3> nodes) {
    for (Vec3& node : nodes) node = Vec3(node.z(), node.x(), node.y());
    return nodes;
}

/// The nodes between the loops of an edge, in the order worked.
inline std::vector<std::int32_t> ring_of(const CellEdge& edge) {
    std::vector<std::int32_t> ring;
    for (const EdgeNode& node : edge.nodes)
        if (node.at == std::round(node.at) && node.at < edge.loops) ring.push_back(node.node);
    return ring;
}

inline FabricPiece fabric_piece(const StitchCells& cells, std::vector<Vec3> start) {
    FabricPiece piece{cells.problem, std::move(start), {}, {}};
    for (const CellEdge& edge : cells.edges) {
        if (!edge.is_point()) piece.rings.push_back(ring_of(edge));
        for (std::size_t k = 1; k + 1 < edge.nodes.size(); ++k)
            if (edge.nodes[k].at != std::round(edge.nodes[k].at))
                piece.middles.push_back({edge.nodes[k].node, edge.nodes[k - 1].node, edge.nodes[k + 1].node});
    }
    return piece;
}

/// A round piece from a magic ring, about the z axis; it starts as the round solve has it.
inline FabricPiece round_piece(const std::vector<int>& counts, const FabricPieceOptions& options = {}) {
    const Piece piece =
        worked_piece(counts, MagicRing{}, options.drawn_closed ? End::drawn_closed : End::left_open, options);
    const StitchCells cells = upright_cells(piece, options);
    ShapeProblem round = shape_problem(piece, piece_graph(piece).graph, gauge_of(options));
    round.limp = round.on_its_face = false;
    return fabric_piece(cells, axis_up(revolved_start(cells, solve_shape(round))));
}

/// n rounds of six increases, n even ones and n of six decreases.
inline std::vector<int> ball_counts(int n) {
    std::vector<int> counts;
    for (int i = 1; i <= n; ++i) counts.push_back(6 * i);
    for (int i = 0; i < n; ++i) counts.push_back(6 * n);
    for (int i = n - 1; i >= 1; --i) counts.push_back(6 * i);
    return counts;
}

inline int stitches_of(const std::vector<int>& counts) {
    return std::accumulate(counts.begin(), counts.end(), 0);
}

/// A tube of rings, open at both ends; it starts as a prism about the z axis.
inline FabricPiece tube_piece(int stitches, int rounds, const FabricPieceOptions& options = {}) {
    const std::vector<int> counts(static_cast<std::size_t>(rounds), stitches);
    const StitchCells cells =
        upright_cells(worked_piece(counts, OpenTube{stitches}, End::left_open, options), options);
    const double radius = stitches * options.stitch_width_mm / (2 * std::numbers::pi);
    std::vector<Vec3> start(static_cast<std::size_t>(cells.problem.nodes));
    for (std::size_t i = 0; i < cells.edges.size(); ++i)
        for (const EdgeNode& node : cells.edges[i].nodes) {
            const double angle = -2 * std::numbers::pi * node.at / stitches;
            start[static_cast<std::size_t>(node.node)] = {radius * std::cos(angle), radius * std::sin(angle),
                                                          static_cast<double>(i) * options.round_height_mm};
        }
    return fabric_piece(cells, std::move(start));
}

/// A flat sheet of rows, in the plane z = 0.
inline FabricPiece sheet_piece(int stitches, int rows, const FabricPieceOptions& options = {}) {
    Piece piece = worked_piece(std::vector<int>(static_cast<std::size_t>(rows), stitches), OpenTube{stitches},
                               End::left_open, options);
    piece.joining = Joining::rows;
    const StitchCells cells = upright_cells(piece, options);
    std::vector<Vec3> start(static_cast<std::size_t>(cells.problem.nodes));
    for (std::size_t i = 0; i < cells.edges.size(); ++i)
        for (const EdgeNode& node : cells.edges[i].nodes)
            start[static_cast<std::size_t>(node.node)] = {
                -node.at * options.stitch_width_mm, static_cast<double>(i) * options.round_height_mm, 0};
    return fabric_piece(cells, std::move(start));
}

/// A round around an oval: along each side, and at each end `turn` groups of loops.
inline std::string oval_round(int chain, int turn, const std::string& group) {
    std::string ends;
    for (int k = 0; k < turn; ++k) ends += ", " + group;
    return "(sc " + std::to_string(chain) + ends + ") x 2";
}

inline std::string group_of(int before, const std::string& change, int after) {
    const auto singles = [](int count) { return count > 0 ? "sc " + std::to_string(count) : std::string(); };
    std::string group = singles(before);
    group += (group.empty() ? "" : ", ") + change;
    return group + (after > 0 ? ", " + singles(after) : "");
}

/// An oval on a chain: a round of `chain` stitches on both sides and `turn` in each end, `grow` rounds that
/// have `turn` more at each end, `even` rounds, and as many back down. It is drawn to a point, or sewn
/// straight. It starts as landmark scaling has it.
inline FabricPiece oval_piece(int chain, int turn, int grow, int even,
                              const FabricPieceOptions& options = {}) {
    Piece piece = worked_piece({}, OvalChain{chain},
                               options.drawn_closed ? End::drawn_closed : End::sewn_straight, options);
    const auto work = [&](const std::string& words) {
        piece.rounds.emplace_back().working = AsWritten{words};
    };
    work("(sc " + std::to_string(chain - 1) + ", " + std::to_string(turn + 1) + " sc in next st) x 2");
    int number = 1;
    const auto shift = [&](int of) { return options.staggered ? number % of : 0; };
    for (int level = 1; level <= grow; ++level, ++number)
        work(oval_round(chain, turn, group_of(shift(level), "inc", level - 1 - shift(level))));
    for (int i = 0; i < even; ++i, ++number) work("sc in each st around");
    for (int level = grow; level >= 1; --level, ++number)
        work(oval_round(chain, turn, group_of(shift(level), "dec", level - 1 - shift(level))));
    const StitchCells cells = upright_cells(piece, options);
    return fabric_piece(cells, axis_up(scaled_start(cells)));
}

}  // namespace roundwright::test
