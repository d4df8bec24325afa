#pragma once

#include "core/assembly/overlap_region.h"
#include "core/base/colour.h"

namespace roundwright::app {

/// A row of beads along the lines where two pieces run into each other, in a picture that shows the toy's
/// frame so turned: seen by its form whatever the yarn's colours are. Empty where there are no lines.
[[nodiscard]] Mesh beads_mesh(const OverlapRegion& region, const Pose& in_picture, const Colour& colour);

/// What of the surfaces lies within another, of all regions, for a translucent layer over the picture.
[[nodiscard]] Mesh layer_mesh(const std::vector<const OverlapRegion*>& regions, const Pose& in_picture);

/// The way that the middle of the lines looks from the middle of what they are about, as a direction for
/// `SceneView::face`, degrees; nothing where there are no lines.
[[nodiscard]] std::optional<double> direction_of(const OverlapRegion& region, const Pose& in_picture,
                                                 const Vec3& middle);

}  // namespace roundwright::app
