#pragma once

#include <optional>

#include "core/gauge/gauge.h"
#include "core/reshape/silhouette.h"

namespace roundwright {

/// What a piece is to become. Absent: as it is. A width, height or circumference alone keeps the proportions;
/// a gauge alone keeps the finished size. A scale goes with no other size, a circumference with no width.
struct Target {
    std::optional<double> width_mm;
    std::optional<double> height_mm;
    std::optional<double> circumference_mm;  ///< of the widest round
    std::optional<double> scale;
    std::optional<Gauge> gauge;            ///< worked with another yarn or hook
    std::optional<Silhouette> silhouette;  ///< drawn; its proportions take the place of the piece's own
};

}  // namespace roundwright
