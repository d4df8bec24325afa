#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>

#include "core/assembly/toy_measures.h"

namespace roundwright::app {

/// The whole toy as it is sewn together: its size on the table with its range, what it weighs, how it stands,
/// where each copy of a piece is, how each seam comes out, and what runs into what.
[[nodiscard]] nlohmann::ordered_json toy_json(const Toy& toy, std::span<const PieceStudy> studies);

}  // namespace roundwright::app
