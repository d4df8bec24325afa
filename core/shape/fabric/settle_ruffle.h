#pragma once

#include <span>
#include <vector>

#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/fabric/solved_stitches.h"

namespace roundwright {

/// Where the fabric of a ruffle is sought from: as it lies, and with waves of each number that its edge has
/// the stitches for, the rim's up and down by `amplitude_mm`, one an edge.
[[nodiscard]] std::vector<std::vector<Vec3>> ruffled_starts(const StitchCells& cells,
                                                            std::span<const Vec3> lying,
                                                            std::span<const double> amplitude_mm);

/// The shape of least energy of those that are found from the starts. Many shapes of a ruffle are in balance,
/// and hands choose among those of nearly the same energy: `others` has what was found besides, within
/// `nearly_the_same_energy`.
[[nodiscard]] SolvedStitches settle_ruffle(StitchCells cells, const std::vector<std::vector<Vec3>>& starts,
                                           const FabricOptions& options);

/// A share of the least energy. Which of two such shapes is made depends on how the piece is laid down: the
/// stiffnesses themselves are known less well than this. A guess.
inline constexpr double nearly_the_same_energy = 0.1;

}  // namespace roundwright
