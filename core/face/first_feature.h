#pragma once

#include <array>
#include <vector>

#include "core/face/face_surface.h"
#include "core/toy/feature.h"

namespace roundwright {

/// Diameters that safety eyes are sold in, mm: from memory.
inline constexpr std::array<int, 15> safety_eye_sizes_mm{4,  5,  6,  7,  8,  9,  10, 12,
                                                         14, 15, 16, 18, 20, 24, 30};

/// Where a new feature sits at first and how large it is beside the piece, before the maker moves it: eyes a
/// little above the middle, nose and mouth below it, a seventh of the piece's width across, in a size that is
/// sold. Our own choice.
[[nodiscard]] Feature first_feature(FeatureKind kind, const FaceSurface& surface,
                                    const std::vector<int>& stitch_counts);

}  // namespace roundwright
