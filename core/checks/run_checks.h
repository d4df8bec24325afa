#pragma once

#include <vector>

#include "core/checks/check.h"
#include "core/checks/check_input.h"

namespace roundwright {

/// Every check of one piece, by round and the worst first within a round.
[[nodiscard]] std::vector<Check> run_checks(const CheckInput& input);

}  // namespace roundwright
