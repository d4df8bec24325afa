#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/reshape/rounds_for_meridian.h"
#include "core/reshape/silhouette.h"

namespace roundwright {

/// The shape that a fabric along an outline comes out as, and for each of its points the part (0..1) of the
/// rounds along the outline asked for at which it ought to be.
struct TriedFabric {
    Silhouette made;
    std::vector<double> part;
};
/// Every trial of a search must give as many points; nothing where no shape is found.
using TryFabric = std::function<std::optional<TriedFabric>(const FabricAlong&)>;

/// A fabric whose stuffed shape lies nearer to an outline than that of `first`. Few outlines drawn by hand
/// are ones that stuffing can hold, and the rounds that lie along one come out as another.
///
/// Least squares by Gauss and Newton with Marquardt's damping (Nocedal and Wright, Numerical Optimization,
/// 2nd ed., 10.3). Unknown are the logarithms of two factors, of the stitches in a round and of the rounds in
/// a stretch of the outline: straight between a few knots spread over what was moved, nothing elsewhere.
/// Residuals, in mm: how far the shape is off the outline, and weakly along it, when their middles meet; what
/// its height misses; and the unknowns themselves. Rounds that grow or close faster than flat, and faster
/// than `first` has them, cost so much that a smooth outline is not bought with ruffles.
///
/// `moved`: of each stretch between two points, whether it was moved.
[[nodiscard]] FabricAlong matched_fabric(const Silhouette& outline, const FabricAlong& first,
                                         const std::vector<bool>& moved, double round_height_mm,
                                         const TryFabric& attempt);

}  // namespace roundwright
