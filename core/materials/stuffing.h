#pragma once

#include <optional>

#include "core/materials/estimate.h"
#include "core/toy/making.h"

namespace roundwright {

/// Fibrefill in a toy stuffed medium, kg/m3 (grams a litre): a guess of our own, since no figure for toys was
/// found in print. Its low end is the lowest published for cushions (12 to 16); toys are filled far more
/// tightly, and its high end is five times as much. The likely value stands midway, as a ratio. The maker's
/// kitchen scales replace it.
inline constexpr Estimate guessed_fill_kg_per_m3{27, 12, 60};

/// Half width of the range that stuffing the same piece twice leaves, over what was weighed; our own
/// estimate.
inline constexpr double stuffed_again_error = 0.1;

/// Firm over medium: published as up to 1.3.
inline constexpr double firm_over_medium_fill = 1.3;

/// Light over medium: the same step downwards; a value of our own.
inline constexpr double light_over_medium_fill = 1 / firm_over_medium_fill;

/// Density of the stuffing over medium, from the area stretch it gives the fabric: through light, medium and
/// firm, straight between them, and 0 where nothing is stuffed.
[[nodiscard]] double fill_over_medium(double area_stretch);

/// Grams of stuffing in a piece of this volume: by the maker's own density where there is one, else the
/// guess.
[[nodiscard]] Estimate stuffing_grams(double volume_mm3, double area_stretch, const Making& making);

/// A piece on the kitchen scales.
struct WeighedPiece {
    double stuffed_g = 0;
    std::optional<double> empty_g;  ///< before it was stuffed; absent: the yarn's weight is only estimated
    double scales_g = 1;            ///< the step of the scales: each reading is right to half of it
};

/// Grams of stuffing in it. `yarn_g`: an estimate of the piece without stuffing, used where that was not
/// weighed. The low end may be below nothing, where the weights do not tell.
[[nodiscard]] Estimate stuffing_weighed(const WeighedPiece& weighed, const Estimate& yarn_g);

/// The density of a piece stuffed medium, kg/m3, by what was weighed in one of this volume and stretch;
/// nothing if the weight may be none at all, or the piece is not stuffed.
[[nodiscard]] std::optional<Estimate> medium_density(const Estimate& grams, double volume_mm3,
                                                     double area_stretch);

/// `making` with this density as the maker's own.
[[nodiscard]] Making with_stuffing_density(Making making, const Estimate& kg_per_m3);

}  // namespace roundwright
