#include "render/chart/chart_layout.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "core/stitches/stitch_measure.h"
#include "render/chart/chart_curve.h"
#include "render/chart/spaced_places.h"

namespace roundwright::render {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;
constexpr double number_gap = 0.9, ring_radius = 0.5, least_height = 0.55;

/// A loop on the edge as it was drawn.
struct EdgeLoop {
    QPointF at;
    double distance = 0;
    double share = 0;
};

double height_of(const Stitch& stitch) { return std::max(least_height, height_in_sc(stitch.kind)); }

class Layout {
  public:
    Layout(const Piece& piece, const StitchGraph& graph, const ChartPart& part)
        : graph_(graph),
          part_(clamped(part, graph)),
          in_rows_(piece.joining == Joining::rows),
          curve_(part_.first == 0 ? straight_of(piece) : 0, number_gap, part_.inwards) {
        layout_.in_rows = in_rows_;
        layout_.inwards = part_.inwards;
        layout_.repeats =
            in_rows_ || straight_of(piece) > 0 ? 1 : chart_repeats(graph, part_.first, part_.rounds);
        if (part_.first == 0 && !part_.inwards)
            start(piece);
        else
            start_on_round_below();
    }

    ChartLayout lay() {
        for (int i = part_.first; i < part_.first + part_.rounds; ++i) add_round(i);
        layout_.bounds = bounds();
        return std::move(layout_);
    }

  private:
    static ChartPart clamped(ChartPart part, const StitchGraph& graph) {
        const int rounds = static_cast<int>(graph.rounds.size());
        part.first = std::clamp(part.first, 0, rounds);
        part.rounds = std::clamp(part.rounds, 0, rounds - part.first);
        return part;
    }

    [[nodiscard]] int loops_before(int round) const {
        return round == 0 ? graph_.foundation_loops
                          : graph_.rounds[static_cast<std::size_t>(round - 1)].loops_left;
    }

    /// An edge with room for a stitch a loop, and, for a part that closes, for all its rounds within it.
    void start_on_round_below() {
        const int loops = loops_before(part_.first);
        start_distance_ = std::max(ring_radius, loops / two_pi);
        if (part_.inwards) {
            double heights = 0;
            for (int i = part_.first; i < part_.first + part_.rounds; ++i) {
                double tallest = 0;
                for (const auto& made : graph_.rounds[static_cast<std::size_t>(i)].stitches)
                    tallest = std::max(tallest, height_of(made.stitch));
                heights += tallest;
            }
            start_distance_ = std::max(0.9 * start_distance_, heights + ring_radius);
        }
        row_width_ = std::max(1, loops);
        layout_.start.kind = ChartStart::Kind::round_below;
        for (int loop = 0; loop < loops; ++loop) {
            edge_.push_back(loop_at((loop + 0.5) / loops, start_distance_, part_.first - 1));
            layout_.start.chains.push_back(edge_.back().at);
        }
    }

    static double straight_of(const Piece& piece) {
        const auto* oval = std::get_if<OvalChain>(&piece.start);
        return oval && piece.joining != Joining::rows ? std::max(0, oval->chains - 1) : 0;
    }

    ChartCurve::Place place(double share, double distance, int round) const {
        if (!in_rows_) return curve_.place(share, distance);
        // Row 1 goes from right to left, the next one back.
        const double x = (0.5 - share) * row_width_;
        return {{round % 2 == 0 || round < 0 ? x : -x, distance}, {0, 1}};
    }

    EdgeLoop loop_at(double share, double distance, int round) const {
        return {place(share, distance, round).at, distance, share};
    }

    void start(const Piece& piece) {
        int chains = graph_.foundation_loops;
        if (const auto* ring = std::get_if<ChainRing>(&piece.start)) chains = ring->chains;
        if (std::holds_alternative<OvalChain>(piece.start) && !in_rows_) {
            chains = std::get<OvalChain>(piece.start).chains;
            start_distance_ = 0.4;
        } else {
            start_distance_ = in_rows_ ? 0 : std::max(ring_radius, chains / two_pi);
        }
        row_width_ = std::max(1, graph_.foundation_loops);
        layout_.start.kind = std::holds_alternative<MagicRing>(piece.start)   ? ChartStart::Kind::magic_ring
                             : std::holds_alternative<ChainRing>(piece.start) ? ChartStart::Kind::chain_ring
                                                                              : ChartStart::Kind::chains;
        // What is worked on has the edges of other pieces below it, which are not of this chart.
        const bool on_edges = std::holds_alternative<WorkedOn>(piece.start);
        if (layout_.start.kind != ChartStart::Kind::magic_ring && !on_edges)
            lay_chains(chains, straight_of(piece));
        for (int loop = 0; loop < graph_.foundation_loops; ++loop)
            edge_.push_back(loop_at((loop + 0.5) / graph_.foundation_loops, start_distance_, -1));
    }

    void lay_chains(int chains, double straight) {
        for (int k = 0; k < chains; ++k) {
            const double share = (k + 0.5) / chains;
            if (straight > 0) {
                layout_.start.chains.emplace_back((0.5 - share) * (straight + 1), 0);
                layout_.start.along.emplace_back(1, 0);
                continue;
            }
            const double inset = start_distance_ - 0.2;
            const auto at =
                in_rows_ ? place(share, -0.25, 0) : curve_.place(share, std::max(0.2, inset), true);
            layout_.start.chains.push_back(at.at);
            layout_.start.along.emplace_back(-at.outward.y(), at.outward.x());
        }
    }

    /// The loops a stitch is worked into, as drawn; beyond the edge, the last one.
    std::vector<EdgeLoop> feet_of(const GraphRound& round, const GraphStitch& stitch, double share) const {
        if (stitch.stitch.feet == 0) return {};
        if (round.loops_below == 0 || edge_.empty()) return {loop_at(share, start_distance_, 0)};
        std::vector<EdgeLoop> feet;
        for (int k = 0; k < stitch.stitch.feet; ++k) {
            const int loop = round.first_below + stitch.first_foot + k;
            feet.push_back(
                edge_[static_cast<std::size_t>(std::clamp(loop, 0, static_cast<int>(edge_.size()) - 1))]);
        }
        return feet;
    }

    void add_round(int number) {
        const auto& round = graph_.rounds[static_cast<std::size_t>(number)];
        // Rows are turned: the next one meets the loops from their end.
        if (in_rows_ && number > part_.first) std::reverse(edge_.begin(), edge_.end());
        const Covered covered = covered_by(round);
        if (in_rows_) row_width_ = std::max(row_width_, static_cast<double>(covered.loops));
        std::vector<EdgeLoop> made;
        const Spread spread = spread_of(round, covered);
        double distance = covered.distance;
        for (std::size_t s = 0; s < round.stitches.size(); ++s) {
            if (loops_left(round.stitches[s].stitch) == 0) continue;
            const double share = spread.shares[made.size()];
            distance = add_stitch(round, number, s, share, distance);
            auto& stitch = layout_.stitches.back();
            stitch.width = in_rows_ ? row_width_ / covered.loops : curve_.length(distance) * spread.apart;
            made.push_back({stitch.head, distance, share});
        }
        if (!made.empty()) add_number(number, made.front());
        edge_.erase(edge_.begin() + covered.first, edge_.begin() + covered.after);
        edge_.insert(edge_.begin() + covered.first, made.begin(), made.end());
        add_edge(number, made, covered.whole);
    }

    /// The loops of the edge that a round is worked into.
    struct Covered {
        int first = 0;
        int after = 0;
        int own = 0;    ///< loops the round leaves
        int loops = 1;  ///< of the edge when it is done
        bool whole = true;
        double distance = 0;
    };

    [[nodiscard]] Covered covered_by(const GraphRound& round) const {
        const int size = static_cast<int>(edge_.size());
        Covered covered;
        covered.first = round.loops_below == 0 ? 0 : std::clamp(round.first_below, 0, size);
        covered.after = round.loops_below == 0
                            ? size
                            : std::clamp(covered.first + round.loops_below, covered.first, size);
        for (const auto& stitch : round.stitches) covered.own += loops_left(stitch.stitch);
        covered.whole = covered.after - covered.first == size;
        covered.loops = std::max(1, size - (covered.after - covered.first) + covered.own);
        covered.distance =
            covered.first < size ? edge_[static_cast<std::size_t>(covered.first)].distance : start_distance_;
        return covered;
    }

    /// Where a round's heads stand.
    struct Spread {
        std::vector<double> shares;
        double apart = 1;  ///< share that each has for itself
    };

    /// In the round each head stands as near above its feet as leaves it the room of a stitch.
    [[nodiscard]] Spread spread_of(const GraphRound& round, const Covered& covered) const {
        std::vector<double> even;
        for (int k = 0; k < covered.own; ++k) even.push_back((covered.first + k + 0.5) / covered.loops);
        if (in_rows_ || round.loops_below == 0 || even.empty()) return {even, 1.0 / covered.loops};
        const double length =
            curve_.length(std::max(ring_radius, covered.distance + (part_.inwards ? -1 : 1)));
        const auto wished = feet_shares(round, even);
        if (covered.whole) return spread_in_repeats(wished, std::min(1.0 / covered.loops, 1 / length));
        const auto share_of = [&](int loop) { return edge_[static_cast<std::size_t>(loop)].share; };
        const double low = covered.first > 0 ? share_of(covered.first - 1) : 0;
        const double high = covered.after < static_cast<int>(edge_.size()) ? share_of(covered.after) : 1;
        const double apart = std::min((high - low) / covered.own, 1 / length);
        return {spaced_places(wished, apart, low + apart / 2, high - apart / 2), apart};
    }

    /// Parts of the turn that repeat are spread one by one, so that they stay alike.
    [[nodiscard]] Spread spread_in_repeats(const std::vector<double>& wished, double apart) const {
        Spread spread{{}, apart};
        const auto parts = layout_.repeats;
        const auto of_part = static_cast<std::ptrdiff_t>(wished.size()) / parts;
        for (int part = 0; part < parts; ++part) {
            const auto from = wished.begin() + part * of_part;
            const auto placed =
                spaced_places({from, from + of_part}, apart, static_cast<double>(part) / parts + apart / 2,
                              static_cast<double>(part + 1) / parts - apart / 2);
            spread.shares.insert(spread.shares.end(), placed.begin(), placed.end());
        }
        return spread;
    }

    /// The middle of the feet of every stitch that leaves a loop; of a chain, of the stitch before it.
    [[nodiscard]] std::vector<double> feet_shares(const GraphRound& round,
                                                  const std::vector<double>& even) const {
        std::vector<double> shares;
        for (const auto& stitch : round.stitches) {
            if (loops_left(stitch.stitch) == 0) continue;
            const double otherwise = shares.empty() ? even.front() : shares.back();
            const auto feet = feet_of(round, stitch, otherwise);
            double sum = 0;
            for (const auto& foot : feet) sum += foot.share;
            shares.push_back(feet.empty() ? otherwise : sum / static_cast<double>(feet.size()));
        }
        return shares;
    }

    /// Gives the distance of its head.
    double add_stitch(const GraphRound& round, int number, std::size_t s, double share, double distance) {
        const auto& made = round.stitches[s];
        const auto feet = feet_of(round, made, share);
        ChartStitch stitch;
        stitch.round = number;
        stitch.stitch = static_cast<int>(s);
        stitch.made = made.stitch;
        stitch.share = share;
        stitch.shares_foot = made.stitch.same_foot ||
                             (s + 1 < round.stitches.size() && round.stitches[s + 1].stitch.same_foot);
        double below = 0;
        for (const auto& foot : feet) {
            stitch.feet.push_back(foot.at);
            below += foot.distance / static_cast<double>(feet.size());
        }
        // A chain goes on at the height of the stitch before it.
        const double way = part_.inwards ? -1 : 1;
        const double head = feet.empty() ? distance : std::max(0.15, below + way * height_of(made.stitch));
        const auto at = place(share, head, number);
        stitch.head = at.at;
        stitch.outward = way * at.outward;
        layout_.stitches.push_back(std::move(stitch));
        return head;
    }

    void add_number(int number, const EdgeLoop& first) {
        const double distance = std::max(0.0, first.distance + (part_.inwards ? 0.5 : -0.5));
        if (in_rows_) {
            const double x = row_width_ / 2 + 0.7;
            layout_.numbers.push_back({number, {number % 2 == 0 ? x : -x, distance}});
            return;
        }
        // In the middle of the gap: just before the round's first share.
        const auto at = curve_.place(0, distance);
        layout_.numbers.push_back({number, {at.at.x(), 0}});
    }

    void add_edge(int number, const std::vector<EdgeLoop>& made, bool whole) {
        ChartEdge edge;
        edge.round = number;
        edge.whole = whole;
        std::vector<EdgeLoop> loops = made;
        if (whole && !in_rows_ && !made.empty()) {  // as far as the gap for the numbers
            loops.insert(loops.begin(), loop_at(0, made.front().distance, number));
            loops.push_back(loop_at(1, made.back().distance, number));
        }
        for (std::size_t i = 0; i < loops.size(); ++i) {
            edge.line.push_back(loops[i].at);
            if (!in_rows_ && i + 1 < loops.size()) add_between(edge.line, loops[i], loops[i + 1]);
        }
        layout_.edges.push_back(std::move(edge));
    }

    /// Places along the loop between two heads further apart than a stitch and than a curve through them
    /// bears.
    void add_between(std::vector<QPointF>& line, const EdgeLoop& from, const EdgeLoop& to) const {
        constexpr double least_step = 1.2, turn_of_step = 0.3;
        const double share = to.share - from.share, distance = to.distance - from.distance;
        const double step = std::max(least_step, turn_of_step * from.distance);
        const int steps = static_cast<int>(std::lround(share * curve_.length(from.distance) / step));
        for (int k = 1; k < steps; ++k) {
            const double part = static_cast<double>(k) / steps;
            line.push_back(curve_.place(from.share + part * share, from.distance + part * distance).at);
        }
    }

    QRectF bounds() const {
        QRectF found(-ring_radius, -ring_radius, 2 * ring_radius, 2 * ring_radius);
        const auto include = [&](const QPointF& p) {
            found = found.united(QRectF(p.x() - 0.3, p.y() - 0.3, 0.6, 0.6));
        };
        for (const auto& stitch : layout_.stitches) include(stitch.head);
        for (const auto& number : layout_.numbers) include(number.place);
        for (const auto& chain : layout_.start.chains) include(chain);
        return found;
    }

    const StitchGraph& graph_;
    ChartPart part_;
    bool in_rows_;
    ChartCurve curve_;
    double start_distance_ = ring_radius;
    double row_width_ = 1;
    std::vector<EdgeLoop> edge_;
    ChartLayout layout_;
};

bool divides(const GraphRound& round, int parts) {
    const int stitches = static_cast<int>(round.stitches.size());
    if (stitches % parts != 0 || round.loops_below % parts != 0) return false;
    const int apart = stitches / parts, loops_apart = round.loops_below / parts;
    for (int s = 0; s + apart < stitches; ++s) {
        const auto& one = round.stitches[static_cast<std::size_t>(s)];
        const auto& next = round.stitches[static_cast<std::size_t>(s + apart)];
        if (one.stitch != next.stitch) return false;
        if (round.loops_below > 0 && next.first_foot - one.first_foot != loops_apart) return false;
    }
    return true;
}

}  // namespace

int chart_repeats(const StitchGraph& graph, int first, int rounds) {
    if (rounds <= 0) return 1;
    const auto from = graph.rounds.begin() + first, to = from + rounds;
    int parts = first == 0 ? graph.foundation_loops : 0;
    for (auto round = from; round != to; ++round)
        parts = std::gcd(parts, static_cast<int>(round->stitches.size()));
    for (; parts > 1; --parts)
        if (std::all_of(from, to,
                        [&](const auto& round) { return round.first_below == 0 && divides(round, parts); }))
            return parts;
    return 1;
}

std::vector<ChartPart> chart_parts(const Piece& piece, const StitchGraph& graph) {
    const int rounds = static_cast<int>(graph.rounds.size());
    if (piece.joining == Joining::rows || rounds == 0) return {{0, rounds, false}};
    const auto loops = [&](int round) { return graph.rounds[static_cast<std::size_t>(round)].loops_left; };
    std::vector<ChartPart> parts{{0, 0, false}};
    int widest = 0, narrowest = 0;  // rounds of the part so far; of several alike, the last
    for (int i = 1; i < rounds; ++i) {
        if (loops(i) >= loops(widest)) widest = i;
        if (loops(i) <= loops(narrowest)) narrowest = i;
        const bool inwards = parts.back().inwards;
        const int turn = inwards ? narrowest : widest;
        const bool turned =
            inwards ? 3 * loops(i) >= 4 * loops(narrowest) : 3 * loops(i) <= 2 * loops(widest);
        if (!turned) continue;
        parts.back().rounds = turn + 1 - parts.back().first;
        parts.push_back({turn + 1, 0, !inwards});
        widest = narrowest = i;
    }
    parts.back().rounds = rounds - parts.back().first;
    return parts;
}

ChartLayout chart_layout(const Piece& piece, const StitchGraph& graph, const ChartPart& part) {
    return Layout(piece, graph, part).lay();
}

}  // namespace roundwright::render
