#include "render/drawing/drawing_view.h"

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

namespace roundwright::render {

Projection::Projection(const DrawingView& view) {
    const double a = view.yaw_degrees * std::numbers::pi / 180,
                 p = view.pitch_degrees * std::numbers::pi / 180;
    back_ = Vec3(std::sin(a) * std::cos(p), std::sin(p), std::cos(a) * std::cos(p));
    right_ = Vec3(std::cos(a), 0, -std::sin(a));
    up_ = back_.cross(right_);
}

}  // namespace roundwright::render
