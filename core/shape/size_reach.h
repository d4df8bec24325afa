#pragma once

#include <functional>
#include <optional>

#include "core/shape/size_range.h"

namespace roundwright {

/// What a range is asked for.
struct PieceSizes {
    double width_mm = 0;
    double height_mm = 0;
    double volume_mm3 = 0;
};

/// What a problem comes to; nothing where it has no settled shape.
using SizesOf = std::function<std::optional<PieceSizes>(const ShapeProblem&)>;

/// The range that `size_range` says, of whatever comes of `problem` by `sizes_of`. Empty where that is
/// nothing.
[[nodiscard]] SizeRange size_range_of(const ShapeProblem& problem, const Gauge& gauge,
                                      double area_stretch_error, const SizesOf& sizes_of);

}  // namespace roundwright
