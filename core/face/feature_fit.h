#pragma once

#include <vector>

#include "core/face/face_surface.h"
#include "core/face/place_feature.h"
#include "core/toy/feature.h"

namespace roundwright {

/// Most gap between a flat washer's rim and fabric that curves away from it, mm; more, and it rocks or cuts
/// in. Our own starting value.
inline constexpr double most_washer_gap_mm = 1.5;

/// Widest that a feature may be, as a share of the diameter of the fabric it sits on: our own starting value.
inline constexpr double most_share_of_loop = 0.6;

/// Diameter of the fabric at a place, as it curves along the round (2 over its normal curvature; on the side
/// of a tube that is the loop's own), at most the width of the piece: near the middle of a disc or the tip of
/// a dome, where loops are small, there is more room than they are wide.
[[nodiscard]] double room_across_mm(const SurfacePoint& at, double piece_width_mm);

/// Diameter that a feature takes up inside the piece: its washer's. 0 for those without.
[[nodiscard]] double washer_diameter_mm(const Feature& feature);
[[nodiscard]] bool has_washer(FeatureKind kind);

/// The same feature embroidered: no post, no washer, no lid.
[[nodiscard]] Feature embroidered(Feature feature);

/// Gap under the rim of a washer laid flat at a place: a^2 k / 2 for half diameter a and the sharper
/// principal curvature k.
[[nodiscard]] double washer_gap_mm(double washer_mm, const SurfacePoint& at);

/// Two features, or the two of one pair, that touch. One that lies within a disc of felt sits on it.
/// `spare_mm` is negative: how far they overlap.
struct Overlap {
    int first = 0;   ///< index into the piece's features
    int second = 0;  ///< the same as `first` for the two of a pair
    double spare_mm = 0;
    bool washers = false;  ///< only the washers touch
};
[[nodiscard]] std::vector<Overlap> overlaps(const std::vector<Feature>& features, const FaceSurface& surface,
                                            const std::vector<int>& stitch_counts);

}  // namespace roundwright
