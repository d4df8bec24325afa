#pragma once

#include <vector>

#include "core/face/face_surface.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/feature.h"

namespace roundwright {

/// Where a feature sits: one place, or two for a pair (the viewer's left one first); for a stitched line the
/// place it ends follows each place it starts from.
struct PlacedFeature {
    std::vector<SurfacePlace> starts;
    std::vector<SurfacePlace> ends;  ///< stitched lines only, one a start
};

/// A piece has gaps to place in from its first round to the one before its last.
[[nodiscard]] bool has_gap(const FaceSurface& surface, int round);

/// The places of a feature; none where its round is not there (any more).
[[nodiscard]] PlacedFeature place_feature(const Feature& feature, const FaceSurface& surface,
                                          const std::vector<int>& stitch_counts);

/// The feature moved so that its place (of a pair: the one on that side) is the gap between stitches and
/// rounds nearest to `place`. Pairs stay mirrored; single features snap to half stitches from the middle.
[[nodiscard]] Feature moved_to(Feature feature, const SurfacePlace& place, const FaceSurface& surface,
                               const std::vector<int>& stitch_counts);

/// The feature moved by so many rounds (up the table is negative) and stitches (of a pair: apart), kept on
/// the piece.
[[nodiscard]] Feature nudged(Feature feature, int rounds, int stitches,
                             const std::vector<int>& stitch_counts);

/// What the maker needs to read about a pair, or about a single feature from the middle of the face.
struct FeatureMeasures {
    double straight_mm = 0;       ///< through the air, between the two
    double along_surface_mm = 0;  ///< over the fabric
    double height_mm = 0;         ///< above the lowest point of the piece
    double angle_degrees = 0;     ///< between the two, about the axis
};
[[nodiscard]] FeatureMeasures measure_feature(const PlacedFeature& placed, const FaceSurface& surface);

/// Three distances apart to start from, as shares of the loop's diameter: our own choice.
enum class EyeSpacing { close, middle, wide };
[[nodiscard]] int stitches_apart_for(EyeSpacing spacing, int round, const std::vector<int>& stitch_counts);

}  // namespace roundwright
