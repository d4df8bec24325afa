#pragma once

#include <string>

#include "core/instructions/pattern_lines.h"
#include "core/instructions/read_pattern.h"
#include "core/instructions/read_round.h"

namespace roundwright {

/// What the readers of one pattern share: what has been understood so far, its yarns, and what may still be
/// spent, so that no text keeps the reader waiting.
struct ReadingState {
    ReadPattern out;
    YarnTable yarns;
    MendBudget mends{800'000};
    int trial_effort = 1'000'000;  ///< stitches that may still be worked to find out what a line is
    int rounds = 0;                ///< of all pieces
    int stitches = 0;
    bool full = false;  ///< a limit of the text was met and said: the rounds that follow are passed over

    int piece_index() const { return static_cast<int>(out.pieces.size()); }

    void report(ReadDiagnostic diagnostic) {
        constexpr std::size_t most = 10'000;
        if (out.diagnostics.size() < most) out.diagnostics.push_back(std::move(diagnostic));
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
};

}  // namespace roundwright
