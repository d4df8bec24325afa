#include "core/shape/fabric/fabric_energy.h"

#include <algorithm>
#include <cmath>

namespace roundwright {

namespace {

constexpr double one_hundredth = 0.01;

std::size_t index(std::int32_t i) { return static_cast<std::size_t>(i); }

void add(const Eigen::Vector3d& force, std::int32_t node, double factor, double* out) {
    for (std::size_t k = 0; k < 3; ++k)
        out[3 * index(node) + k] += factor * force[static_cast<Eigen::Index>(k)];
}

/// Adds a block in the rows of one node and the columns of another, to their pair and so that rows keep
/// adding up to zero.
void add_pair(const Eigen::Matrix3d& block, std::int32_t row, std::int32_t column, std::int32_t pair,
              BlockMatrix& out) {
    if (row < column)
        out.beside(index(pair)) += block;
    else
        out.beside(index(pair)) += block.transpose();
    out.diagonal(index(row)) -= block;
    out.diagonal(index(column)) -= block.transpose();
}

double rest_length_squared(const FabricTriangle& triangle, std::size_t edge) {
    return (triangle.rest[edge] - triangle.rest[(edge + 1) % 3]).squaredNorm();
}

/// Of an edge between two triangles: the mean of what both take it for.
double mean_length_squared(const FabricProblem& problem, const FabricTopology& topology, std::size_t e) {
    double sum = 0;
    for (const std::int32_t t : topology.edges[e].triangles)
        for (std::size_t k = 0; k < 3; ++k)
            if (index(topology.edges_of_triangle[index(t)][k]) == e)
                sum += rest_length_squared(problem.triangles[index(t)], k);
    return sum / 2;
}

}  // namespace

FabricEnergy::FabricEnergy(const FabricProblem& problem, const FabricTopology& topology)
    : material_(problem),
      edges_of_cell_(topology.edges_of_triangle),
      edges_(topology.edges.size()),
      volume_(problem, topology),
      is_fixed_(index(problem.nodes), 0) {
    cells_.reserve(problem.triangles.size());
    for (const FabricTriangle& triangle : problem.triangles) cells_.emplace_back(triangle);
    shares_ = problem.stuffed;
    shares_.resize(cells_.size(), 1.0);
    for (const FabricEdge& edge : topology.edges) pairs_.push_back(edge.nodes);
    add_hinges(problem, topology);
    for (const std::int32_t node : problem.fixed) is_fixed_[index(node)] = 1;
    set_scales(problem);
}

void FabricEnergy::add_hinges(const FabricProblem& problem, const FabricTopology& topology) {
    if (!(problem.bending_stiffness > 0)) return;
    const double bending = problem.bending_stiffness * problem.round_height_mm * problem.round_height_mm;
    for (std::size_t e = 0; e < topology.edges.size(); ++e) {
        const FabricEdge& edge = topology.edges[e];
        if (edge.is_open()) continue;
        const std::size_t t = index(edge.triangles[0]);
        const std::size_t u = index(edge.triangles[1]);
        const bool folds =
            std::ranges::binary_search(problem.creases, std::pair(edge.nodes[0], edge.nodes[1]));
        hinges_.emplace_back(std::array{edge.nodes[0], edge.nodes[1], edge.opposite[0], edge.opposite[1]},
                             (folds ? FabricProblem::crease_share : 1) * bending *
                                 mean_length_squared(problem, topology, e) /
                                 (cells_[t].rest_area() + cells_[u].rest_area()));
        // Edge k of a triangle is between its nodes k and k + 1, and the shared one opposite the third node.
        const auto place = [&](std::size_t triangle) {
            const auto& own = topology.edges_of_triangle[triangle];
            return static_cast<std::size_t>(std::ranges::find(own, static_cast<std::int32_t>(e)) -
                                            own.begin());
        };
        const auto next = [&](std::size_t triangle, std::size_t steps) {
            return topology.edges_of_triangle[triangle][(place(triangle) + steps) % 3];
        };
        edges_of_hinge_.push_back(
            {{static_cast<std::int32_t>(e), next(t, 1), next(t, 2), next(u, 1), next(u, 2)},
             static_cast<std::int32_t>(pairs_.size())});
        pairs_.push_back(
            {std::min(edge.opposite[0], edge.opposite[1]), std::max(edge.opposite[0], edge.opposite[1])});
    }
}

void FabricEnergy::set_scales(const FabricProblem& problem) {
    for (std::size_t c = 0; c < cells_.size(); ++c) {
        rest_area_ += shares_[c] * cells_[c].rest_area();
        for (std::size_t k = 0; k < 3; ++k) {
            const Eigen::Vector2d share = cells_[c].share(k);
            const double force =
                one_hundredth * cells_[c].rest_area() *
                std::hypot(problem.course_stiffness * share.x(), problem.wale_stiffness * share.y());
            force_scale_ += force * force;
        }
    }
    force_scale_ = std::sqrt(force_scale_);
}

double FabricEnergy::energy(const Positions& x) const {
    double sum = 0;
    for (const FabricCell& cell : cells_) sum += cell.energy(material_, cell.metric(x.data()));
    for (const FabricHinge& hinge : hinges_) sum += hinge.energy(x.data());
    return sum;
}

double FabricEnergy::volume(const Positions& x) const { return volume_.value(x.data()); }

double FabricEnergy::area_stretch(const Positions& x) const {
    double sum = 0;
    for (std::size_t c = 0; c < cells_.size(); ++c)
        if (shares_[c] != 0) sum += shares_[c] * cells_[c].stretched_area(cells_[c].metric(x.data()));
    return rest_area_ > 0 ? sum / rest_area_ : 0;
}

void FabricEnergy::set_fixed_to_zero(double* gradient) const {
    for (std::size_t i = 0; i < nodes(); ++i)
        if (is_fixed(i)) std::fill_n(gradient + 3 * i, 3, 0.0);
}

void FabricEnergy::energy_gradient(const Positions& x, double* out) const {
    std::fill_n(out, unknowns(), 0.0);
    for (const FabricCell& cell : cells_) {
        const FabricCell::Forces forces = cell.gradient(material_, cell.metric(x.data()));
        for (std::size_t k = 0; k < 3; ++k) add(forces[k], cell.nodes()[k], 1, out);
    }
    for (const FabricHinge& hinge : hinges_) {
        const FabricHinge::Forces forces = hinge.gradient(hinge.metric(x.data()));
        for (std::size_t k = 0; k < 4; ++k) add(forces[k], hinge.nodes()[k], 1, out);
    }
    set_fixed_to_zero(out);
}

void FabricEnergy::volume_gradient(const Positions& x, double* out) const {
    std::fill_n(out, unknowns(), 0.0);
    volume_.add_gradient(x.data(), 1, out);
    set_fixed_to_zero(out);
}

void FabricEnergy::area_stretch_gradient(const Positions& x, double* out) const {
    std::fill_n(out, unknowns(), 0.0);
    if (!(rest_area_ > 0)) return;
    for (std::size_t c = 0; c < cells_.size(); ++c) {
        if (shares_[c] == 0) continue;
        const FabricCell& cell = cells_[c];
        const FabricCell::Forces forces = cell.stretched_area_gradient(cell.metric(x.data()));
        for (std::size_t k = 0; k < 3; ++k) add(forces[k], cell.nodes()[k], shares_[c] / rest_area_, out);
    }
    set_fixed_to_zero(out);
}

BlockMatrix FabricEnergy::one_ring_matrix() const {
    const auto end = pairs_.begin() + static_cast<std::ptrdiff_t>(edges_);
    return BlockMatrix(nodes(), std::vector<BlockMatrix::Pair>(pairs_.begin(), end));
}

template <class CellBlocks>
void FabricEnergy::add_cells(const Positions& x, const CellBlocks& blocks_of, BlockMatrix& out) const {
    for (std::size_t c = 0; c < cells_.size(); ++c) {
        const FabricCell::Blocks blocks = blocks_of(cells_[c], cells_[c].metric(x.data()));
        const auto& nodes = cells_[c].nodes();
        for (std::size_t k = 0; k < 3; ++k)
            add_pair(blocks[k], nodes[k], nodes[(k + 1) % 3], edges_of_cell_[c][k], out);
    }
}

template <class HingeBlocks>
void FabricEnergy::add_hinge_blocks(const Positions& x, std::size_t pairs, const HingeBlocks& blocks_of,
                                    BlockMatrix& out) const {
    for (std::size_t h = 0; h < hinges_.size(); ++h) {
        const FabricHinge::Blocks blocks = blocks_of(hinges_[h], hinges_[h].metric(x.data()));
        const auto& nodes = hinges_[h].nodes();
        for (std::size_t k = 0; k < pairs; ++k) {
            const auto [row, column] = FabricHinge::pairs[k];
            const std::int32_t pair = k < 5 ? edges_of_hinge_[h].pairs[k] : edges_of_hinge_[h].third_nodes;
            add_pair(blocks[k], nodes[row], nodes[column], pair, out);
        }
    }
}

void FabricEnergy::hessian(const Positions& x, double pressure, Curvature curvature, BlockMatrix& out) const {
    const bool exact = curvature == Curvature::exact;
    out.set_zero();
    add_cells(
        x,
        [&](const FabricCell& cell, const CellMetric& at) {
            return exact ? cell.hessian(material_, at) : cell.semidefinite_hessian(material_, at);
        },
        out);
    add_hinge_blocks(
        x, 6,
        [&](const FabricHinge& hinge, const HingeMetric& at) {
            return exact ? hinge.hessian(at) : hinge.semidefinite_hessian(at);
        },
        out);
    if (exact && pressure != 0) volume_.add_hessian(x.data(), -pressure, out);
    out.fix(is_fixed_);
}

void FabricEnergy::add_fans_product(const Positions& x, double pressure, const double* vector,
                                    double* out) const {
    if (pressure != 0) volume_.add_fans_product(x.data(), vector, -pressure, out);
}

void FabricEnergy::one_ring_majorant(const Positions& x, BlockMatrix& out) const {
    out.set_zero();
    add_cells(
        x,
        [&](const FabricCell& cell, const CellMetric& at) {
            return cell.semidefinite_hessian(material_, at);
        },
        out);
    add_hinge_blocks(
        x, 5, [](const FabricHinge& hinge, const HingeMetric& at) { return hinge.one_ring_majorant(at); },
        out);
    out.fix(is_fixed_);
}

}  // namespace roundwright
