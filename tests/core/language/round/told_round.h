#pragma once

#include "core/language/round/read_round.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {

/// Stitches in a row as "2*sc inc dc^2 sk", each in its US abbreviation: a second stitch in the loop of the
/// one before "+", several loops taken "^2", loop parts "BLO" and "FLO", other yarns "y1", a foot that stands
/// elsewhere than after the foot before "@12".
[[nodiscard]] std::string told_stitches(const GraphRound& round);

[[nodiscard]] std::string told(const Argument& argument);

/// A diagnostic and its mends, with the words as they come out.
void tell(testing::RecordedText& text, const ReadDiagnostic& diagnostic, std::string_view words);

/// All that a reading holds, what is usual left out.
void tell(testing::RecordedText& text, const ReadRound& read, std::string_view words);

}  // namespace roundwright::test
