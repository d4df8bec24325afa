#pragma once

#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/base/limits.h"
#include "core/language/pattern/likeness.h"
#include "core/language/pattern/pattern_lines.h"
#include "core/language/pattern/read_pattern.h"
#include "core/language/round/read_round.h"

namespace roundwright {

/// What the readers of one pattern share: what has been understood so far, its yarns, and what may still be
/// spent, so that no text keeps the reader waiting.
struct ReadingState {
    using TokenList = std::shared_ptr<const std::vector<Token>>;
    /// The words of a piece's rounds, by the number that the text gives them.
    using WordsOfRounds = std::map<int, TokenList>;

    ReadPattern out;
    std::vector<WordsOfRounds> words_of_pieces;  ///< of those that have ended
    std::vector<NameWords> names_of_pieces;      ///< of those that have begun
    YarnTable yarns;
    bool find_mends = true;
    MendBudget mends{800'000};
    int trial_effort = 1'000'000;  ///< stitches that may still be worked to find out what a line is
    int next_effort = 1'000'000;   ///< the same, to find out what the rounds after a doubtful one need
    int rounds = 0;                ///< of all pieces
    int stitches = 0;
    bool full = false;  ///< a limit of the text was met and said: the rounds that follow are passed over

    int piece_index() const { return static_cast<int>(out.pieces.size()); }

    /// The first few of a kind are listed; the last of these says how many more there are.
    void report(ReadDiagnostic diagnostic) {
        constexpr int most_listed = 20;
        Kind& kind = kinds[{diagnostic.code, diagnostic.severity}];
        if (kind.listed == most_listed) {
            ++out.diagnostics[kind.last].more;
            return;
        }
        ++kind.listed;
        kind.last = out.diagnostics.size();
        out.diagnostics.push_back(std::move(diagnostic));
    }

    /// Whether the text may hold another round; when not, that is said once.
    bool room_in_text(const PatternLine& line) {
        constexpr int most_rounds = static_cast<int>(max_rounds_per_text);
        constexpr int most_stitches = static_cast<int>(max_stitches_per_text);
        if (full) return false;
        if (rounds < most_rounds && stitches < most_stitches) return true;
        const bool by_rounds = rounds >= most_rounds;
        report({.code = by_rounds ? ReadCode::rounds_of_text : ReadCode::stitches_of_text,
                .where = line.header,
                .piece = piece_index(),
                .expected = by_rounds ? most_rounds : most_stitches,
                .found = by_rounds ? most_rounds + 1 : stitches});
        full = true;
        return false;
    }

    /// Adds a line to the review; `piece` -1: it belongs to none.
    ReadLine& show(ReadLineKind kind, const PatternLine& line, int piece, std::string understood) {
        ReadLine shown;
        shown.kind = kind;
        shown.first_line = line.first_line;
        shown.last_line = line.last_line;
        shown.piece = piece;
        shown.understood = std::move(understood);
        out.lines.push_back(std::move(shown));
        return out.lines.back();
    }

  private:
    struct Kind {
        int listed = 0;
        std::size_t last = 0;  // among the diagnostics
    };
    std::map<std::pair<ReadCode, Severity>, Kind> kinds;
};

}  // namespace roundwright
