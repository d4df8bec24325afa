#include "core/shape/fabric/fabric_cell.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstddef>

namespace roundwright {

namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

constexpr double barrier_stiffness = 0.05;  ///< of the course stiffness
constexpr double barrier_area = 0.3;        ///< J0
constexpr double u0 = barrier_area * barrier_area;

/// First derivatives of W / area by |f_course|^2 and |f_wale|^2, twice, and by their product: the second
/// stress of Piola and Kirchhoff.
struct Stress {
    double cc, ww, cw;
};

/// Second derivatives of W / area by (|f_course|^2, |f_wale|^2, product).
struct Tangent {
    double aa, bb, cc;
    double ab = 0, ac = 0, bc = 0;
};

double stiffness(double k, double factor, double squared) { return squared < 1 ? factor * k : k; }

/// J^2, of which the barrier is kappa / 4 ln^2(u / u0).
double area_squared(const CellMetric& at) {
    return at.course_squared * at.wale_squared - at.product * at.product;
}

double barrier_by_u(double kappa, double u) { return kappa / 2 * std::log(u / u0) / u; }
double barrier_by_u_twice(double kappa, double u) { return kappa / 2 * (1 - std::log(u / u0)) / (u * u); }

Stress stress(const FabricMaterial& m, const CellMetric& at) {
    const double a = at.course_squared;
    const double b = at.wale_squared;
    Stress s{stiffness(m.course, m.compression_factor, a) * (a - 1) / 2,
             stiffness(m.wale, m.compression_factor, b) * (b - 1) / 2, m.shear * at.product};
    const double u = area_squared(at);
    if (u < u0) {
        const double by_u = barrier_by_u(barrier_stiffness * m.course, u);
        s.cc += 2 * by_u * b;
        s.ww += 2 * by_u * a;
        s.cw -= 2 * by_u * at.product;
    }
    return s;
}

Tangent tangent(const FabricMaterial& m, const CellMetric& at, bool exact) {
    const double a = at.course_squared;
    const double b = at.wale_squared;
    const double c = at.product;
    Tangent t{stiffness(m.course, m.compression_factor, a) / 4,
              stiffness(m.wale, m.compression_factor, b) / 4, m.shear};
    const double u = area_squared(at);
    if (u >= u0) return t;
    const double kappa = barrier_stiffness * m.course;
    const double twice = barrier_by_u_twice(kappa, u);
    const double once = exact ? barrier_by_u(kappa, u) : 0;
    t.aa += twice * b * b;
    t.bb += twice * a * a;
    t.cc += 4 * twice * c * c - 2 * once;
    t.ab = twice * a * b + once;
    t.ac = -2 * twice * b * c;
    t.bc = -2 * twice * a * c;
    return t;
}

/// The nearest positive semidefinite one.
Stress pulling_only(const Stress& s) {
    const double mean = (s.cc + s.ww) / 2;
    const double half = (s.cc - s.ww) / 2;
    const double radius = std::sqrt(half * half + s.cw * s.cw);
    if (mean >= radius) return s;
    if (mean + radius <= 0) return {0, 0, 0};
    // The one positive eigenvalue's part: (mean + radius) times the projection on its direction.
    const double scale = (mean + radius) / (2 * radius);
    return {scale * (radius + half), scale * (radius - half), scale * s.cw};
}

FabricCell::Blocks blocks(const std::array<double, 3>& by_course, const std::array<double, 3>& by_wale,
                          double area, const CellMetric& at, const Stress& s, const Tangent& t) {
    const Matrix3d ff = at.course * at.course.transpose();
    const Matrix3d gg = at.wale * at.wale.transpose();
    const Matrix3d fg = at.course * at.wale.transpose();
    Matrix3d cc = 4 * t.aa * ff + t.cc * gg;
    Matrix3d ww = 4 * t.bb * gg + t.cc * ff;
    Matrix3d cw = 4 * t.ab * fg + t.cc * fg.transpose();
    if (t.ab != 0 || t.ac != 0 || t.bc != 0) {
        cc += 2 * t.ac * (fg + fg.transpose());
        ww += 2 * t.bc * (fg + fg.transpose());
        cw += 2 * t.ac * ff + 2 * t.bc * gg;
    }
    cc.diagonal().array() += s.cc;
    ww.diagonal().array() += s.ww;
    cw.diagonal().array() += s.cw;
    FabricCell::Blocks out;
    for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t l = (k + 1) % 3;
        out[k] = area * by_course[k] * by_course[l] * cc + area * by_wale[k] * by_wale[l] * ww +
                 area * by_course[k] * by_wale[l] * cw + area * by_wale[k] * by_course[l] * cw.transpose();
    }
    return out;
}

}  // namespace

FabricMaterial::FabricMaterial(const FabricProblem& problem)
    : course(problem.course_stiffness),
      wale(problem.wale_stiffness),
      shear(problem.shear_stiffness),
      compression_factor(problem.compression_factor) {}

FabricCell::FabricCell(const FabricTriangle& triangle) : nodes_(triangle.nodes) {
    const Vec2 d1 = triangle.rest[1] - triangle.rest[0];
    const Vec2 d2 = triangle.rest[2] - triangle.rest[0];
    const double twice = d1.x() * d2.y() - d1.y() * d2.x();
    area_ = twice / 2;
    by_course_ = {(d1.y() - d2.y()) / twice, d2.y() / twice, -d1.y() / twice};
    by_wale_ = {(d2.x() - d1.x()) / twice, -d2.x() / twice, d1.x() / twice};
}

CellMetric FabricCell::metric(const double* positions) const {
    CellMetric at{Vector3d::Zero(), Vector3d::Zero(), 0, 0, 0};
    for (std::size_t k = 0; k < 3; ++k) {
        const Eigen::Map<const Vector3d> x(positions + 3 * static_cast<std::ptrdiff_t>(nodes_[k]));
        at.course += by_course_[k] * x;
        at.wale += by_wale_[k] * x;
    }
    at.course_squared = at.course.squaredNorm();
    at.wale_squared = at.wale.squaredNorm();
    at.product = at.course.dot(at.wale);
    return at;
}

double FabricCell::energy(const FabricMaterial& m, const CellMetric& at) const {
    const double e11 = (at.course_squared - 1) / 2;
    const double e22 = (at.wale_squared - 1) / 2;
    double twice = stiffness(m.course, m.compression_factor, at.course_squared) * e11 * e11 +
                   stiffness(m.wale, m.compression_factor, at.wale_squared) * e22 * e22 +
                   m.shear * at.product * at.product;
    const double u = area_squared(at);
    if (u < u0) {
        const double logarithm = std::log(std::max(u, 0.0) / u0) / 2;
        twice += 2 * barrier_stiffness * m.course * logarithm * logarithm;
    }
    return area_ * twice / 2;
}

FabricCell::Forces FabricCell::to_nodes(const Vector3d& by_course, const Vector3d& by_wale) const {
    Forces out;
    for (std::size_t k = 0; k < 3; ++k) out[k] = by_course_[k] * by_course + by_wale_[k] * by_wale;
    return out;
}

FabricCell::Forces FabricCell::gradient(const FabricMaterial& m, const CellMetric& at) const {
    const Stress s = stress(m, at);
    return to_nodes(area_ * (s.cc * at.course + s.cw * at.wale), area_ * (s.ww * at.wale + s.cw * at.course));
}

FabricCell::Blocks FabricCell::hessian(const FabricMaterial& m, const CellMetric& at) const {
    return blocks(by_course_, by_wale_, area_, at, stress(m, at), tangent(m, at, true));
}

FabricCell::Blocks FabricCell::semidefinite_hessian(const FabricMaterial& m, const CellMetric& at) const {
    return blocks(by_course_, by_wale_, area_, at, pulling_only(stress(m, at)), tangent(m, at, false));
}

double FabricCell::stretched_area(const CellMetric& at) const {
    return area_ *
           (std::max(0.0, std::sqrt(at.course_squared) - 1) + std::max(0.0, std::sqrt(at.wale_squared) - 1));
}

FabricCell::Forces FabricCell::stretched_area_gradient(const CellMetric& at) const {
    const double c = at.course_squared > 1 ? area_ / std::sqrt(at.course_squared) : 0;
    const double w = at.wale_squared > 1 ? area_ / std::sqrt(at.wale_squared) : 0;
    return to_nodes(c * at.course, w * at.wale);
}

}  // namespace roundwright
