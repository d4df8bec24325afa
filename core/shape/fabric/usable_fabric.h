#pragma once

#include <span>

#include "core/base/vec.h"
#include "core/shape/fabric/fabric_problem.h"

namespace roundwright {

/// Whether every node that is named is there and every node is in a triangle, every triangle has an area
/// on its right side, all constants are finite and of the sign that they must have, and the caps are loops.
[[nodiscard]] bool is_usable(const FabricProblem& problem);

/// Whether there is a finite position for each node, no more than a hundred metres off.
[[nodiscard]] bool is_usable_start(const FabricProblem& problem, std::span<const Vec3> start);

}  // namespace roundwright
