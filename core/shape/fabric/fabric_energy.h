#pragma once

#include <cstddef>
#include <vector>

#include "core/shape/energy.h"
#include "core/shape/fabric/block_matrix.h"
#include "core/shape/fabric/enclosed_volume.h"
#include "core/shape/fabric/fabric_cell.h"
#include "core/shape/fabric/fabric_hinge.h"
#include "core/shape/fabric/fabric_problem.h"
#include "core/shape/fabric/fabric_topology.h"

namespace roundwright {

/// The elastic energy of a piece of fabric: of its triangles (FabricCell) and of the edges between them
/// (FabricHinge), and the volume that its stuffed part encloses (EnclosedVolume), with derivatives. Positions
/// are x, y, z of one node after the other, in mm; energies are in units of course stiffness * mm^2.
class FabricEnergy {
  public:
    FabricEnergy(const FabricProblem& problem, const FabricTopology& topology);

    [[nodiscard]] std::size_t nodes() const { return is_fixed_.size(); }
    [[nodiscard]] std::size_t unknowns() const { return 3 * nodes(); }
    /// Of the stuffed part, by its share.
    [[nodiscard]] double rest_area() const { return rest_area_; }
    /// Size of the forces that a stretch of one hundredth everywhere makes: the scale for residuals.
    [[nodiscard]] double force_scale() const { return force_scale_; }
    [[nodiscard]] bool is_fixed(std::size_t node) const { return is_fixed_[node] != 0; }

    [[nodiscard]] double energy(const Positions& x) const;
    [[nodiscard]] double volume(const Positions& x) const;
    /// Mean over the stuffed fabric of course stretch plus wale stretch, where what is slack counts as
    /// unstretched: the measure of the round solve.
    [[nodiscard]] double area_stretch(const Positions& x) const;

    /// Fixed nodes have 0. `out` has `unknowns()` entries.
    void energy_gradient(const Positions& x, double* out) const;
    void volume_gradient(const Positions& x, double* out) const;
    void area_stretch_gradient(const Positions& x, double* out) const;

    /// Neighbours by an edge first, then the two third nodes of every edge.
    [[nodiscard]] BlockMatrix hessian_matrix() const { return BlockMatrix(nodes(), pairs_); }
    /// Neighbours by an edge alone.
    [[nodiscard]] BlockMatrix one_ring_matrix() const;
    /// Second derivatives of E - p V, but for what closes open edges.
    /// Projected: without the pressure's part and what is indefinite of each term.
    void hessian(const Positions& x, double pressure, Curvature curvature, BlockMatrix& out) const;
    /// Adds the rest of the exact ones, times a vector.
    void add_fans_product(const Positions& x, double pressure, const double* vector, double* out) const;
    /// A positive semidefinite matrix near that of E, with neighbours by an edge alone.
    void one_ring_majorant(const Positions& x, BlockMatrix& out) const;

  private:
    struct Edges {
        std::array<std::int32_t, 5> pairs{};  ///< of the hinge's first five
        std::int32_t third_nodes = 0;
    };
    void add_hinges(const FabricProblem& problem, const FabricTopology& topology);
    void set_scales(const FabricProblem& problem);
    void set_fixed_to_zero(double* gradient) const;
    template <class CellBlocks>
    void add_cells(const Positions& x, const CellBlocks& blocks_of, BlockMatrix& out) const;
    template <class HingeBlocks>
    void add_hinge_blocks(const Positions& x, std::size_t pairs, const HingeBlocks& blocks_of,
                          BlockMatrix& out) const;

    FabricMaterial material_;
    std::vector<FabricCell> cells_;
    std::vector<double> shares_;  ///< of the pressure on each cell
    std::vector<std::array<std::int32_t, 3>> edges_of_cell_;
    std::vector<FabricHinge> hinges_;
    std::vector<Edges> edges_of_hinge_;
    std::vector<BlockMatrix::Pair> pairs_;
    std::size_t edges_ = 0;
    EnclosedVolume volume_;
    std::vector<char> is_fixed_;
    double rest_area_ = 0;
    double force_scale_ = 0;
};

}  // namespace roundwright
