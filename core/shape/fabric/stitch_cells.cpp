#include "core/shape/fabric/stitch_cells.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "core/shape/fabric/cell_triangles.h"
#include "core/shape/fabric/node_classes.h"
#include "core/shape/fabric/open_edges.h"
#include "core/shape/fabric/round_heights.h"
#include "core/shape/oval_plan.h"
#include "core/shape/yield_flat.h"

namespace roundwright {
namespace {

constexpr std::size_t fewest_around = 3;
constexpr std::size_t fewest_climbing = 3;
constexpr double within_a_loop = 1 << 20;
/// With less the fabric of a ruffle takes up its spare length in itself.
constexpr double unstuffed_compression = 0.2;

/// Places on an edge are told apart to a millionth of a loop.
std::int64_t key_of(double at) { return std::llround(at * within_a_loop); }

/// Mean share of a turn by which the stitches' feet are ahead of their heads.
double mean_lag(const LaidRound& round) {
    const double below = 1.0 / std::max(1, round.loops_below);
    const double above = 1.0 / static_cast<double>(round.cells.size());
    double sum = 0;
    for (std::size_t c = 0; c < round.cells.size(); ++c)
        sum += below * (round.cells[c].below_first + round.cells[c].below_last) / 2 -
               above * (static_cast<double>(c) + 0.5);
    return sum * above;
}

/// See `StitchCells::turns`.
std::vector<double> turns_of_starts(const std::vector<LaidRound>& rounds, double slant_stitches) {
    std::vector<double> turns{0};
    for (const LaidRound& round : rounds)
        turns.push_back(turns.back() + mean_lag(round) -
                        slant_stitches / static_cast<double>(std::max<std::size_t>(1, round.cells.size())));
    return turns;
}

class Builder {
  public:
    Builder(const Piece& piece, const StitchGraph& graph, const Gauge& gauge, const YieldedShares& yielded,
            double slant_stitches, double fold_moved)
        : piece_(piece), graph_(graph), gauge_(gauge), yielded_(yielded), fold_(fold_moved) {
        made_.slant_stitches = slant_stitches;
    }

    StitchCells build() {
        made_.refusal = lay();
        if (!made_.usable()) return std::move(made_);
        find_places();
        number_places();
        join_places();
        set_edges();
        set_problem();
        add_cells();
        if (drawn_) add_fan();
        made_.problem.nodes = nodes_;
        std::ranges::sort(made_.problem.creases);
        if (!is_one_surface(made_.problem)) made_.refusal = CellsRefusal::touches_itself;
        return std::move(made_);
    }

  private:
    // --- the rounds

    CellsRefusal lay() {
        made_.rows = piece_.joining == Joining::rows;
        made_.around_chain = std::holds_alternative<OvalChain>(piece_.start);
        made_.rounds = lay_stitches(graph_, made_.rows);
        if (made_.rounds.empty()) return CellsRefusal::no_rounds;
        for (const LaidRound& round : made_.rounds) {
            if (round.cells.empty()) return CellsRefusal::round_without_loops;
            if (!is_gapless(round)) return CellsRefusal::loops_left_hanging;
        }
        ring_ = std::holds_alternative<MagicRing>(piece_.start);
        drawn_ = !made_.rows && piece_.end == End::drawn_closed;
        made_.sewn = !made_.rows && piece_.end == End::sewn_straight;
        made_.spiral = piece_.joining == Joining::spiral && can_climb();
        if (made_.around_chain) fan_out_at_ends(made_.rounds.front());
        if (made_.rows) made_.slant_stitches = 0;
        made_.turns = turns_of_starts(made_.rounds, made_.slant_stitches);
        return CellsRefusal::none;
    }

    static bool is_gapless(const LaidRound& round) {
        double reached = 0;
        for (const LaidStitch& cell : round.cells) {
            if (std::abs(cell.below_first - reached) > 1e-6) return false;
            reached = cell.below_last;
        }
        return std::abs(reached - round.loops_below) < 1e-6;
    }

    bool can_climb() const {
        if (made_.rounds.size() < fewest_climbing) return false;
        return std::ranges::all_of(made_.rounds, [](const LaidRound& round) {
            return round.cells.size() >= fewest_around &&
                   std::ranges::none_of(round.cells, [](const LaidStitch& cell) { return cell.carried; });
        });
    }

    /// Of the stitches that share a loop beside an end of the chain, the one away from the end stands on the
    /// whole loop, and the others on the end itself.
    void fan_out_at_ends(LaidRound& round) const {
        const double chains = round.loops_below / 2;
        const auto shares = [](const LaidStitch& cell, double loop) {
            return cell.below_first > loop - 1e-6 && cell.below_last < loop + 1 + 1e-6 &&
                   cell.below_last - cell.below_first < 1 - 1e-6;
        };
        const auto fan = [&](double loop, double share_of_whole) {
            std::vector<LaidStitch*> sharing;
            for (LaidStitch& cell : round.cells)
                if (shares(cell, loop)) sharing.push_back(&cell);
            if (sharing.empty() || sharing.front()->below_first > loop + 1e-6 ||
                sharing.back()->below_last < loop + 1 - 1e-6)
                return;
            const auto whole = static_cast<std::size_t>(
                std::lround(share_of_whole * static_cast<double>(sharing.size() - 1)));
            for (std::size_t k = 0; k < sharing.size(); ++k) {
                sharing[k]->below_first = k <= whole ? loop : loop + 1;
                sharing[k]->below_last = k < whole ? loop : loop + 1;
            }
        };
        // Rows are turned at the first end, which stays open.
        if (chains < 2) {
            if (!made_.rows) fan(0, 0.5);
            if (!made_.rows) fan(1, 0.5);
            return;
        }
        if (!made_.rows) fan(0, 1);
        fan(chains - 1, 0);
        fan(chains, 1);
        if (!made_.rows) fan(2 * chains - 1, 0);
    }

    // --- the places on each edge that need a node

    std::size_t last_edge() const { return made_.rounds.size(); }

    double loops_on(std::size_t edge) const {
        return edge == 0 ? made_.rounds.front().loops_below
                         : static_cast<double>(made_.rounds[edge - 1].cells.size());
    }

    void need(std::size_t edge, double at) { places_[edge].try_emplace(key_of(at), Place{at, 0}); }

    bool has(std::size_t edge, double at) const { return places_[edge].contains(key_of(at)); }

    void find_places() {
        places_.resize(last_edge() + 1);
        for (std::size_t edge = last_edge() + 1; edge-- > 0;) {
            const double loops = loops_on(edge);
            if (edge == 0 && ring_) {
                need(0, 0);
                need(0, loops);
                continue;
            }
            for (double at = 0; at <= loops; ++at) need(edge, at);
            if (edge < last_edge()) need_feet(edge);
            if (edge > 0) need_lone_stitches(edge);
            if (edge == last_edge() && made_.sewn) find_fold();
            if (!made_.rows && places_[edge].size() <= fewest_around && !is_seam(edge) && !is_chain(edge))
                for (double at = 0; at < loops; at += loops / 3) need(edge, at);
        }
        settle_places();
    }

    std::size_t count_places() const {
        std::size_t count = 0;
        for (const auto& edge : places_) count += edge.size();
        return count;
    }

    /// Loops that are left alone have the same places on both their edges, and so have both sides of a seam
    /// and of a chain: what one of them needs may be needed by the next.
    void settle_places() {
        for (std::size_t before = 0; before != count_places();) {
            before = count_places();
            for (std::size_t round = 0; round < last_edge(); ++round) carry_up(round);
            if (made_.around_chain) mirror_chain();
            if (made_.sewn) mirror_seam();
            for (std::size_t edge = last_edge(); edge-- > 0;)
                if (edge > 0 || !ring_) need_feet(edge);
        }
    }

    bool is_seam(std::size_t edge) const { return edge == last_edge() && made_.sewn; }
    bool is_chain(std::size_t edge) const { return edge == 0 && made_.around_chain; }

    /// Where the stitches of the round above begin and end, and what the loops that it leaves alone have.
    void need_feet(std::size_t edge) {
        const auto& cells = made_.rounds[edge].cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            need(edge, cells[c].below_first);
            need(edge, cells[c].below_last);
            if (!cells[c].carried) continue;
            const auto above = static_cast<double>(c);
            for (auto place = places_[edge + 1].lower_bound(key_of(above));
                 place != places_[edge + 1].end() && place->second.at < above + 1; ++place)
                need(edge, cells[c].below_first + (place->second.at - above));
        }
    }

    void carry_up(std::size_t round) {
        const auto& cells = made_.rounds[round].cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            if (!cells[c].carried) continue;
            const double below = cells[c].below_first;
            for (auto place = places_[round].lower_bound(key_of(below));
                 place != places_[round].end() && place->second.at < below + 1; ++place)
                need(round + 1, static_cast<double>(c) + (place->second.at - below));
        }
    }

    /// A stitch that tapers at both sides needs a place for its height.
    void need_lone_stitches(std::size_t edge) {
        const auto& cells = made_.rounds[edge - 1].cells;
        for (std::size_t c = 0; c < cells.size(); ++c)
            if (tapers(edge - 1, c, true) && tapers(edge - 1, c, false))
                need(edge, static_cast<double>(c) + 0.5);
    }

    /// Whether a stitch has a loop beside it that its round leaves alone, before it or after it.
    bool tapers(std::size_t round, std::size_t c, bool after) const {
        const auto& cells = made_.rounds[round].cells;
        if (cells[c].carried) return false;
        const std::size_t size = cells.size();
        if (made_.rows && (after ? c + 1 == size : c == 0)) return false;
        return cells[after ? (c + 1) % size : (c + size - 1) % size].carried;
    }

    /// Where the last edge is folded: a quarter of the way around from the back.
    void find_fold() {
        const double loops = loops_on(last_edge());
        fold_ += std::round((0.25 - made_.turns.back()) * loops);
        fold_ -= std::floor(fold_ / loops) * loops;
        need(last_edge(), on_seam(fold_));
        need(last_edge(), on_seam(fold_ + loops / 2));
    }

    void mirror_seam() {
        std::vector<double> places;
        for (const auto& [key, place] : places_[last_edge()]) places.push_back(place.at);
        for (const double at : places) need(last_edge(), on_seam(2 * fold_ - at));
    }

    double on_seam(double at) const {
        const double loops = loops_on(last_edge());
        return at - std::floor(at / loops) * loops;
    }

    void mirror_chain() {
        std::vector<double> places;
        for (const auto& [key, place] : places_[0]) places.push_back(place.at);
        for (const double at : places) need(0, loops_on(0) - at);
    }

    // --- which of these places are one node

    void number_places() {
        std::int32_t next = 0;
        for (auto& edge : places_)
            for (auto& [key, place] : edge) place.number = next++;
        classes_ = NodeClasses(next);
    }

    std::int32_t number(std::size_t edge, double at) const { return places_[edge].at(key_of(at)).number; }

    void join_places() {
        for (std::size_t edge = 0; edge <= last_edge(); ++edge) join_ends(edge);
        for (std::size_t round = 0; round < last_edge(); ++round) join_carried(round);
        if (made_.around_chain)
            for (const auto& [key, place] : places_[0])
                classes_.join(place.number, number(0, loops_on(0) - place.at));
        if (made_.sewn)
            for (const auto& [key, place] : places_[last_edge()])
                classes_.join(place.number, number(last_edge(), on_seam(2 * fold_ - place.at)));
    }

    bool climbs(std::size_t edge) const {
        return made_.spiral && edge > 0 && (edge < last_edge() || !(drawn_ || made_.sewn));
    }

    void join_ends(std::size_t edge) {
        const bool point = edge == 0 && ring_;
        if (!climbs(edge)) {
            if (!made_.rows || point) classes_.join(number(edge, 0), number(edge, loops_on(edge)));
        } else if (edge + 1 <= last_edge() && climbs(edge + 1)) {
            classes_.join(number(edge, loops_on(edge)), number(edge + 1, 0));
        }
    }

    void join_carried(std::size_t round) {
        const auto& cells = made_.rounds[round].cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            if (!cells[c].carried) continue;
            const auto above = static_cast<double>(c);
            for (const auto& [key, place] : places_[round + 1])
                if (place.at >= above && place.at <= above + 1)
                    classes_.join(place.number, number(round, cells[c].below_first + (place.at - above)));
        }
    }

    void set_edges() {
        std::vector<std::int32_t> node_of(static_cast<std::size_t>(classes_.size()), -1);
        for (std::size_t edge = 0; edge <= last_edge(); ++edge) {
            CellEdge& made = made_.edges.emplace_back();
            made.loops = loops_on(edge);
            made.loop_width_mm = gauge_.stitch_width_mm;
            if (edge < yielded_.loops.size()) made.loop_width_mm *= yielded_.loops[edge];
            for (const auto& [key, place] : places_[edge]) {
                std::int32_t& node = node_of[static_cast<std::size_t>(classes_.of(place.number))];
                if (node < 0) node = nodes_++;
                made.nodes.push_back({place.at, node});
            }
        }
        if (const auto* ring = std::get_if<ChainRing>(&piece_.start))
            made_.edges.front().loop_width_mm *= std::max(1, ring->chains) / made_.edges.front().loops;
        if (ring_) made_.pole_below = made_.edges.front().nodes.front().node;
    }

    void set_problem() {
        const double stretch = made_.rows ? 0 : piece_.area_stretch;
        made_.problem.stitch_width_mm = gauge_.stitch_width_mm;
        made_.problem.round_height_mm = gauge_.round_height_mm;
        made_.problem.area_stretch = stretch;
        if (!(stretch > 0)) made_.problem.compression_factor = unstuffed_compression;
    }

    // --- their triangles

    void add_cells() {
        const RoundHeights heights(graph_, made_.rounds, gauge_.round_height_mm, yielded_.heights);
        for (std::size_t i = 0; i < made_.rounds.size(); ++i) {
            auto& first = made_.first_triangle.emplace_back();
            const SideHeights sides = heights.sides(i, side_kind(i), made_.rows);
            for (std::size_t c = 0; c < made_.rounds[i].cells.size(); ++c) {
                first.push_back(static_cast<std::int32_t>(made_.problem.triangles.size()));
                if (!made_.rounds[i].cells[c].carried) add_cell(i, c, sides);
            }
            first.push_back(static_cast<std::int32_t>(made_.problem.triangles.size()));
        }
    }

    SideKind side_kind(std::size_t i) const {
        SideKind kind;
        kind.spiral = made_.spiral;
        kind.first = i == 0;
        kind.last = i + 1 == last_edge();
        kind.closed_end = drawn_ || made_.sewn;
        return kind;
    }

    /// The nodes of an edge from one place to another, with their distance from the first, mm.
    std::vector<CellCorner> between(const CellEdge& edge, double from, double to) const {
        std::vector<CellCorner> corners;
        if (edge.is_point()) return {{edge.nodes.front().node, Vec2::Zero()}};
        for (const EdgeNode& node : edge.nodes)
            if (key_of(node.at) >= key_of(from) && key_of(node.at) <= key_of(to))
                corners.push_back({node.node, Vec2((node.at - from) * edge.loop_width_mm, 0)});
        return corners;
    }

    void add_cell(std::size_t i, std::size_t c, const SideHeights& sides) {
        const LaidStitch& cell = made_.rounds[i].cells[c];
        CellOutline outline;
        outline.below = between(made_.edges[i], cell.below_first, cell.below_last);
        outline.above = between(made_.edges[i + 1], static_cast<double>(c), static_cast<double>(c) + 1);
        outline.side_before = sides.heights[c];
        outline.side_after = sides.heights[c + 1];
        const double height = (outline.side_before + outline.side_after) / 2;
        outline.slant_mm = made_.slant_stitches * made_.edges[i + 1].loop_width_mm *
                           std::min(1.0, height / gauge_.round_height_mm);
        const bool last = c + 1 == made_.rounds[i].cells.size();
        if (sides.node_after > 0 && last)
            outline.on_side_after = {made_.edges[i + 1].nodes.front().node, Vec2(0, sides.node_after)};
        if (sides.node_before > 0 && c == 0)
            outline.on_side_before = {made_.edges[i].nodes.back().node, Vec2(0, sides.node_before)};
        // At both folds of a seam the diagonals run the same way, or one triangle would lie on another.
        const bool at_seam = made_.sewn && i + 1 == last_edge();
        add_cell_triangles(outline, at_seam || (i + c) % 2 == 0, made_.problem.triangles);
        if (cell.stitch >= 0 && worked_into_one_loop(i, cell)) add_crease(outline.below);
    }

    bool worked_into_one_loop(std::size_t i, const LaidStitch& cell) const {
        const auto& stitches = graph_.rounds[i].stitches;
        return stitches[static_cast<std::size_t>(cell.stitch)].stitch.part != LoopPart::both;
    }

    void add_crease(const std::vector<CellCorner>& line) {
        for (std::size_t k = 1; k < line.size(); ++k)
            made_.problem.creases.push_back(std::minmax(line[k - 1].node, line[k].node));
    }

    void add_fan() {
        const CellEdge& edge = made_.edges.back();
        const std::int32_t pole = nodes_++;
        made_.pole_above = pole;
        for (std::size_t k = 0; k + 1 < edge.nodes.size(); ++k) {
            const double width = (edge.nodes[k + 1].at - edge.nodes[k].at) * edge.loop_width_mm;
            made_.problem.triangles.push_back(
                {{edge.nodes[k].node, pole, edge.nodes[k + 1].node},
                 {Vec2(width / 2, 0), Vec2(0, gauge_.stitch_width_mm / 2), Vec2(-width / 2, 0)}});
        }
    }

    struct Place {
        double at = 0;
        std::int32_t number = 0;
    };

    const Piece& piece_;
    const StitchGraph& graph_;
    const Gauge& gauge_;
    const YieldedShares& yielded_;
    StitchCells made_;
    bool ring_ = false, drawn_ = false;
    double fold_ = 0;  ///< where the last edge is folded, in loops
    std::vector<std::map<std::int64_t, Place>> places_;
    NodeClasses classes_;
    std::int32_t nodes_ = 0;
};

}  // namespace

bool StitchCells::closed() const {
    const bool below = pole_below || around_chain;
    return !rows && below && (pole_above || sewn);
}

StitchCells stitch_cells(const Piece& piece, const StitchGraph& graph, const Gauge& gauge,
                         const YieldedShares& yielded, double slant_stitches) {
    // A seam is folded where the stitches allow it, if that is not just at the side.
    StitchCells made;
    for (const double fold_moved : {0.0, 0.5, -0.5, 1.0, -1.0, 1.5, -1.5}) {
        made = Builder(piece, graph, gauge, yielded, slant_stitches, fold_moved).build();
        if (!made.sewn || made.refusal != CellsRefusal::touches_itself) break;
    }
    return made;
}

YieldedShares yielded_shares(const ShapeProblem& problem) {
    YieldedShares shares;
    const bool sheet = problem.equivalent_round && problem.first != MeridianEnd::drawn_closed;
    if (problem.area_stretch > 0 || sheet || !can_lie_flat(problem)) return shares;
    const bool oval = starts_oval(problem);
    const ShapeProblem yielded = yielded_flat(oval ? ends_as_disc(problem) : problem).problem;
    const auto share = [](double now, double before) { return now > 0 && before > 0 ? now / before : 1; };
    for (std::size_t i = 0; i < problem.rest_loop_mm.size() && !oval; ++i)
        shares.loops.push_back(share(yielded.rest_loop_mm[i], problem.rest_loop_mm[i]));
    for (std::size_t i = 0; i < problem.rest_height_mm.size(); ++i)
        shares.heights.push_back(share(yielded.rest_height_mm[i], problem.rest_height_mm[i]));
    return shares;
}

}  // namespace roundwright
