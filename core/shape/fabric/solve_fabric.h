#pragma once

#include <functional>
#include <span>
#include <stop_token>
#include <vector>

#include "core/base/vec.h"
#include "core/shape/fabric/fabric_problem.h"
#include "core/shape/termination.h"

namespace roundwright {

struct FabricOptions {
    double largest_move = 0.01;       ///< of a stitch width: a step that moves no node farther is the last
    double relative_gradient = 1e-3;  ///< norm of the gradient over that of a stretch of one hundredth
    double relative_stretch = 1e-3;   ///< how near the mean stretch comes to the one that is wanted
    int max_iterations = 200;
    bool seeks_waves = true;  ///< of what is not stuffed: whether less energy is looked for where it balances
    std::stop_token stop;
    std::function<void(double)> progress;  ///< is told the share done, 0 to 1, after each step; may be empty
};

/// The shape: where the nodes lie, in mm, in the frame of the start.
struct FabricShape {
    std::vector<Vec3> nodes;
    double pressure = 0;      ///< in units of the course stiffness per mm
    double area_stretch = 0;  ///< mean tensile stretch, as reached
    double energy = 0;        ///< of the fabric alone, in units of course stiffness * mm^2
    double volume_mm3 = 0;    ///< enclosed by what is stuffed; of what is not, by all of it
    Termination termination = Termination::unusable_problem;
    int iterations = 0;
    int factorizations = 0;
    int cg_steps = 0;
    double residual = 0;  ///< norm of the gradient over its scale

    [[nodiscard]] bool usable() const { return !nodes.empty(); }
};

/// The shape of least energy (core/shape/fabric/fabric_energy.h states it) that is found from `start`, a
/// position a node, in mm. Of a stuffed piece the start must enclose something, with its outside out. Numbers
/// in the result are finite; `termination` says what they are worth, and what cannot be solved (a triangle
/// without area, nodes that coincide) has no nodes.
[[nodiscard]] FabricShape solve_fabric(const FabricProblem& problem, std::span<const Vec3> start,
                                       const FabricOptions& options = {});

}  // namespace roundwright
