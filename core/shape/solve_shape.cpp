#include "core/shape/solve_shape.h"

#include <algorithm>
#include <cmath>

#include "core/shape/cold_start.h"
#include "core/shape/measure_profile.h"
#include "core/shape/minimise.h"

namespace roundwright {

namespace {

/// Pieces of more nodes than this are solved with half the nodes first.
constexpr std::size_t few_nodes = 24;
constexpr double coarse_relative_gradient = 1e-3;

bool are_usable(const ShapeOptions& options) {
    return std::isfinite(options.course_stiffness) && options.course_stiffness > 0 &&
           std::isfinite(options.wale_stiffness) && options.wale_stiffness > 0 &&
           options.compression_factor >= 0 && options.compression_factor <= 1 &&
           options.bending_stiffness >= 0 && std::isfinite(options.bending_stiffness) &&
           options.relative_gradient > 0;
}

/// By the virial of a sphere: 3 p V is the sum of tension times area over both directions, and equal
/// tensions T give the area stretch T / k_course + T / k_wale.
double first_stuffing(const Membrane& membrane, double stretch, const ShapeOptions& options) {
    const double tension = stretch / (1 / options.course_stiffness + 1 / options.wale_stiffness);
    return 2 * tension * membrane.rest_area() / 3;
}

/// A start must enclose something for stuffing to push on.
bool can_start(const Membrane& membrane, const Meridian& meridian, const Positions& x) {
    for (std::size_t i = 0; i < meridian.nodes(); ++i)
        if (!meridian.on_axis(i) && !(x[2 * i] > 1e-3 * membrane.rest_radius(i))) return false;
    return std::all_of(x.begin(), x.end(), [](double value) { return std::isfinite(value); }) &&
           membrane.volume(x) > 0;
}

Equilibrium cold_start(const Meridian& meridian, const Membrane& membrane, double stretch,
                       const ShapeOptions& options, MinimiseWorkspace& workspace) {
    Equilibrium start;
    start.stuffing = first_stuffing(membrane, stretch, options);
    if (meridian.nodes() <= few_nodes) {
        start.x = start_from_counts(meridian);
        return start;
    }
    const Meridian coarse = coarsened(meridian);
    const Membrane coarse_membrane(coarse, options);
    Equilibrium approximate = cold_start(coarse, coarse_membrane, stretch, options, workspace);
    minimise(coarse_membrane, stretch, options, coarse_relative_gradient, options.max_iterations, workspace,
             approximate);
    start.x = refined(meridian, approximate.x);
    start.stuffing = approximate.stuffing;
    if (!can_start(membrane, meridian, start.x)) start.x = start_from_counts(meridian);
    return start;
}

bool is_finite(const Shape& shape) {
    const auto finite = [](const std::vector<double>& values) {
        return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
    };
    return finite(shape.radius_mm) && finite(shape.z_mm) && finite(shape.course_stretch) &&
           finite(shape.wale_stretch) && std::isfinite(shape.energy) && std::isfinite(shape.pressure) &&
           std::isfinite(shape.volume_mm3) && std::isfinite(shape.surface_mm2) &&
           std::isfinite(shape.residual);
}

void set_loops(const ShapeProblem& problem, const Membrane& membrane, const Positions& x, double lowest,
               Shape& shape) {
    const std::size_t first = node_of_first_loop(problem);
    const std::size_t loops = problem.rest_loop_mm.size();
    for (std::size_t i = 0; i < loops; ++i) {
        shape.radius_mm.push_back(x[2 * (first + i)]);
        shape.z_mm.push_back(x[2 * (first + i) + 1] - lowest);
        shape.course_stretch.push_back(membrane.course_stretch(x, first + i));
        if (i > 0) shape.wale_stretch.push_back(membrane.wale_stretch(x, first + i - 1));
    }
}

Shape shape_of(const ShapeProblem& problem, const Membrane& membrane, const Equilibrium& state) {
    const std::size_t nodes = membrane.nodes();
    std::vector<double> radius(nodes);
    std::vector<double> z(nodes);
    for (std::size_t i = 0; i < nodes; ++i) {
        radius[i] = state.x[2 * i];
        z[i] = state.x[2 * i + 1];
    }
    const double lowest = *std::min_element(z.begin(), z.end());
    const ProfileMeasure measure = measure_profile(radius, z);
    Shape shape;
    shape.termination = state.termination;
    shape.iterations = state.iterations;
    shape.residual = state.residual;
    shape.energy = membrane.energy(state.x);
    shape.pressure = problem.area_stretch > 0 ? state.stuffing / measure.volume : 0;
    shape.area_stretch = membrane.area_stretch(state.x);
    shape.width_mm = measure.width;
    shape.height_mm = measure.height;
    shape.volume_mm3 = measure.volume;
    shape.surface_mm2 = measure.surface;
    shape.first_pole_z_mm = z.front() - lowest;
    shape.last_pole_z_mm = z.back() - lowest;
    set_loops(problem, membrane, state.x, lowest, shape);
    return shape;
}

Equilibrium starting_state(const ShapeProblem& problem, const Meridian& meridian, const Membrane& membrane,
                           const ShapeOptions& options, const Shape* warm, MinimiseWorkspace& workspace) {
    if (warm != nullptr && warm->radius_mm.size() >= 2 && warm->z_mm.size() == warm->radius_mm.size()) {
        Equilibrium start;
        start.x = start_from_shape(problem, meridian, *warm);
        start.stuffing = warm->pressure * warm->volume_mm3;
        const double usual = first_stuffing(membrane, problem.area_stretch, options);
        if (!(start.stuffing > usual / 100 && start.stuffing < usual * 100)) start.stuffing = usual;
        if (can_start(membrane, meridian, start.x)) return start;
    }
    return cold_start(meridian, membrane, problem.area_stretch, options, workspace);
}

}  // namespace

Shape solve_shape(const ShapeProblem& problem, const ShapeOptions& options, const Shape* warm) {
    if (!is_usable(problem) || !are_usable(options)) return {};
    const Meridian meridian = meridian_of(problem);
    const Membrane membrane(meridian, options);
    MinimiseWorkspace workspace;
    Equilibrium state = starting_state(problem, meridian, membrane, options, warm, workspace);
    minimise(membrane, problem.area_stretch, options, options.relative_gradient, options.max_iterations,
             workspace, state);
    Shape shape = shape_of(problem, membrane, state);
    return is_finite(shape) ? shape : Shape{};
}

}  // namespace roundwright
