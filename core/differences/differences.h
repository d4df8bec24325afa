#pragma once

#include <stop_token>
#include <vector>

#include "core/differences/difference.h"
#include "core/differences/match.h"

namespace roundwright {

/// Which piece has become which: the same by their ids, else by their names.
[[nodiscard]] Match matched_pieces(const Toy& before, const Toy& after);

/// In what a toy differs from what it was before: piece by piece as they are now, then the pieces that are
/// gone, then the toy's yarns, hook, gauge and words.
/// None for equal toys, at least one for others. Asked to stop, it gives what it has.
[[nodiscard]] std::vector<Difference> differences(const Toy& before, const Toy& after,
                                                  const std::stop_token& stop = {});

}  // namespace roundwright
