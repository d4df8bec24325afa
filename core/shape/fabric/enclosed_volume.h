#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/shape/fabric/block_matrix.h"
#include "core/shape/fabric/fabric_problem.h"
#include "core/shape/fabric/fabric_topology.h"

namespace roundwright {

/// The volume that stuffed fabric encloses, by the divergence theorem: a sixth of the sum of
/// x0 . (x1 x x2) over its triangles, each with its share of the pressure. Where the share changes, and along
/// open edges, a fan to the mean of the edge's nodes closes it, so that moving the whole changes nothing and
/// the pressure's forces balance.
class EnclosedVolume {
  public:
    EnclosedVolume() = default;
    /// A cap is closed by itself; other open edges are closed together with those that they touch.
    EnclosedVolume(const FabricProblem& problem, const FabricTopology& topology);

    [[nodiscard]] double value(const double* positions) const;
    /// Adds factor times the first derivatives.
    void add_gradient(const double* positions, double factor, double* out) const;
    /// Adds factor times what the fabric's own triangles have of the second derivatives: to the pair of an
    /// edge, which has that edge's number.
    void add_hessian(const double* positions, double factor, BlockMatrix& out) const;
    /// Adds factor times what the fans have of them, times a vector.
    void add_fans_product(const double* positions, const double* vector, double factor, double* out) const;

  private:
    struct Face {
        std::array<std::int32_t, 3> nodes{};
        double share = 1;
        std::array<std::int32_t, 3> edges{};
    };
    /// From the edges of a loop to the mean of its nodes.
    struct Fan {
        struct Edge {
            std::int32_t from, to;
            double share;
        };
        std::vector<Edge> edges;
        std::vector<std::int32_t> nodes;
    };
    void add_faces(const FabricProblem& problem, const FabricTopology& topology);
    void add_fans(const FabricProblem& problem, const FabricTopology& topology);

    std::vector<Face> faces_;
    std::vector<Fan> fans_;
};

}  // namespace roundwright
