#include "core/rounds/piece_graph.h"

#include <algorithm>
#include <atomic>
#include <cstdint>
#include <utility>

#include "core/base/limits.h"
#include "core/language/round/write.h"

namespace roundwright {
namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);

template <class... Cases>
struct Overload : Cases... {
    using Cases::operator()...;
};
// Clang 14 does not deduce an aggregate's arguments of itself.
template <class... Cases>
Overload(Cases...) -> Overload<Cases...>;

std::atomic<std::uint64_t> derived{0};

int yarn_index(std::size_t yarn) { return static_cast<int>(std::min<std::size_t>(yarn, 65'535)); }

// The maker's words are kept when they say the same without what stood around them.
bool reads_alike(const ReadRound& reading, const RoundBelow& below, int yarn) {
    RoundSetting setting = below.setting(yarn, Terms::us);
    setting.find_mends = false;
    YarnTable yarns;
    const ReadRound again = read_round(reading.words, setting, yarns);
    return again.proved() && again.made == reading.made;
}

std::string canonical(const GraphRound& made, const RoundBelow& below) {
    StitchGraph graph;
    graph.foundation_loops = below.loops;
    graph.rounds.push_back(made);
    return round_words(graph, 0, Terms::us);
}

// A round for which there is no room leaves the edge as it is.
GraphRound unworked_round(int loops) {
    GraphRound round;
    round.loops_left = loops;
    return round;
}

class Builder {
  public:
    Builder(const Piece& piece, std::size_t rounds) : below_(RoundBelow::start(piece.start)) {
        ++derived;
        result_.graph.foundation_loops = below_.loops;
        for (std::size_t i = 0; i < std::min(rounds, piece.rounds.size()); ++i) add(piece.rounds[i]);
    }

    PieceGraph take() { return std::move(result_); }
    const RoundBelow& below() const { return below_; }

  private:
    void add(const Round& round) {
        const int yarn = yarn_index(round.yarn);
        std::visit(Overload{[&](const WorkedEvenly& even) { add_even(even, yarn); },
                            [&](const AsWritten& written) { add_written(written, yarn); }},
                   round.working);
    }

    void add_even(WorkedEvenly even, int yarn) {
        const int room = most_stitches - below_.stitches_so_far;
        if (even.stitches > room) {
            problem({ReadCode::too_many_stitches,
                     Severity::error,
                     {},
                     -1,
                     -1,
                     most_stitches,
                     even.stitches,
                     {},
                     {}});
            if (room <= 0) return push(unworked_round(below_.loops), nullptr);
            even.stitches = room;
        }
        if (even.kind == StitchKind::skip)
            problem({ReadCode::no_stitches, Severity::error, {}, -1, -1, 0, 0, {}, {}});
        const SpacingPhase phase = phase_of(even, below_.loops, below_.phase);
        push(even_round(even, below_.loops, phase, static_cast<std::uint16_t>(yarn)), &even);
    }

    void add_written(const AsWritten& written, int yarn) {
        RoundSetting setting = below_.setting(yarn, Terms::us);
        setting.find_mends = false;
        YarnTable yarns;
        ReadRound read = read_round(written.words, setting, yarns);
        for (const ReadDiagnostic& d : read.diagnostics)
            if (d.severity == Severity::error) problem(d);
        push(std::move(read.made), nullptr);
    }

    void push(GraphRound round, const WorkedEvenly* working) {
        below_.add(round, working);
        result_.graph.rounds.push_back(std::move(round));
    }

    void problem(const ReadDiagnostic& d) {
        RoundProblem problem;
        problem.round = static_cast<int>(result_.graph.rounds.size());
        problem.where = d.where;
        problem.expected = d.expected;
        problem.found = d.found;
        problem.code = d.code;
        problem.arguments = d.arguments;
        result_.problems.push_back(std::move(problem));
    }

    PieceGraph result_;
    RoundBelow below_;
};

}  // namespace

int foundation_loops(const Start& start) {
    const auto held = [](int chains) { return std::clamp(chains, 0, most_stitches); };
    return std::visit(Overload{[](const MagicRing&) { return 0; }, [](const ChainRing&) { return 0; },
                               [&](const OpenTube& tube) { return held(tube.chains); },
                               [&](const OvalChain& oval) { return 2 * held(oval.chains); },
                               [&](const WorkedOn& on) { return held(on.stitches); }},
                      start);
}

RoundBelow RoundBelow::start(const Start& start) {
    RoundBelow below;
    below.loops = foundation_loops(start);
    below.into_ring = below.loops == 0;
    if (const auto* oval = std::get_if<OvalChain>(&start)) below.oval_chains = oval->chains;
    return below;
}

RoundBelow RoundBelow::before(const Piece& piece, const StitchGraph& graph, std::size_t round) {
    RoundBelow below = start(piece.start);
    for (std::size_t i = 0; i < std::min({round, piece.rounds.size(), graph.rounds.size()}); ++i) {
        const GraphRound& made = graph.rounds[i];
        const auto* said = std::get_if<WorkedEvenly>(&piece.rounds[i].working);
        WorkedEvenly even = said != nullptr ? *said : WorkedEvenly{};
        even.stitches = static_cast<int>(made.stitches.size());  // fewer than said where room ran out
        below.add(made, said != nullptr && even.stitches > 0 ? &even : nullptr);
    }
    return below;
}

void RoundBelow::add(const GraphRound& round, const WorkedEvenly* working) {
    if (working != nullptr) phase = phase_of(*working, loops, phase);
    loops = round.loops_left;
    into_ring = false;
    oval_chains = 0;
    stitches_so_far += static_cast<int>(round.stitches.size());
    const auto worked =
        std::find_if(round.stitches.begin(), round.stitches.end(), [](const GraphStitch& made) {
            return made.stitch.kind != StitchKind::chain && made.stitch.kind != StitchKind::skip &&
                   made.stitch.kind != StitchKind::slip_stitch && made.stitch.kind != StitchKind::bobble;
        });
    if (worked != round.stitches.end()) even = worked->stitch.kind;
}

RoundSetting RoundBelow::setting(int yarn, Terms terms) const {
    RoundSetting setting;
    setting.work.loops_below = loops;
    setting.work.into_ring = into_ring;
    setting.work.oval_chains = oval_chains;
    setting.work.yarn = yarn;
    setting.work.most_stitches = std::max(0, most_stitches - stitches_so_far);
    setting.terms = terms;
    setting.even = even;
    return setting;
}

std::optional<int> only_yarn(const GraphRound& round) {
    std::optional<int> yarn;
    for (const GraphStitch& made : round.stitches) {
        if (made.stitch.kind == StitchKind::skip) continue;
        if (yarn && *yarn != made.stitch.yarn) return std::nullopt;
        yarn = made.stitch.yarn;
    }
    return yarn;
}

std::variant<WorkedEvenly, AsWritten> working_of(const ReadRound& reading, const RoundBelow& below,
                                                 int yarn) {
    if (reading.proved()) {
        const auto even = as_worked_evenly(reading.made, below.phase, static_cast<std::uint16_t>(yarn));
        if (even) return *even;
        if (!reads_alike(reading, below, yarn)) return AsWritten{canonical(reading.made, below)};
    }
    return AsWritten{reading.words};
}

ReadCell read_cell(const Piece& piece, std::size_t round, std::string_view words, Terms terms,
                   YarnTable& yarns) {
    const Round there = round < piece.rounds.size() ? piece.rounds[round] : Round{};
    return read_cell(there, Builder(piece, round).below(), words, terms, yarns);
}

ReadCell read_cell(Round round, const RoundBelow& below, std::string_view words, Terms terms,
                   YarnTable& yarns) {
    ReadCell cell;
    cell.round = std::move(round);
    int yarn = yarn_index(cell.round.yarn);
    cell.reading = read_round(words, below.setting(yarn, terms), yarns);
    yarn = only_yarn(cell.reading.made).value_or(yarn);
    cell.round.yarn = static_cast<std::size_t>(yarn);
    cell.round.working = working_of(cell.reading, below, yarn);
    if (!cell.reading.note.empty()) cell.round.note = cell.reading.note;
    return cell;
}

namespace {

int yarn_of(const Piece& piece, std::size_t round) {
    return round < piece.rounds.size() ? yarn_index(piece.rounds[round].yarn) : 0;
}

}  // namespace

RoundSetting cell_setting(const Piece& piece, std::size_t round, Terms terms) {
    return Builder(piece, round).below().setting(yarn_of(piece, round), terms);
}

RoundSetting cell_setting(const Piece& piece, const StitchGraph& graph, std::size_t round, Terms terms) {
    return RoundBelow::before(piece, graph, round).setting(yarn_of(piece, round), terms);
}

PieceGraph piece_graph(const Piece& piece) { return Builder(piece, piece.rounds.size()).take(); }

std::uint64_t graphs_derived() { return derived; }

bool same_stitches(const Piece& a, const Piece& b) {
    return a.start == b.start && std::ranges::equal(a.rounds, b.rounds, [](const Round& x, const Round& y) {
               return x.working == y.working && x.yarn == y.yarn;
           });
}

const PieceGraph& SharedGraph::get() const {
    std::call_once(derived_, [this] { graph_ = piece_graph(*piece_); });
    return graph_;
}

std::vector<int> stitch_counts(const StitchGraph& graph) {
    std::vector<int> counts;
    counts.reserve(graph.rounds.size());
    for (const GraphRound& round : graph.rounds) counts.push_back(round.loops_left);
    return counts;
}

}  // namespace roundwright
