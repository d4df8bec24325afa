#pragma once

#include <vector>

#include "core/shape/fabric/fabric_problem.h"

namespace roundwright {

/// Places for the nodes of a fabric so that their distances are, as nearly as three dimensions allow, the
/// shortest ways between them in the relaxed fabric: classical scaling of landmarks that lie as far apart as
/// they can, and the other nodes by their distances to those. Scaled to the fabric's own area; which side is
/// out is not settled.
[[nodiscard]] std::vector<Vec3> landmark_scaling(const FabricProblem& problem);

}  // namespace roundwright
