#include "core/shape/measure_shape.h"

namespace roundwright {

namespace {

LoopMeasures loop_of(const Shape& shape, std::size_t i) {
    LoopMeasures loop;
    loop.width_mm = 2 * shape.reach_mm(i);
    loop.depth_mm = shape.flattened() ? 2 * shape.sections[i].half_depth_mm : 2 * shape.radius_mm[i];
    loop.height_mm = shape.z_mm[i];
    loop.radius_mm = shape.radius_mm[i];
    loop.course_stretch = shape.course_stretch[i];
    if (i > 0) loop.wale_stretch = shape.wale_stretch[i - 1];
    return loop;
}

}  // namespace

PieceMeasures measures_of(const ShapeProblem& problem, const Shape& shape) {
    PieceMeasures measures;
    measures.fidelity = problem.equivalent_round ? Fidelity::equivalent_round : Fidelity::round;
    measures.termination = shape.termination;
    measures.flattened = shape.flattened();
    measures.width_mm = shape.width_mm;
    measures.depth_mm = shape.depth_mm;
    measures.height_mm = shape.height_mm;
    measures.volume_mm3 = shape.volume_mm3;
    measures.surface_mm2 = shape.surface_mm2;
    measures.area_stretch = shape.area_stretch;
    measures.loops.reserve(shape.radius_mm.size());
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i) measures.loops.push_back(loop_of(shape, i));
    return measures;
}

}  // namespace roundwright
