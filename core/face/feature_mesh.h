#pragma once

#include <vector>

#include "core/face/face_surface.h"
#include "core/mesh/stitch_surface.h"
#include "core/toy/feature.h"

namespace roundwright {

/// How a part of a feature takes the light.
enum class Finish { glossy, felt, yarn };

/// A feature, or its washer or lid, as a closed mesh at its true size.
struct FeaturePart {
    Mesh mesh;
    Finish finish = Finish::glossy;
    int feature = 0;      ///< index into the piece's features
    bool inside = false;  ///< a washer: on the far side of the fabric
};

/// All that is fitted to a piece, as it sits on the surface. What is not on the piece is left out. Washers
/// lie inside, on fabric that is `fabric_mm` thick.
[[nodiscard]] std::vector<FeaturePart> feature_parts(const std::vector<Feature>& features,
                                                     const FaceSurface& surface,
                                                     const std::vector<int>& stitch_counts, double fabric_mm);

}  // namespace roundwright
