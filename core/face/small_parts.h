#pragma once

#include "core/base/units.h"
#include "core/toy/feature.h"

namespace roundwright {

/// The small-parts cylinder of 16 CFR 1501.4: diameter 1.25 in, depth from 1 in to 2.25 in over a sloping
/// base. The inch figures govern. (EN 71-1, clause 8.2, uses the same cylinder.)
inline constexpr double small_parts_diameter_mm = 1.25 * mm_per_inch;
inline constexpr double small_parts_least_depth_mm = 1.0 * mm_per_inch;
inline constexpr double small_parts_most_depth_mm = 2.25 * mm_per_inch;

/// A rigid part as an elliptic cylinder: outline `width` by `height`, and so thick.
struct RigidPart {
    double width_mm = 0;
    double height_mm = 0;
    double thickness_mm = 0;
};

/// The part of a feature that could come off: an eye's dome (without its post, so that the answer errs on the
/// side of "it fits") or a felt disc. Yarn and embroidery are no such parts.
[[nodiscard]] bool has_rigid_part(FeatureKind kind);
[[nodiscard]] RigidPart rigid_part(const Feature& feature);

/// Whether the part fits wholly into the cylinder in some orientation, uncompressed. Guidance only: what
/// applies where the toy is sold is for an accredited laboratory to say.
[[nodiscard]] bool fits_small_parts_cylinder(const RigidPart& part);

}  // namespace roundwright
