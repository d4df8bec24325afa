#pragma once

#include <QPointF>

#include "core/base/vec.h"

namespace roundwright::render {

/// From where a piece is drawn, in parallel projection. Yaw turns the viewer about the upright axis, to the
/// right from the front; pitch lifts the viewer, 90 looks straight down. The axes are those of `Camera`:
/// back = (sin a cos p, sin p, cos a cos p), right = (cos a, 0, -sin a), up = back x right.
struct DrawingView {
    double yaw_degrees = 0;
    double pitch_degrees = 0;
};

/// The drawing's plane: x right, y up, mm; and the depth towards the viewer.
class Projection {
  public:
    explicit Projection(const DrawingView& view);

    /// x right, y up, z towards the viewer.
    [[nodiscard]] Vec3 operator()(const Vec3& point) const {
        return {right_.dot(point), up_.dot(point), back_.dot(point)};
    }
    [[nodiscard]] QPointF flat(const Vec3& point) const { return {right_.dot(point), up_.dot(point)}; }

  private:
    Vec3 right_, up_, back_;
};

}  // namespace roundwright::render
