#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/assembly/placed_toy.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// An eye, or another thing on a face, that a piece sewn beside it hides.
struct HiddenFeature {
    std::size_t placed = 0;  ///< index into `PlacedToy::pieces`: the one that it is fitted to
    int feature = 0;         ///< index into that piece's features
    std::size_t by = 0;      ///< index into `PlacedToy::pieces`: the first that lies over it

    friend bool operator==(const HiddenFeature&, const HiddenFeature&) = default;
};

/// Features that another piece covers or stands close in front of: seen straight out from the fabric, it is
/// met within three widths of the feature (our own choice: farther off, an eye is seen from beside it).
/// `surfaces`: of the placed pieces, in the toy's frame; one may be null. In the order of pieces and
/// features, each feature once.
[[nodiscard]] std::vector<HiddenFeature> hidden_features(const PlacedToy& placed,
                                                         std::span<const SolvedPiece> solved,
                                                         std::span<const StitchSurface* const> surfaces);

}  // namespace roundwright
