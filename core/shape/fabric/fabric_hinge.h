#pragma once

#include <Eigen/Core>
#include <array>
#include <cstdint>

namespace roundwright {

/// An edge between two triangles as it lies.
struct HingeMetric {
    Eigen::Vector3d edge;                   ///< unit, from the first node to the second
    std::array<Eigen::Vector3d, 2> normal;  ///< unit, outwards
    std::array<Eigen::Vector3d, 2>
        across;                    ///< unit, in the triangle's plane, from the edge to its third node
    std::array<double, 2> height;  ///< of the third node over the edge
    std::array<double, 2> foot;    ///< where along the edge it stands, 0 at the first node, 1 at the second
    double length;
    double cosine;  ///< of the angle between the normals
    double sine;    ///< positive where both third nodes lie outwards of each other's plane
};

/// The bending of fabric over an edge that two triangles share:
///
///     W = k (1 - n . n')      k = bending l^2 / (A + A'),  l, A: rest length and areas
///
/// which is bending * curvature^2 / 2 for each area of fabric (Seung and Nelson, Defects in flexible
/// membranes with crystalline order, 1988; on right-angled stitches the same k that the round solve has).
class FabricHinge {
  public:
    using Block = Eigen::Matrix3d;
    /// Nodes: both of the edge (0, 1), then the third of the triangle that runs it forward (2), and of the
    /// other one (3). Second derivatives by the pairs below; with them every row adds up to zero.
    using Blocks = std::array<Block, 6>;
    static constexpr std::array<std::array<std::size_t, 2>, 6> pairs{
        {{0, 1}, {1, 2}, {2, 0}, {0, 3}, {3, 1}, {2, 3}}};
    using Forces = std::array<Eigen::Vector3d, 4>;

    FabricHinge(const std::array<std::int32_t, 4>& nodes, double stiffness)
        : nodes_(nodes), stiffness_(stiffness) {}

    [[nodiscard]] const std::array<std::int32_t, 4>& nodes() const { return nodes_; }
    [[nodiscard]] HingeMetric metric(const double* positions) const;
    [[nodiscard]] double energy(const double* positions) const;
    [[nodiscard]] Forces gradient(const HingeMetric& at) const;
    [[nodiscard]] Blocks hessian(const HingeMetric& at) const;
    /// The square of the angle's first derivative alone, which is positive semidefinite.
    [[nodiscard]] Blocks semidefinite_hessian(const HingeMetric& at) const;
    /// Not less than the square of the angle's first derivative, without the pair of the third nodes: both
    /// triangles turn by themselves, (a + b)^2 <= 2 a^2 + 2 b^2.
    [[nodiscard]] Blocks one_ring_majorant(const HingeMetric& at) const;

  private:
    [[nodiscard]] Blocks hessian(const HingeMetric& at, double cosine, double sine) const;

    std::array<std::int32_t, 4> nodes_;
    double stiffness_;
};

}  // namespace roundwright
