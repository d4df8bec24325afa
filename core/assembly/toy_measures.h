#pragma once

#include <optional>
#include <vector>

#include "core/assembly/pieces_overlap.h"
#include "core/assembly/placed_surface.h"
#include "core/assembly/rest.h"
#include "core/materials/estimate.h"
#include "core/shape/size_range.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// Densities, kg/m3, from memory: hard plastics of safety eyes (ABS, polypropylene) lie between 900 and
/// 1,100; wool felt for crafts between 150 and 350; thread is taken as the felt is.
inline constexpr Estimate eye_kg_per_m3{1000, 900, 1100};
inline constexpr Estimate felt_kg_per_m3{250, 150, 350};

/// A weight, and where it is in the toy's frame.
struct PlacedMass {
    Estimate grams;
    Vec3 centre = Vec3::Zero();
};

/// What the parts of a toy weigh, one a copy of a piece as in `PlacedToy::pieces`, and of what.
struct ToyMass {
    std::vector<PlacedMass> fabric, stuffing, features, pellets;

    [[nodiscard]] Estimate grams() const;
    [[nodiscard]] Vec3 centre() const;
    /// With the fabric, and all the rest, at the ends of their ranges: the corners of where the centre may
    /// be.
    [[nodiscard]] std::vector<Vec3> possible_centres() const;
};
[[nodiscard]] ToyMass toy_mass(const AssembledToy& toy, std::span<const PieceStudy> studies);

/// A size of the toy, mm, likely and between what ends.
using SizeEstimate = Estimate;

/// Measures of the toy as a whole (what is `together`), resting as it is meant to.
struct ToyMeasures {
    SizeEstimate width_mm, height_mm, depth_mm;  ///< from side to side, above the table, from front to back;
                                                 ///< in the middle of the fabric, as those of its pieces
    Estimate mass_g;
    Rest rest;
    /// `rest.stable_degrees`, with the ends that its parts' weights allow.
    Estimate stable_degrees;
    /// In the base, to be stable by `well_stable_degrees`; 0: none needed; none: no weight would hold it.
    std::optional<double> weight_to_hold_g;
    std::vector<PieceOverlap> overlaps;
    std::size_t apart = 0;  ///< copies that are joined to nothing of what is measured
    bool complete = true;   ///< every piece has a settled shape

    [[nodiscard]] bool usable() const { return height_mm.likely > 0; }
};

/// A toy that a table tilted less than this tips over is said to need a weight: a value of our own, about the
/// slope of a bed or a cushion.
inline constexpr double well_stable_degrees = 10;

/// `studies`: one a piece of the toy, with sizes where ranges are wanted.
[[nodiscard]] ToyMeasures toy_measures(const AssembledToy& toy, std::span<const PieceStudy> studies);

/// The copies that hang together, the most of them where there are several such groups; indices, ascending.
[[nodiscard]] std::vector<std::size_t> together(const PlacedToy& placed);

}  // namespace roundwright
