#pragma once

#include <QString>

#include "core/language/pattern/read_pattern.h"

namespace roundwright {

/// What a line of a pattern's text came to: "round 4", "rounds 4–6", "note", "not understood".
[[nodiscard]] QString line_lot_words(const ReadLine& line);

/// The same for the lines after the first of those that go together: "part of round 4".
[[nodiscard]] QString line_part_words(const ReadLine& line);

/// What was understood of it: the round written anew, "like “Head”", a note's text.
[[nodiscard]] QString line_understood_words(const ReadLine& line);

}  // namespace roundwright
