#pragma once

#include <optional>
#include <span>

#include "core/assembly/placed_surface.h"
#include "core/face/feature_mesh.h"
#include "core/mesh/revolve.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// A toy assembled from the studies of its pieces, one each; with their surfaces where these are wanted. A
/// piece without a settled shape has none.
[[nodiscard]] AssembledToy assemble(const Toy& toy, std::span<const PieceStudy> studies,
                                    const std::optional<RevolveOptions>& surfaces = {},
                                    const AssembledToy* before = nullptr);

/// What is fitted to copy `index` of an assembled toy, in the toy's frame.
[[nodiscard]] std::vector<FeaturePart> placed_features(const AssembledToy& toy, std::size_t index);

/// Several surfaces as one, for a picture of them all. Rounds are counted on from surface to surface.
[[nodiscard]] StitchSurface one_surface(std::span<const std::shared_ptr<const StitchSurface>> surfaces);

}  // namespace roundwright
