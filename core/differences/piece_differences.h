#pragma once

#include <vector>

#include "core/differences/round_differences.h"

namespace roundwright {

/// What differs between two states of one piece, its name apart. Without names and places.
[[nodiscard]] std::vector<Difference> piece_differences(const Piece& before, const Piece& after,
                                                        const YarnsBecome& yarns);

}  // namespace roundwright
