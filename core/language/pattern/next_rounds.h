#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/language/pattern/pattern_lines.h"
#include "core/language/round/read_round.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {

/// The rounds that a pattern has after a doubtful one: what they need tells what it makes. They are read for
/// that alone; time grows with the rounds looked at, a few for each question.
class NextRounds {
  public:
    /// `lines`: those after the doubtful round's, which outlive this. `effort`: stitches and tokens that may
    /// still be spent, and are taken off.
    NextRounds(std::span<const PatternLine> lines, Terms terms, const YarnTable& yarns, int& effort);

    /// How well the rounds come out when `below` is what they stand on.
    struct Fit {
        int proved = 0;  ///< rounds that say so by their loops or their count, up to the first that does not
        bool fails = false;  ///< a round was met that does not come out
        friend auto operator<=>(const Fit& a, const Fit& b) {
            return a.proved != b.proved ? a.proved <=> b.proved : b.fails <=> a.fails;
        }
        friend bool operator==(const Fit&, const Fit&) = default;
    };
    [[nodiscard]] Fit fit(RoundBelow below);

    /// The stitches that the first of them which says so is worked over.
    [[nodiscard]] std::optional<int> needed(const RoundBelow& below);

    [[nodiscard]] bool none() const { return lines_.empty(); }

  private:
    ReadRound read_on(const PatternLine& line, const RoundBelow& below, int loops);
    std::optional<int> loops_of(const PatternLine& line, const RoundBelow& below);
    std::optional<int> loops_around(const PatternLine& line, const RoundBelow& below, const ReadRound& first);

    std::vector<const PatternLine*> lines_;
    Terms terms_;
    const YarnTable& yarns_;
    int& effort_;
};

}  // namespace roundwright
