#pragma once

#include <vector>

#include "core/base/colour.h"
#include "core/mesh/stitch_cords.h"
#include "core/stitches/stitch_graph.h"
#include "core/stitches/stitch_layout.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Colour of a stitch's yarn; a quiet grey for a yarn the toy does not have.
[[nodiscard]] Colour yarn_colour(const Toy& toy, const Stitch& stitch);
[[nodiscard]] Colour yarn_colour(const Toy& toy, const StitchGraph& graph, const LaidStitch& cell);

/// Whether the stitch's yarn is brushed when the piece is done.
[[nodiscard]] bool is_brushed(const Toy& toy, const Stitch& stitch);

/// The face that every stitch of the graph shows on the outside, in its order.
[[nodiscard]] std::vector<StitchFace> faces_of_stitches(const Toy& toy, const StitchGraph& graph);

}  // namespace roundwright
