#pragma once

#include <vector>

#include <QColor>
#include <QPointF>
#include <QRectF>

#include "core/shape/solve_shape.h"

class QPainter;

namespace roundwright::render {

struct ProfileOptions {
    QRectF target;            ///< in the painter's units; the drawing is centred in it
    double units_per_mm = 0;  ///< 0: as large as the target allows
    bool starts_at_top = false;
    bool closed_below = true;  ///< drawn to the axis at the start, not only at a pole
    bool closed_above = false;
    std::vector<int> lit_rounds;  ///< from 0: drawn in the accent
    int number_every = 5;         ///< rounds numbered 1, 5, 10 ...; 0: none
    double text_height = 8;       ///< of the numbers, in the painter's units
    QColor ink{70, 78, 86};
    QColor faint{190, 197, 203};
    QColor accent{186, 82, 54};
    QColor fill{240, 236, 228};
};

/// Where a profile came to lie.
struct DrawnProfile {
    QPointF axis;  ///< where the axis meets the height 0 of the shape, in the painter's units
    double units_per_mm = 1;
    double up = -1;  ///< +1: turned over
    QRectF bounds;

    [[nodiscard]] QPointF at(double radius_mm, double z_mm) const {
        return axis + QPointF(radius_mm, up * z_mm) * units_per_mm;
    }
};

/// A cut through the axis, or from fold to fold of a flattened piece: the meridian on both sides, a line
/// across for every round's loop, the rounds numbered along the right side, the axis as a chain line (ISO
/// 128).
DrawnProfile draw_profile(QPainter& painter, const Shape& shape, const ProfileOptions& options);

}  // namespace roundwright::render
