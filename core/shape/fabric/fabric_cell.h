#pragma once

#include <Eigen/Core>
#include <array>
#include <cstdint>

#include "core/shape/fabric/fabric_problem.h"

namespace roundwright {

/// What fabric is made of, for its strains in its own plane.
struct FabricMaterial {
    double course = 1;
    double wale = 0.5;
    double shear = 0.1;
    double compression_factor = 0.02;

    explicit FabricMaterial(const FabricProblem& problem);
};

/// A triangle as it lies: f = dx/dX along course and wale, and their inner products.
struct CellMetric {
    Eigen::Vector3d course;
    Eigen::Vector3d wale;
    double course_squared;
    double wale_squared;
    double product;
};

/// The elastic energy of one triangle: orthotropic St. Venant and Kirchhoff (Green's strain), softer where
/// fabric is pushed together, because it wrinkles, and guarded against collapse by an energy of its area:
///
///     W / area = k_course phi(E11) / 2 + k_wale phi(E22) / 2 + k_shear (2 E12)^2 / 2 + barrier(J)
///     E11 = (|f_course|^2 - 1) / 2,  E22 = (|f_wale|^2 - 1) / 2,  2 E12 = f_course . f_wale
///     phi(E) = E^2, times the compression factor where E < 0
///     barrier(J) = kappa ln^2(J / J0) where J < J0,  J = |f_course x f_wale|, kappa = 0.05 k_course, J0 =
///     0.3
///
/// Without the barrier such a material collapses below a stretch of 1 / sqrt 3, where its force is largest.
class FabricCell {
  public:
    using Block = Eigen::Matrix3d;
    /// Second derivatives by nodes (0, 1), (1, 2) and (2, 0); with them every row adds up to zero.
    using Blocks = std::array<Block, 3>;
    using Forces = std::array<Eigen::Vector3d, 3>;

    explicit FabricCell(const FabricTriangle& triangle);

    [[nodiscard]] const std::array<std::int32_t, 3>& nodes() const { return nodes_; }
    [[nodiscard]] double rest_area() const { return area_; }
    /// d f / d x_k: how much of node k's position is in the course's and the wale's direction, 1/mm.
    [[nodiscard]] Eigen::Vector2d share(std::size_t k) const { return {by_course_[k], by_wale_[k]}; }

    [[nodiscard]] CellMetric metric(const double* positions) const;
    [[nodiscard]] double energy(const FabricMaterial& material, const CellMetric& at) const;
    [[nodiscard]] Forces gradient(const FabricMaterial& material, const CellMetric& at) const;
    [[nodiscard]] Blocks hessian(const FabricMaterial& material, const CellMetric& at) const;
    /// The same, positive semidefinite: the stress that stiffens sideways counts where it pulls.
    [[nodiscard]] Blocks semidefinite_hessian(const FabricMaterial& material, const CellMetric& at) const;

    /// Tensile stretch, course plus wale, times the rest area; what is slack counts as unstretched.
    [[nodiscard]] double stretched_area(const CellMetric& at) const;
    [[nodiscard]] Forces stretched_area_gradient(const CellMetric& at) const;

  private:
    [[nodiscard]] Forces to_nodes(const Eigen::Vector3d& by_course, const Eigen::Vector3d& by_wale) const;

    std::array<std::int32_t, 3> nodes_;
    double area_;
    std::array<double, 3> by_course_;
    std::array<double, 3> by_wale_;
};

}  // namespace roundwright
