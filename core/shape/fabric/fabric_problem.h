#pragma once

#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "core/base/vec.h"

namespace roundwright {

/// A triangle of fabric: two or more make a stitch. `rest` is its relaxed shape in the stitch's own plane,
/// mm, x along the course and y along the wale; seen from outside it runs anticlockwise, as the nodes do.
struct FabricTriangle {
    std::array<std::int32_t, 3> nodes{};
    std::array<Vec2, 3> rest{Vec2::Zero(), Vec2::Zero(), Vec2::Zero()};
};

/// A closed loop of nodes along an open edge of the fabric.
using FabricLoop = std::vector<std::int32_t>;

/// A piece of fabric, every stitch a cell. Only ratios of the stiffnesses matter; the ones here are those of
/// the round solve (ShapeOptions, core/shape/solve_shape.h).
struct FabricProblem {
    std::int32_t nodes = 0;
    std::vector<FabricTriangle> triangles;  ///< one side out: an edge is run once each way by its two
    std::vector<std::int32_t> fixed;        ///< nodes held where they start
    /// Open edges, each closed by a fan to the mean of its nodes: stuffing pushes on what closes it. Any
    /// other open edge is closed in the same way, together with those that it touches.
    std::vector<FabricLoop> caps;

    double stitch_width_mm = 0;
    double round_height_mm = 0;

    double course_stiffness = 1;       ///< along a round
    double wale_stiffness = 0.5;       ///< from round to round
    double shear_stiffness = 0.1;      ///< of the engineering shear strain
    double compression_factor = 0.02;  ///< of either stiffness where fabric is pushed together: it wrinkles
    double bending_stiffness = 1e-2;   ///< in units of the round height squared

    /// Sides, the lower node first and in order, along which fabric is worked into one loop of two. It is
    /// half as thick there and bends by `crease_share` of the stiffness, since that grows with the cube.
    std::vector<std::pair<std::int32_t, std::int32_t>> creases;
    static constexpr double crease_share = 1.0 / 8;

    double area_stretch = 0;      ///< mean tensile stretch that the stuffing gives; 0: not stuffed
    std::vector<double> stuffed;  ///< share of the pressure on each triangle, 0 to 1; empty: all of it
};

}  // namespace roundwright
