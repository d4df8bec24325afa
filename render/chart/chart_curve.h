#pragma once

#include <QPointF>

namespace roundwright::render {

/// The loops around a start: circles around a point, or stadiums around the straight line of an oval's chain.
/// A place is given by the share of the way around from the right, and the distance from the
/// point or line. A gap to the right is left free for numbers.
class ChartCurve {
  public:
    ChartCurve(double straight, double gap, bool clockwise)
        : straight_(straight), gap_(gap), clockwise_(clockwise) {}

    struct Place {
        QPointF at;
        QPointF outward;  ///< unit
    };
    /// With `whole` the gap is used too.
    [[nodiscard]] Place place(double share, double distance, bool whole = false) const;
    [[nodiscard]] double length(double distance) const;

  private:
    [[nodiscard]] Place anticlockwise(double share, double distance, double gap) const;

    double straight_;
    double gap_;
    bool clockwise_;
};

}  // namespace roundwright::render
