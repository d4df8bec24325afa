#include "core/shape/solve_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "core/shape/cold_start.h"
#include "core/shape/face_down.h"
#include "core/shape/flat_layers.h"
#include "core/shape/lying_rounds.h"
#include "core/shape/measure_profile.h"
#include "core/shape/membrane.h"
#include "core/shape/minimise.h"
#include "core/shape/sewn_seam.h"
#include "core/shape/stuffing_search.h"
#include "core/shape/yield_flat.h"

namespace roundwright {

namespace {

/// Pieces of more nodes than this are solved with half the nodes first.
constexpr std::size_t few_nodes = 16;
constexpr double coarse_relative_gradient = 5e-2;
/// Of the usual amount for the stretch: a stuffed piece never goes quite limp.
constexpr double least_stuffing_share = 0.02;
/// Of the cube of its width: a piece that holds less lies flat.
constexpr double flat_volume_share = 1e-9;

bool are_usable(const ShapeOptions& options) {
    return std::isfinite(options.course_stiffness) && options.course_stiffness > 0 &&
           std::isfinite(options.wale_stiffness) && options.wale_stiffness > 0 &&
           options.compression_factor >= 0 && options.compression_factor <= 1 &&
           options.bending_stiffness >= 0 && std::isfinite(options.bending_stiffness) &&
           options.relative_gradient > 0;
}

MinimiseLimits limits_of(const ShapeOptions& options, double relative_gradient) {
    return {relative_gradient, options.max_iterations, options.stop};
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

Equilibrium start_at(Positions x, const Membrane& membrane, double stretch, const ShapeOptions& options) {
    Equilibrium start;
    start.x = std::move(x);
    start.stuffing = first_stuffing(membrane, stretch, options);
    start.least_stuffing = least_stuffing_share * start.stuffing;
    return start;
}

/// From the same piece with half the nodes, and so on down to a few.
Equilibrium coarse_to_fine_start(const Meridian& meridian, const Membrane& membrane, double stretch,
                                 const ShapeOptions& options, MinimiseWorkspace<Membrane>& workspace) {
    if (meridian.nodes() <= few_nodes)
        return start_at(start_from_counts(meridian), membrane, stretch, options);
    const Meridian coarse = coarsened(meridian);
    const Membrane coarse_membrane(coarse, options);
    Equilibrium state = coarse_to_fine_start(coarse, coarse_membrane, stretch, options, workspace);
    minimise(coarse_membrane, stretch, limits_of(options, coarse_relative_gradient), workspace, state);
    state.x = refined(meridian, state.x);
    state.least_stuffing = least_stuffing_share * first_stuffing(membrane, stretch, options);
    if (can_start(membrane, meridian, state.x)) return state;
    return start_at(start_from_counts(meridian), membrane, stretch, options);
}

std::optional<Equilibrium> warm_start(const ShapeProblem& problem, const Meridian& meridian,
                                      const Membrane& membrane, const ShapeOptions& options,
                                      const Shape* warm) {
    if (warm == nullptr || warm->radius_mm.size() < 2 || warm->z_mm.size() != warm->radius_mm.size())
        return {};
    // What lies flat is no start for what balances.
    if (!(warm->pressure > 0) && (warm->flattened() || problem.area_stretch > 0)) return {};
    Equilibrium start =
        start_at(start_from_shape(problem, meridian, *warm), membrane, problem.area_stretch, options);
    const double before =
        warm->pressure * (problem.stuffed_rounds ? membrane.volume(start.x) : warm->volume_mm3);
    if (before > start.stuffing / 100 && before < start.stuffing * 100)
        start.stuffing = std::max(before, start.least_stuffing);
    if (!can_start(membrane, meridian, start.x)) return {};
    return start;
}

bool is_finite(const Shape& shape) {
    const auto flat = [](const LoopSection& section) {
        return std::isfinite(section.half_width_mm) && std::isfinite(section.half_depth_mm) &&
               std::isfinite(section.bend);
    };
    const auto finite = [](const std::vector<double>& values) {
        return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
    };
    return finite(shape.radius_mm) && finite(shape.z_mm) && finite(shape.course_stretch) &&
           finite(shape.wale_stretch) && std::isfinite(shape.energy) && std::isfinite(shape.pressure) &&
           std::isfinite(shape.volume_mm3) && std::isfinite(shape.surface_mm2) &&
           std::isfinite(shape.residual) && std::ranges::all_of(shape.sections, flat);
}

void set_loops(const ShapeProblem& problem, const Membrane& membrane, const Positions& x, double lowest,
               Shape& shape) {
    const std::size_t first = node_of_first_loop(problem);
    const std::size_t loops = problem.rest_loop_mm.size();
    for (auto* values : {&shape.radius_mm, &shape.z_mm, &shape.course_stretch, &shape.wale_stretch})
        values->reserve(loops);
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
    const double stuffed = problem.stuffed_rounds ? membrane.volume(state.x) : measure.volume;
    shape.pressure = problem.area_stretch > 0 ? state.stuffing / stuffed : 0;
    LyingWalls walls(nodes - 1);
    membrane.take_walls(state.x, walls);
    shape.area_stretch = membrane.area_stretch(state.x, walls);
    shape.width_mm = measure.width;
    shape.height_mm = measure.height;
    shape.depth_mm = measure.width;
    shape.volume_mm3 = measure.volume;
    shape.surface_mm2 = measure.surface;
    shape.first_pole_z_mm = z.front() - lowest;
    shape.last_pole_z_mm = z.back() - lowest;
    set_loops(problem, membrane, state.x, lowest, shape);
    return shape;
}

bool is_settled(const Equilibrium& state) {
    return state.termination == Termination::converged || state.termination == Termination::cancelled;
}

/// Whether a wall leads back down: an end or a neck has turned inside out.
bool turns_inside(const Membrane& membrane, const Positions& x) {
    for (std::size_t s = 0; s + 1 < membrane.nodes(); ++s)
        if (x[2 * s + 3] - x[2 * s + 1] < -1e-3 * membrane.rest_height(s)) return true;
    return false;
}

/// Tries one start after the other until one converges; else keeps the last. A shape that a warm start has
/// left turned inside out is kept only if the cold start finds none of less energy, so that the shape shown
/// does not depend on the way to it.
Equilibrium equilibrium(const ShapeProblem& problem, const Meridian& meridian, const Membrane& membrane,
                        const ShapeOptions& options, const Shape* warm) {
    // Kept from solve to solve: fresh memory costs a quarter of the time of a long piece.
    static thread_local MinimiseWorkspace<Membrane> workspace;
    const auto settle = [&](Equilibrium state) {
        minimise(membrane, problem.area_stretch, limits_of(options, options.relative_gradient), workspace,
                 state);
        return state;
    };
    Equilibrium warmed;
    if (auto start = warm_start(problem, meridian, membrane, options, warm)) {
        warmed = settle(std::move(*start));
        if (warmed.termination == Termination::cancelled) return warmed;
        if (is_settled(warmed) && !turns_inside(membrane, warmed.x)) return warmed;
    }
    Equilibrium state =
        settle(coarse_to_fine_start(meridian, membrane, problem.area_stretch, options, workspace));
    if (is_settled(warmed) && (!is_settled(state) || membrane.energy(warmed.x) < membrane.energy(state.x)))
        return warmed;
    const Equilibrium counted =
        start_at(start_from_counts(meridian), membrane, problem.area_stretch, options);
    if (!is_settled(state) && meridian.nodes() > few_nodes) state = settle(counted);
    if (is_settled(state) || !(problem.area_stretch > 0)) return state;
    Equilibrium searched = search_stuffing(membrane, problem.area_stretch,
                                           limits_of(options, options.relative_gradient), workspace, counted);
    return is_settled(searched) ? searched : state;
}

/// Nothing tells the inside of a piece from its outside where no stuffing pushes: both have one energy. The
/// shape that encloses something is taken. What lies flat encloses nothing, but for the rounding.
Shape inside_in(const ShapeProblem& problem, const Membrane& membrane, Equilibrium& state) {
    Shape shape = shape_of(problem, membrane, state);
    if (shape.volume_mm3 < -flat_volume_share * std::pow(shape.width_mm, 3)) {
        for (std::size_t i = 1; i < state.x.size(); i += 2) state.x[i] = -state.x[i];
        shape = shape_of(problem, membrane, state);
    }
    shape.volume_mm3 = std::max(0.0, shape.volume_mm3);
    return shape;
}

Shape balanced(const ShapeProblem& problem, const ShapeOptions& options, const Shape* warm) {
    const Meridian meridian = meridian_of(problem);
    const Membrane membrane(meridian, options);
    Equilibrium state = equilibrium(problem, meridian, membrane, options, warm);
    return inside_in(problem, membrane, state);
}

/// As solved, with the circles that it takes with its flat rounds held.
Shape with_circles(const ShapeProblem& problem, const ShapeOptions& options, const LoopCircles& circles,
                   const Shape& solved) {
    const Meridian meridian = meridian_of(problem);
    Equilibrium state;
    state.termination = solved.usable() ? solved.termination : Termination::converged;
    state.iterations = solved.iterations;
    state.residual = solved.residual;
    state.x.assign(2 * meridian.nodes(), 0);
    const std::size_t first = node_of_first_loop(problem);
    for (std::size_t i = 0; i < circles.radius_mm.size(); ++i) {
        state.x[2 * (first + i)] = circles.radius_mm[i];
        state.x[2 * (first + i) + 1] = circles.z_mm[i];
    }
    if (first == 1) state.x[1] = circles.first_pole_z_mm;
    if (problem.last == MeridianEnd::drawn_closed) state.x.back() = circles.last_pole_z_mm;
    return inside_in(problem, Membrane(meridian, options), state);
}

/// Stretches are told from the fabric as it was worked.
void set_stretches(const ShapeProblem& problem, Shape& shape) {
    for (std::size_t i = 0; i < shape.radius_mm.size(); ++i) {
        const double rest = problem.rest_loop_mm[i] / (2 * std::numbers::pi);
        const bool has_loop = rest > 0 && shape.radius_mm[i] > 0;
        shape.course_stretch[i] = has_loop ? shape.radius_mm[i] / rest - 1 : 0;
        if (i == 0) continue;
        const double length =
            std::hypot(shape.radius_mm[i] - shape.radius_mm[i - 1], shape.z_mm[i] - shape.z_mm[i - 1]);
        shape.wale_stretch[i - 1] = length / problem.rest_height_mm[i - 1] - 1;
    }
}

Shape laid_down(const ShapeProblem& problem, const ShapeOptions& options, const Shape* warm) {
    const YieldedFabric fabric = yielded_flat(problem);
    const auto lies = [](double part) { return part > 0; };
    if (std::ranges::none_of(fabric.from_start, lies) && std::ranges::none_of(fabric.from_end, lies))
        return balanced(problem, options, warm);
    Shape solved;
    const LoopCircles circles = lying_rounds(
        fabric, [&](const ShapeProblem& part) { return balanced(part, options, nullptr); }, solved);
    Shape shape = with_circles(fabric.problem, options, circles, solved);
    set_stretches(problem, shape);
    return shape;
}

Shape lying_or_balanced(const ShapeProblem& problem, const ShapeOptions& options, const Shape* warm) {
    if (problem.limp) return lay_flat(problem, options);
    if (problem.on_its_face) return lay_on_face(problem);
    return can_lie_flat(problem) ? laid_down(problem, options, warm) : balanced(problem, options, warm);
}

}  // namespace

Shape solve_shape(const ShapeProblem& problem, const ShapeOptions& options, const Shape* warm) {
    if (!is_usable(problem) || !are_usable(options)) return {};
    Shape shape = lying_or_balanced(problem, options, warm);
    if (problem.sewn_straight && !shape.flattened()) sew_straight(problem, shape);
    return is_finite(shape) && shape.volume_mm3 >= 0 ? shape : Shape{};
}

}  // namespace roundwright
