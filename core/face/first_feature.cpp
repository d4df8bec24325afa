#include "core/face/first_feature.h"

#include <algorithm>
#include <cmath>

#include "core/face/place_feature.h"

namespace roundwright {

namespace {

constexpr double eyes_at_height = 0.55;
constexpr double below_eyes_at_height = 0.42;
constexpr double share_of_width = 1.0 / 7;
constexpr double line_thickness_mm = 1.5;
constexpr double line_beyond_eyes_stitches = 3;

/// The gap nearest to a share of the piece's height, seen from the base.
int gap_at_height(const FaceSurface& surface, double share) {
    const auto off = [&](int round) {
        return std::abs(surface.at({surface.along_of_loop(round + 1), 0}).height_mm -
                        share * surface.height_mm());
    };
    int best = 0;
    for (int round = 0; has_gap(surface, round); ++round) {
        if (off(round) < off(best)) best = round;
    }
    return best;
}

int nearest_size_mm(double wanted) {
    return *std::ranges::min_element(safety_eye_sizes_mm, {},
                                     [wanted](int size) { return std::abs(size - wanted); });
}

}  // namespace

Feature first_feature(FeatureKind kind, const FaceSurface& surface, const std::vector<int>& stitch_counts) {
    Feature feature;
    feature.kind = kind;
    feature.pair = kind != FeatureKind::safety_nose;
    const bool below_eyes = kind == FeatureKind::safety_nose || kind == FeatureKind::stitched_line;
    feature.round = gap_at_height(surface, below_eyes ? below_eyes_at_height : eyes_at_height);
    if (feature.round < static_cast<int>(stitch_counts.size()))
        feature.stitches_apart = stitches_apart_for(EyeSpacing::middle, feature.round, stitch_counts);
    feature.width_mm = feature.height_mm = nearest_size_mm(share_of_width * surface.width_mm());
    if (kind == FeatureKind::stitched_line) {
        feature.height_mm = line_thickness_mm;
        feature.end_round = feature.round;
        feature.end_stitches_right = feature.stitches_apart / 2.0 + line_beyond_eyes_stitches;
    }
    return feature;
}

}  // namespace roundwright
