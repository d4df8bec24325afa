#pragma once

#include "core/mesh/stitch_surface.h"
#include "render/drawing/drawing_view.h"
#include "render/drawing/shape_batches.h"
#include "render/illustration/visible_stitches.h"
#include "render/illustration/yarn_detail.h"

namespace roundwright::render {

/// What holds for every stitch of a picture.
struct StitchStyle {
    double stitch_mm = 5;
    YarnDetail detail = YarnDetail::twist;
};

/// Light on fabric that faces this way (in the view's axes), 1 on average; the lamp stands at the upper left.
[[nodiscard]] double light_on(const Vec3& view_normal, bool inside);

/// Light in the hollows between the cords.
inline constexpr double hollow_light = 0.52;

/// Orders of `ShapeBatches` that one layer takes.
inline constexpr int orders_a_layer = 16;

/// Adds the cords of a stitch that is seen: each as its dark edge, its body and, by the detail, its highlight
/// and the twist of its yarn. Layers above the first get the hollows behind the cords too.
void add_stitch(ShapeBatches& batches, const StitchPatch& patch, Colour colour, const VisibleStitch& seen,
                const Projection& projection, const StitchStyle& style);

}  // namespace roundwright::render
