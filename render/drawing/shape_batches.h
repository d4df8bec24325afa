#pragma once

#include <map>
#include <utility>

#include <QColor>
#include <QPainterPath>
#include <QPolygonF>
#include <QTransform>

class QPainter;

namespace roundwright::render {

/// Shapes gathered by the order in which they cover each other and by colour, and drawn as one path for each:
/// a picture of a thousand stitches is a few dozen paths. All opaque.
class ShapeBatches {
  public:
    /// Shapes of a higher `order` cover those of a lower one; those of one order must not overlap in
    /// different colours.
    void fill(int order, const QColor& colour, const QPolygonF& shape);
    /// Through these points and round their corners (Catmull-Rom), closed.
    void fill_smooth(int order, const QColor& colour, const QPolygonF& points);
    /// An open line with round ends.
    void stroke(int order, const QColor& colour, double width, const QPolygonF& points);

    /// Draws through `to_painter`. Places are rounded to a fine grid of the device, which keeps files small.
    void draw(QPainter& painter, const QTransform& to_painter) const;

  private:
    struct Key {
        int order;
        double width;  ///< 0: filled
        QRgb colour;
        friend auto operator<=>(const Key&, const Key&) = default;
    };
    std::map<Key, QPainterPath> paths_;
};

}  // namespace roundwright::render
