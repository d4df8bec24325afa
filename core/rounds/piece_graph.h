#pragma once

#include <cstdint>
#include <memory>
#include <mutex>
#include <vector>

#include "core/base/diagnostic.h"
#include "core/base/text_span.h"
#include "core/language/round/even_spacing.h"
#include "core/language/round/read_round.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// The stitches of every round of a piece, with what is wrong in them. A round whose words cannot be read, or
/// whose loops do not come out, is given as far as it goes and named in `problems`, so that the rounds after
/// it, and the shape, are still there: it is cut where the loops below run out, and loops that it leaves
/// untaken are skipped. Feet are counted along the loops in the order they are met; in a piece worked in rows
/// that is from the end of the row below.
struct RoundProblem {
    int round = 0;     ///< from 0
    TextSpan where;    ///< in the round's own words; empty for an evenly worked round
    int expected = 0;  ///< loops the round below has, or what `code` says
    int found = 0;     ///< loops the words take, or what `code` says
    ReadCode code = ReadCode::loops_do_not_fit;
    std::vector<Argument> arguments;
};
struct PieceGraph {
    StitchGraph graph;
    std::vector<RoundProblem> problems;
};

[[nodiscard]] PieceGraph piece_graph(const Piece& piece);

/// How often the rounds of a piece were worked through so far, in whole or in part; for tests.
[[nodiscard]] std::uint64_t graphs_derived();

/// Whether two pieces have the same graph: their starts, and their rounds but for marks and notes, are alike.
[[nodiscard]] bool same_stitches(const Piece& a, const Piece& b);

/// The graph of a piece for all who need it, in any thread: derived once, for whoever asks first.
class SharedGraph {
  public:
    explicit SharedGraph(std::shared_ptr<const Piece> piece) : piece_(std::move(piece)) {}

    [[nodiscard]] const Piece& piece() const { return *piece_; }
    [[nodiscard]] const PieceGraph& get() const;

  private:
    std::shared_ptr<const Piece> piece_;
    mutable std::once_flag derived_;
    mutable PieceGraph graph_;
};

/// Loops that round 1 is worked over: the chains of an open tube, both sides of those of an oval (out along
/// one side, back along the other, the loops of a chain's two sides standing at either end), the edges that
/// it is worked on; none for a ring.
[[nodiscard]] int foundation_loops(const Start& start);

/// What the next round of a piece stands on.
struct RoundBelow {
    int loops = 0;
    bool into_ring = false;
    int oval_chains = 0;
    SpacingPhase phase = SpacingPhase::at_end;
    StitchKind even = StitchKind::single_crochet;  ///< stitch of the round below
    int stitches_so_far = 0;

    /// Before round 1.
    static RoundBelow start(const Start& start);
    /// Below round `round` (from 0) of a piece with this graph.
    static RoundBelow before(const Piece& piece, const StitchGraph& graph, std::size_t round);
    /// After a round, worked evenly or as written.
    void add(const GraphRound& round, const WorkedEvenly* working);
    [[nodiscard]] RoundSetting setting(int yarn, Terms terms) const;
};

/// One cell of the table: words for round `round` (from 0) of a piece, in `terms`. The round is as it is to
/// be stored: worked evenly when the words come to exactly that, in the maker's words otherwise (in US terms;
/// what was said besides is its note). The round's other properties are kept.
struct ReadCell {
    Round round;
    ReadRound reading;
};
[[nodiscard]] ReadCell read_cell(const Piece& piece, std::size_t round, std::string_view words, Terms terms,
                                 YarnTable& yarns);
/// The same, where it is known what the round stands on: `round` is the one the words are for.
[[nodiscard]] ReadCell read_cell(Round round, const RoundBelow& below, std::string_view words, Terms terms,
                                 YarnTable& yarns);

/// Where the words of round `round` (from 0) of a piece stand, as `read_cell` reads them.
[[nodiscard]] RoundSetting cell_setting(const Piece& piece, std::size_t round, Terms terms);
[[nodiscard]] RoundSetting cell_setting(const Piece& piece, const StitchGraph& graph, std::size_t round,
                                        Terms terms);

/// The yarn of a round that is worked in one; none when it changes yarn.
[[nodiscard]] std::optional<int> only_yarn(const GraphRound& round);

/// What is stored for a round that was read: `yarn` is the one it is worked in.
[[nodiscard]] std::variant<WorkedEvenly, AsWritten> working_of(const ReadRound& reading,
                                                               const RoundBelow& below, int yarn);

/// Stitches of each round when it is done; the same as the graph's `loops_left`.
[[nodiscard]] std::vector<int> stitch_counts(const StitchGraph& graph);

}  // namespace roundwright
