#pragma once

#include <vector>

#include "core/shape/fabric/fabric_problem.h"

namespace roundwright {

/// The closed loops of nodes along which a fabric is open, in the direction in which its triangles run along
/// them. A node at which two of them touch is passed once in each.
[[nodiscard]] std::vector<FabricLoop> open_edges(const FabricProblem& problem);

/// Whether every side is run by one triangle each way at most, and the triangles about every node are one
/// fan.
[[nodiscard]] bool is_one_surface(const FabricProblem& problem);

}  // namespace roundwright
