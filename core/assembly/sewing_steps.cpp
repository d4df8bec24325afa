#include "core/assembly/sewing_steps.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/assembly/join_tree.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/curled_strip.h"

namespace roundwright {
namespace {

bool begins_on(const Join& join, PieceId piece) {
    return join.seam == Seam::worked_on && ((join.onto.piece == piece && join.at.round < 0) ||
                                            (join.piece.piece == piece && join.end == JoinedEnd::start));
}

/// The copy whose last edge the piece of a worked-on join is begun on.
const PieceCopy& worked_first(const Join& join) {
    return join.end == JoinedEnd::start ? join.onto : join.piece;
}

bool open_at(const Piece& piece, JoinedEnd end) {
    if (end == JoinedEnd::end) return piece.end == End::left_open;
    return std::holds_alternative<OpenTube>(piece.start) || std::holds_alternative<WorkedOn>(piece.start);
}

int edge_stitches(const Piece& piece, const std::vector<int>& counts, JoinedEnd end) {
    if (end == JoinedEnd::end) return counts.empty() || piece.end == End::drawn_closed ? 0 : counts.back();
    return open_at(piece, end) ? foundation_loops(piece.start) : 0;
}

/// An edge pinned out to a ring about its place reaches so many rounds up and down.
std::optional<RoundSpan> covered(const SewingStep& step, int rounds, const Gauge& gauge) {
    if (step.seam != Seam::edge || step.place != SewnPlace::gap || step.edge_stitches < 3)
        return std::nullopt;
    const double radius_mm = step.edge_stitches * gauge.stitch_width_mm / (2 * std::numbers::pi);
    const int reach = static_cast<int>(std::lround(radius_mm / gauge.round_height_mm));
    if (reach < 1) return std::nullopt;
    return RoundSpan{std::max(1, step.round - reach + 1), std::min(rounds, step.round + reach)};
}

SewnPlace place_of(const Join& join, int rounds) {
    if (join.at.round < 0) return SewnPlace::start;
    if (join.at.round >= rounds - 1) return SewnPlace::last_edge;
    return join.at.around ? SewnPlace::around : SewnPlace::gap;
}

class StepWriter {
  public:
    StepWriter(const Toy& toy, RoundCounts counts, const Gauge& gauge)
        : toy_(toy), counts_(counts), gauge_(gauge), tree_(join_tree(toy)) {}

    std::vector<SewingStep> steps() {
        std::vector<bool> done(toy_.joins.size(), false);
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < toy_.joins.size(); ++i)
            if (toy_.joins[i].seam == Seam::worked_on) order.push_back(i);
        add_from_the_tips(order);
        std::vector<SewingStep> all;
        for (const std::size_t join : order) {
            if (done[join]) continue;
            done[join] = true;
            if (holds(join) && is_there(toy_.joins[join])) all.push_back(step(join));
        }
        return all;
    }

  private:
    /// The tree has each copy after what it is joined to, generation by generation: backwards it goes from
    /// the tips in; within one generation the joins stay in their own order.
    void add_from_the_tips(std::vector<std::size_t>& order) const {
        std::vector<int> depth(tree_.copies.size(), 0);
        std::vector<std::pair<int, std::size_t>> sewn;
        for (std::size_t i = 0; i < tree_.copies.size(); ++i) {
            const JoinedCopy& copy = tree_.copies[i];
            if (!copy.join) continue;
            depth[i] = depth[*copy.onto] + 1;
            sewn.emplace_back(-depth[i], *copy.join);
        }
        std::ranges::sort(sewn);
        for (const auto& [generation, join] : sewn) order.push_back(join);
    }

    [[nodiscard]] bool holds(std::size_t join) const {
        return std::ranges::any_of(tree_.copies, [&](const JoinedCopy& copy) { return copy.join == join; });
    }

    [[nodiscard]] bool is_there(const Join& join) const {
        const auto onto = toy_.pieces.index_of(join.onto.piece);
        return onto && join.at.round < static_cast<int>(counts_[*onto].size());
    }

    [[nodiscard]] int copies_of(std::size_t join) const {
        return static_cast<int>(
            std::ranges::count_if(tree_.copies, [&](const JoinedCopy& copy) { return copy.join == join; }));
    }

    [[nodiscard]] SewingStep step(std::size_t index) const {
        const Join& join = toy_.joins[index];
        SewingStep step;
        step.join = index;
        step.piece = *toy_.pieces.index_of(join.piece.piece);
        step.onto = *toy_.pieces.index_of(join.onto.piece);
        step.copies = copies_of(index);
        step.first_copy = join.piece.copy;
        step.seam = join.seam;
        const Piece& piece = toy_.pieces[step.piece];
        const Piece& onto = toy_.pieces[step.onto];
        const std::vector<int>& below = counts_[step.onto];
        const int rounds = static_cast<int>(below.size());
        step.place = place_of(join, rounds);
        step.round = join.at.round + 1;
        step.curls = curls(piece, counts_[step.piece]);
        step.open = !step.curls && open_at(piece, join.end);
        step.edge_stitches = step.curls ? 0 : edge_stitches(piece, counts_[step.piece], join.end);
        step.onto_open = (step.place == SewnPlace::start && open_at(onto, JoinedEnd::start)) ||
                         (step.place == SewnPlace::last_edge && open_at(onto, JoinedEnd::end));
        step.onto_stitches =
            step.round > 0 ? below[static_cast<std::size_t>(step.round - 1)] : foundation_loops(onto.start);
        step.stitches_right = to_the_right(join.at.stitches_right, step.onto_stitches);
        if (step.copies > 1) step.stitches_right = std::abs(step.stitches_right);
        step.stuffed_first = piece.area_stretch > 0 && step.open && join.seam != Seam::worked_on;
        step.covers = covered(step, rounds, gauge_);
        return step;
    }

    /// The same place by the shorter way round.
    [[nodiscard]] static double to_the_right(double stitches, int count) {
        return count > 0 ? std::remainder(stitches, static_cast<double>(count)) : stitches;
    }

    const Toy& toy_;
    RoundCounts counts_;
    const Gauge& gauge_;
    JoinTree tree_;
};

}  // namespace

std::vector<SewingStep> sewing_steps(const Toy& toy, RoundCounts counts, const Gauge& gauge) {
    return StepWriter(toy, counts, gauge).steps();
}

std::vector<PieceCopy> worked_on_edges(const Toy& toy, std::size_t piece) {
    std::vector<PieceCopy> edges;
    if (!std::holds_alternative<WorkedOn>(toy.pieces[piece].start)) return edges;
    const auto add = [&](const PieceCopy& copy) {
        const auto index = toy.pieces.index_of(copy.piece);
        const bool there = index && *index != piece && copy.copy < toy.pieces[*index].make;
        if (there && std::ranges::find(edges, copy) == edges.end()) edges.push_back(copy);
    };
    for (const Join& join : toy.joins) {
        if (!begins_on(join, toy.pieces.id(piece))) continue;
        add(worked_first(join));
        if (join.pair && join.end == JoinedEnd::end) add({join.piece.piece, join.piece.copy + 1});
    }
    return edges;
}

std::optional<std::size_t> goes_on_as(const Toy& toy, std::size_t piece) {
    const PieceId id = toy.pieces.id(piece);
    for (const Join& join : toy.joins) {
        if (join.seam != Seam::worked_on || worked_first(join).piece != id) continue;
        const auto later =
            toy.pieces.index_of(join.end == JoinedEnd::start ? join.piece.piece : join.onto.piece);
        if (later && *later != piece) return later;
    }
    return std::nullopt;
}

std::optional<int> loops_of_edges(const Toy& toy, std::size_t piece, RoundCounts counts) {
    const auto* start = std::get_if<WorkedOn>(&toy.pieces[piece].start);
    const std::vector<PieceCopy> edges = worked_on_edges(toy, piece);
    if (start == nullptr || edges.empty()) return std::nullopt;
    int loops = 0;
    for (const PieceCopy& edge : edges) {
        const std::vector<int>& rounds = counts[*toy.pieces.index_of(edge.piece)];
        loops += rounds.empty() ? 0 : rounds.back();
    }
    // From two edges on, chains lead out and back; each is worked over on both sides.
    const int gaps = static_cast<int>(edges.size()) - 1;
    return loops + 2 * gaps * start->chains_between;
}

std::vector<std::size_t> working_order(const Toy& toy) {
    std::vector<std::size_t> order;
    std::vector<bool> begun(toy.pieces.size(), false);
    const auto put = [&](auto& self, std::size_t piece) -> void {
        if (begun[piece]) return;
        begun[piece] = true;
        for (const PieceCopy& edge : worked_on_edges(toy, piece))
            self(self, *toy.pieces.index_of(edge.piece));
        order.push_back(piece);
    };
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) put(put, i);
    return order;
}

}  // namespace roundwright
