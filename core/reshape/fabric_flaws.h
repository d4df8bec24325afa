#pragma once

#include <cstddef>
#include <vector>

#include "core/reshape/fit_problem.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// Whole stitches more, and fewer, than the round below that neither ruffle nor gather (1 at least), where so
/// many more lie flat: (1 + `ruffles_above_share`) and -`gathers_below_growth` times as many.
[[nodiscard]] int most_growth(double flat);
[[nodiscard]] int most_closing(double flat);

/// What the checks would find wrong with the fabric of a new piece (`lie_of_rounds`, `fabric_signs`) and did
/// not find at the same height of the old one.
struct FabricFlaws {
    std::vector<std::size_t> ruffles;  ///< rounds, from 0
    std::vector<std::size_t> gathers;  ///< the same
    std::vector<std::size_t> cups;     ///< of a piece that lay flat all over, without stuffing
    bool gaps = false;                 ///< stuffing shows somewhere

    [[nodiscard]] std::size_t rounds() const { return ruffles.size() + gathers.size() + cups.size(); }
};

[[nodiscard]] FabricFlaws fabric_flaws(const FitProblem& problem, const RoundsDraft& draft,
                                       const Shape& shape);

/// The same cut again, its growth and its closing held to what does not ruffle or gather where it did:
/// growth at `most_growth`, closing at `most_closing`. Each further attempt holds one more neighbour on
/// either side, and one stitch more.
[[nodiscard]] RoundsCut recut_without(const FabricFlaws& flaws, const FitProblem& problem, RoundsCut cut,
                                      int attempt);

/// Limits that hold everywhere but where the wanted counts themselves go further, and over kept rounds.
void hold_to_sound_fabric(const FitProblem& problem, const RoundsDraft& draft, CountProblem& counts);

}  // namespace roundwright
