#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/toy/toy.h"

namespace roundwright {

/// "Join the edges of Leg (2) with ch 3 between them, and go on around them and both sides of the ch: 30
/// loops." `edges`: the pieces it is worked on, as named in the pattern; empty: "the pieces before".
[[nodiscard]] std::string worked_on_words(const WorkedOn& start, const std::string& edges, bool one_edge);

/// Whether a line begins as those do. A page may have broken it.
[[nodiscard]] bool begins_worked_on(std::string_view line);

/// The start that such a line says; none of another line.
[[nodiscard]] std::optional<WorkedOn> worked_on_said(std::string_view line);

}  // namespace roundwright
