#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "app/kit/preferences.h"
#include "core/reshape/continue_from_here.h"
#include "core/reshape/reshape_toy.h"

namespace roundwright::app {

/// A piece's new size, what to undo for it, and the ways on from what is worked (may be none), in words on
/// the standard output.
void print_resized(const Toy& toy, const ReshapedPiece& piece, const std::vector<WayOn>& ways,
                   LengthUnit units);

/// The same for machines; lengths in mm.
[[nodiscard]] nlohmann::ordered_json resized_json(const Toy& toy, const ReshapedPiece& piece,
                                                  const std::vector<WayOn>& ways);

}  // namespace roundwright::app
