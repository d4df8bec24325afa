#pragma once

#include <optional>

#include "core/gauge/gauge.h"
#include "core/materials/estimate.h"
#include "core/pattern/toy.h"
#include "core/shape/solve_shape.h"
#include "core/stitches/stitch_graph.h"

namespace roundwright {

/// Size of a stuffed piece, mm, with the range that the gauge's own range leaves.
struct FinishedSize {
    Estimate width_mm;
    Estimate height_mm;
};

/// The piece solved at a gauge, and at the four ends of its range (both measures are uncertain, and the shape
/// depends on their ratio). Nothing if the shape cannot be solved.
[[nodiscard]] std::optional<FinishedSize> finished_size(const Piece& piece, const StitchGraph& graph,
                                                        const Gauge& gauge, const ShapeOptions& options = {});

/// The gauge of a maker whose stitches are `stitch_width_mm` wide and otherwise alike: the round height keeps
/// its proportion, and nothing is known of the error.
[[nodiscard]] Gauge gauge_at_width(const Gauge& gauge, double stitch_width_mm);

}  // namespace roundwright
