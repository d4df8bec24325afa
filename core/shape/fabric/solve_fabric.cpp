#include "core/shape/fabric/solve_fabric.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>

#include "core/shape/fabric/block_factor.h"
#include "core/shape/fabric/fabric_energy.h"
#include "core/shape/fabric/fabric_search.h"
#include "core/shape/fabric/fabric_topology.h"
#include "core/shape/fabric/nested_dissection.h"
#include "core/shape/fabric/usable_fabric.h"

namespace roundwright {

namespace {

/// Of the usual amount for the stretch: a stuffed piece never goes quite limp.
constexpr double least_stuffing_share = 0.02;

/// By the virial of a sphere, as in the round solve: 3 p V is the sum of tension times area over both
/// directions, and equal tensions T give the area stretch T / k_course + T / k_wale.
double first_stuffing(const FabricProblem& problem, double rest_area) {
    const double tension = problem.area_stretch / (1 / problem.course_stiffness + 1 / problem.wale_stiffness);
    return 2 * tension * rest_area / 3;
}

/// The pressure that balances the fabric best where it starts: for a warm start it is the one sought. One far
/// from the usual says that it starts elsewhere.
double stuffing_at(const FabricEnergy& energy, const Positions& x, double usual) {
    Eigen::VectorXd by_fabric(x.size());
    Eigen::VectorXd by_volume(x.size());
    energy.energy_gradient(x, by_fabric.data());
    energy.volume_gradient(x, by_volume.data());
    const double pressure = by_fabric.dot(by_volume) / by_volume.squaredNorm();
    const double stuffing = pressure * energy.volume(x);
    return stuffing > usual / 2 && stuffing < 2 * usual ? stuffing : usual;
}

Positions positions_of(std::span<const Vec3> start) {
    Positions x;
    x.reserve(3 * start.size());
    for (const Vec3& node : start) x.insert(x.end(), {node.x(), node.y(), node.z()});
    return x;
}

/// Whether there is a finite energy to go down from, and something for stuffing to push on.
bool can_start(const FabricProblem& problem, const FabricEnergy& energy, const Positions& x) {
    if (!std::isfinite(energy.energy(x))) return false;
    return !(problem.area_stretch > 0) || (energy.rest_area() > 0 && energy.volume(x) > 0);
}

bool is_finite(const FabricShape& shape) {
    return std::ranges::all_of(shape.nodes, [](const Vec3& node) { return node.allFinite(); }) &&
           std::isfinite(shape.pressure) && std::isfinite(shape.area_stretch) &&
           std::isfinite(shape.energy) && std::isfinite(shape.volume_mm3) && std::isfinite(shape.residual);
}

FabricShape shape_of(const FabricProblem& problem, const FabricEnergy& energy, const FabricState& state) {
    FabricShape shape;
    shape.nodes.reserve(energy.nodes());
    for (std::size_t i = 0; i < energy.nodes(); ++i) shape.nodes.emplace_back(state.x.data() + 3 * i);
    shape.volume_mm3 = energy.volume(state.x);
    shape.pressure = problem.area_stretch > 0 ? state.stuffing / shape.volume_mm3 : 0;
    shape.area_stretch = energy.area_stretch(state.x);
    shape.energy = energy.energy(state.x);
    shape.termination = state.termination;
    shape.iterations = state.iterations;
    shape.factorizations = state.factorizations;
    shape.cg_steps = state.cg_steps;
    shape.residual = state.residual;
    return shape;
}

}  // namespace

FabricShape solve_fabric(const FabricProblem& problem, std::span<const Vec3> start,
                         const FabricOptions& options) {
    if (!is_usable(problem) || !is_usable_start(problem, start)) return {};
    const std::optional<FabricTopology> topology = topology_of(problem);
    if (!topology) return {};
    const FabricEnergy energy(problem, *topology);
    FabricState state;
    state.x = positions_of(start);
    if (!can_start(problem, energy, state.x)) return {};
    if (problem.area_stretch > 0) {
        const double usual = first_stuffing(problem, energy.rest_area());
        state.stuffing = stuffing_at(energy, state.x, usual);
        state.least_stuffing = least_stuffing_share * usual;
    }
    const BlockMatrix one_ring = energy.one_ring_matrix();
    BlockFactor factor(energy.nodes(), one_ring.pairs(),
                       nested_dissection(energy.nodes(), one_ring.pairs(), start));
    FabricSearch(problem, energy, factor, options, state).run();
    FabricShape shape = shape_of(problem, energy, state);
    return is_finite(shape) ? shape : FabricShape{};
}

}  // namespace roundwright
