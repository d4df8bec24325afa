#pragma once

#include <optional>

#include "core/language/pattern/pattern_lines.h"
#include "core/language/round/read_round.h"
#include "core/toy/toy.h"

namespace roundwright {

/// How a piece starts, as a line before its first round says it: "Ch 7.", "Ch 4, sl st to form a ring",
/// "Make a magic ring".
struct SaidStart {
    const PatternLine* line = nullptr;
    int chains = 0;
    std::optional<RingKind> ring;
    int from_hook = 0;
    bool both_sides = false;
    std::optional<WorkedOn> worked_on{};  ///< "Go on around the edge of ..."
};

/// The start that a line says; none when it makes stitches too.
[[nodiscard]] std::optional<SaidStart> said_start(const PatternLine& line, const ReadRound& read);

/// The start of a piece, from what a line before said of it and what its first round says.
[[nodiscard]] Start start_of(const SaidStart& said, const RoundSyntax& first_round);

}  // namespace roundwright
