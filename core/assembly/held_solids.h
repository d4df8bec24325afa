#pragma once

#include <optional>

#include "core/assembly/placed_surface.h"

namespace roundwright {

/// A copy and another as they are held against each other: joined ones before their edges bend, others as
/// they lie.
struct HeldSolids {
    Solid one, other;
    std::optional<std::size_t> joined;  ///< which of both is joined onto the other
};
[[nodiscard]] HeldSolids held_solids(const AssembledToy& toy, std::size_t one, std::size_t other);

}  // namespace roundwright
