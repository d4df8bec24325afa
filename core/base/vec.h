#pragma once

#include <Eigen/Core>

namespace roundwright {

using Vec2 = Eigen::Vector2d;
using Vec3 = Eigen::Vector3d;

}  // namespace roundwright
