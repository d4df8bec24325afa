#pragma once

#include <cmath>
#include <optional>

#include "core/gauge/yarn_standard.h"
#include "core/shape/piece_measures.h"

namespace roundwright {

/// How far a piece reaches from front to back, where that has to be said besides its width: of one that was
/// solved stitch by stitch and is not round. Less than this share of its width is no difference that one
/// sees, a judgement of our own.
inline constexpr double least_depth_difference = 0.03;

[[nodiscard]] inline std::optional<double> own_depth_mm(const PieceMeasures& measures) {
    if (measures.fidelity != Fidelity::every_stitch || measures.flattened || !(measures.width_mm > 0))
        return std::nullopt;
    if (std::abs(measures.depth_mm / measures.width_mm - 1) < least_depth_difference) return std::nullopt;
    return measures.depth_mm;
}

/// Its range, in proportion to that of the width: the same errors stretch both.
[[nodiscard]] inline Range depth_range(const PieceMeasures& measures, const Range& width_mm) {
    const double share = measures.width_mm > 0 ? measures.depth_mm / measures.width_mm : 0;
    return {width_mm.low * share, width_mm.high * share};
}

}  // namespace roundwright
