#include "core/assembly/worked_on_joins.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include "core/assembly/sewing_steps.h"
#include "core/base/limits.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

struct OpenEdge {
    PieceCopy copy;
    int loops = 0;
    int last_round = 0;
};

/// More copies of one piece than make a body's legs.
constexpr int most_copies = 4;

bool is_taken(const Toy& toy, const PieceCopy& copy, int last_round) {
    return std::ranges::any_of(toy.joins, [&](const Join& join) {
        const bool second = join.pair && join.piece.piece == copy.piece && join.piece.copy + 1 == copy.copy;
        return join.piece == copy || second || (join.onto == copy && join.at.round >= last_round);
    });
}

/// Loops that the open last edge of each piece has; 0 where it has none.
std::vector<int> open_loops(const Toy& toy) {
    std::vector<int> loops;
    for (const Piece& piece : toy.pieces) {
        const bool open = piece.end == End::left_open && !piece.rounds.empty();
        loops.push_back(open ? stitch_counts(piece_graph(piece).graph).back() : 0);
    }
    return loops;
}

/// Open and free edges of all pieces before this one, the nearest last.
std::vector<OpenEdge> open_edges_before(const Toy& toy, const std::vector<int>& loops, std::size_t piece) {
    std::vector<OpenEdge> edges;
    for (std::size_t before = 0; before < piece; ++before) {
        const int last = static_cast<int>(toy.pieces[before].rounds.size()) - 1;
        for (int copy = 0; copy < std::min(toy.pieces[before].make, most_copies); ++copy) {
            const PieceCopy own{toy.pieces.id(before), copy};
            if (loops[before] > 0 && !is_taken(toy, own, last)) edges.push_back({own, loops[before], last});
        }
    }
    return edges;
}

/// Two edges of so many loops together, the nearest ones, in the order of their pieces.
std::optional<std::pair<OpenEdge, OpenEdge>> pair_of(const std::vector<OpenEdge>& edges, int loops) {
    for (std::size_t second = edges.size(); second-- > 1;)
        for (std::size_t first = second; first-- > 0;)
            if (edges[first].loops + edges[second].loops == loops)
                return std::pair(edges[first], edges[second]);
    return std::nullopt;
}

Join at_side(const OpenEdge& edge, const PieceCopy& body, double stitches_right) {
    return {.piece = edge.copy,
            .onto = body,
            .seam = Seam::worked_on,
            .at = {.round = -1, .stitches_right = stitches_right}};
}

Join going_on(const OpenEdge& edge, const PieceCopy& body) {
    return {.piece = body,
            .onto = edge.copy,
            .end = JoinedEnd::start,
            .seam = Seam::worked_on,
            .at = {.round = edge.last_round, .around = true}};
}

std::vector<Join> joins_of(const Toy& toy, const std::vector<int>& loops, std::size_t piece,
                           const WorkedOn& start) {
    const std::vector<OpenEdge> edges = open_edges_before(toy, loops, piece);
    const PieceCopy body{toy.pieces.id(piece), 0};
    // The chains lead out and back (core/assembly/sewing_steps.h: loops_of_edges).
    if (const auto two = pair_of(edges, start.stitches - 2 * start.chains_between)) {
        const double quarter = start.stitches / 4.0;
        return {at_side(two->first, body, -quarter), at_side(two->second, body, quarter)};
    }
    const auto one = std::find_if(edges.rbegin(), edges.rend(),
                                  [&](const OpenEdge& edge) { return edge.loops == start.stitches; });
    return one == edges.rend() ? std::vector<Join>{} : std::vector{going_on(*one, body)};
}

}  // namespace

Toy with_worked_on_joins(Toy toy) {
    const auto is_worked_on = [](const Piece& piece) {
        return std::holds_alternative<WorkedOn>(piece.start);
    };
    const PieceList pieces = toy.pieces;
    if (std::none_of(pieces.begin(), pieces.end(), is_worked_on)) return toy;
    const std::vector<int> loops = open_loops(toy);
    for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
        if (!is_worked_on(pieces[piece]) || !worked_on_edges(toy, piece).empty()) continue;
        for (Join& join : joins_of(toy, loops, piece, std::get<WorkedOn>(pieces[piece].start)))
            if (toy.joins.size() < max_joins) toy.joins.push_back(std::move(join));
    }
    return toy;
}

}  // namespace roundwright
