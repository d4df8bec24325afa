#pragma once

#include <stop_token>
#include <vector>

#include "core/base/vec.h"
#include "core/shape/loop_section.h"
#include "core/shape/shape_problem.h"
#include "core/shape/termination.h"

namespace roundwright {

/// Material and numerical constants of the shape model. Only ratios of the stiffnesses matter.
struct ShapeOptions {
    double course_stiffness = 1;       ///< along a round
    double wale_stiffness = 0.5;       ///< from round to round
    double compression_factor = 0.02;  ///< of the course stiffness, where a loop is too long: it wrinkles
    double bending_stiffness = 1e-2;  ///< of the turn of the meridian from round to round: about (thickness /
                                      ///< height)^2 / 12 for fabric a third as thick as a round is high.
                                      ///< Keeps an unstuffed piece well posed
    double relative_gradient = 1e-9;
    int max_iterations = 200;
    std::stop_token stop;
};

/// The shape: loop i is a circle of radius `radius_mm[i]` at height `z_mm[i]`, i = 0..n, or, where `sections`
/// are there, it lies as those say, with its middle at that height, and is as long as that circle. z grows
/// from the start, and the lowest point of the piece is at z = 0.
struct Shape {
    Termination termination = Termination::unusable_problem;
    int iterations = 0;
    double residual = 0;  ///< norm of the gradient over its scale
    double energy = 0;
    double pressure = 0;  ///< in units of the course stiffness per mm
    std::vector<double> radius_mm;
    std::vector<double> z_mm;
    std::vector<double> course_stretch;  ///< e_i of loop i; below 0 the loop has length to spare
    std::vector<double> wale_stretch;    ///< m_i of round i, i = 1..n, at [i - 1]
    double area_stretch =
        0;                ///< mean, as reached: more than wanted where the fabric's misfit alone gives more
    double width_mm = 0;  ///< largest diameter; of a flattened piece from fold to fold
    double height_mm = 0;
    double depth_mm = 0;         ///< from front to back; of a limp piece its two layers' thickness
    double volume_mm3 = 0;       ///< inside the middle of its fabric
    double surface_mm2 = 0;      ///< of the fabric: open ends do not count
    double first_pole_z_mm = 0;  ///< where the fan of a drawn first end meets the axis; else z of loop 0
    double last_pole_z_mm = 0;   ///< where the fan of a drawn last end meets the axis; else z of loop n

    std::vector<LoopSection> sections;  ///< of a flattened piece, one a loop

    [[nodiscard]] bool usable() const { return !radius_mm.empty(); }
    [[nodiscard]] bool flattened() const { return !sections.empty(); }
    /// From the middle of the piece to the outermost of loop i as it lies, sideways.
    [[nodiscard]] double reach_mm(std::size_t i) const {
        return flattened() ? sections[i].reach_mm() : radius_mm[i];
    }
};

/// The shape of least energy (core/shape/membrane.h states it) at which the mean area stretch is the one
/// wanted. Newton with an O(n) direct solve; a long piece is solved coarsely first. A piece that is not
/// stuffed yields first, so far as it can lie flat by that (core/shape/yield_flat.h). A limp piece is laid
/// flat instead (core/shape/flat_layers.h, core/shape/face_down.h), a sewn one flattened towards its seam
/// (core/shape/sewn_seam.h). Whatever the input, the numbers in the result are finite, no volume is negative,
/// and `termination` says what they are worth. `warm` (may be null) is a shape of a similar piece to start
/// from.
[[nodiscard]] Shape solve_shape(const ShapeProblem& problem, const ShapeOptions& options = {},
                                const Shape* warm = nullptr);

}  // namespace roundwright
