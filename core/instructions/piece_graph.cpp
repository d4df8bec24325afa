#include "core/instructions/piece_graph.h"

#include <algorithm>

#include "core/base/limits.h"
#include "core/instructions/even_spacing.h"

namespace roundwright {
namespace {

template <class... Cases>
struct Overload : Cases... {
    using Cases::operator()...;
};
// Clang 14 does not deduce an aggregate's arguments of itself.
template <class... Cases>
Overload(Cases...) -> Overload<Cases...>;

// Both sides of every chain of an oval hold a loop: out along one side, back along the other.
int foundation_loops(const Start& start) {
    return std::visit(Overload{[](const MagicRing&) { return 0; }, [](const ChainRing&) { return 0; },
                               [](const OpenTube& tube) { return std::max(tube.chains, 0); },
                               [](const OvalChain& oval) { return 2 * std::max(oval.chains, 0); }},
                      start);
}

class Builder {
  public:
    explicit Builder(const Piece& piece) {
        result_.graph.foundation_loops =
            std::min(foundation_loops(piece.start), static_cast<int>(max_stitches_per_piece));
        loops_ = result_.graph.foundation_loops;
        for (const Round& round : piece.rounds) add(round);
    }

    PieceGraph take() { return std::move(result_); }

  private:
    void add(const Round& round) {
        const auto yarn = static_cast<std::uint16_t>(std::min<std::size_t>(round.yarn, 65'535));
        std::visit(Overload{[&](const WorkedEvenly& even) { add_even(even, yarn); },
                            [&](const AsWritten& written) { add_written(written, yarn); }},
                   round.working);
    }

    void add_even(WorkedEvenly even, std::uint16_t yarn) {
        const int room = static_cast<int>(max_stitches_per_piece) - stitches_;
        if (even.stitches > room) {
            problem(even.stitches);
            even.stitches = room;
        }
        if (has_places(loops_, even.stitches) && even.spacing == Spacing::staggered) phase_ = other(phase_);
        push(even_round(even, loops_, phase_, yarn));
    }

    void add_written(const AsWritten&, std::uint16_t yarn) {
        problem(0);
        WorkedEvenly even;
        even.stitches = loops_;
        push(even_round(even, loops_, phase_, yarn));
    }

    void push(GraphRound round) {
        stitches_ += static_cast<int>(round.stitches.size());
        loops_ = round.loops_left;
        result_.graph.rounds.push_back(std::move(round));
    }

    void problem(int found) {
        result_.problems.push_back(
            {static_cast<int>(result_.graph.rounds.size()), TextSpan{}, loops_, found});
    }

    static SpacingPhase other(SpacingPhase phase) {
        return phase == SpacingPhase::at_end ? SpacingPhase::at_middle : SpacingPhase::at_end;
    }

    PieceGraph result_;
    int loops_ = 0;
    int stitches_ = 0;
    SpacingPhase phase_ = SpacingPhase::at_end;
};

}  // namespace

PieceGraph piece_graph(const Piece& piece) { return Builder(piece).take(); }

std::vector<int> stitch_counts(const StitchGraph& graph) {
    std::vector<int> counts;
    counts.reserve(graph.rounds.size());
    for (const GraphRound& round : graph.rounds) counts.push_back(round.loops_left);
    return counts;
}

}  // namespace roundwright
