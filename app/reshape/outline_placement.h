#pragma once

#include <initializer_list>
#include <optional>

#include <QPainterPath>
#include <QPointF>
#include <QPolygonF>
#include <QSize>

#include "core/base/vec.h"
#include "core/reshape/silhouette.h"

namespace roundwright::app {

/// How outlines (mm) lie on a widget (pixels): to scale, around a middle axis, z upwards or downwards.
struct OutlinePlacement {
    double pixels_per_mm = 1;
    QPointF axis;         ///< where r = 0, z = 0 is
    double upwards = -1;  ///< 1 where z grows downwards on the widget, as in a piece that starts at its top

    /// As large as all of the outlines have room.
    [[nodiscard]] static OutlinePlacement of(QSize room, bool starts_at_top,
                                             std::initializer_list<const Silhouette*> outlines);

    [[nodiscard]] QPointF at(const Vec2& point) const;
    /// How far (r, z) a way on the widget goes. Left of the axis r grows to the left.
    [[nodiscard]] Vec2 way(QPointF from, QPointF to) const;
    /// Both sides of an outline, as the curve that stuffed fabric makes through its loops: round over its
    /// poles, straight over its openings.
    [[nodiscard]] QPainterPath both_sides(const Silhouette& outline) const;
    /// One side of it, right of the axis.
    [[nodiscard]] QPainterPath one_side(const Silhouette& outline) const;
    /// The point of an outline, on either side, that a press takes; -1: none is near enough.
    [[nodiscard]] int point_near(QPointF position, const Silhouette& outline) const;
};

/// An outline moved along the axis so that its middle meets that of another.
[[nodiscard]] Silhouette middles_met(Silhouette outline, const Silhouette& other);

}  // namespace roundwright::app
