#include "core/shape/fabric/fabric_hinge.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstddef>

namespace roundwright {

namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Eigen::Map<const Vector3d> at_node(const double* positions, std::int32_t node) {
    return Eigen::Map<const Vector3d>(positions + 3 * static_cast<std::ptrdiff_t>(node));
}

}  // namespace

HingeMetric FabricHinge::metric(const double* positions) const {
    const Vector3d a = at_node(positions, nodes_[0]);
    const Vector3d along = at_node(positions, nodes_[1]) - a;
    HingeMetric at;
    at.length = along.norm();
    at.edge = along / at.length;
    for (std::size_t t = 0; t < 2; ++t) {
        const Vector3d to_third = at_node(positions, nodes_[2 + t]) - a;
        const double run = at.edge.dot(to_third);
        const Vector3d up = to_third - run * at.edge;
        at.foot[t] = run / at.length;
        at.height[t] = up.norm();
        at.across[t] = up / at.height[t];
        at.normal[t] = t == 0 ? at.edge.cross(at.across[t]) : at.across[t].cross(at.edge);
    }
    at.cosine = at.normal[0].dot(at.normal[1]);
    at.sine = at.normal[0].dot(at.across[1]);
    return at;
}

double FabricHinge::energy(const double* positions) const {
    const Vector3d a = at_node(positions, nodes_[0]);
    const Vector3d along = at_node(positions, nodes_[1]) - a;
    const Vector3d n = along.cross(at_node(positions, nodes_[2]) - a);
    const Vector3d m = (at_node(positions, nodes_[3]) - a).cross(along);
    return stiffness_ * (1 - n.dot(m) / std::sqrt(n.squaredNorm() * m.squaredNorm()));
}

// The angle theta turns by tau + tau', each the way of the third node along the normal seen from the edge:
//     tau = n . u / h,    u = dc - (1 - s) da - s db      (s: foot, h: height)
FabricHinge::Forces FabricHinge::gradient(const HingeMetric& at) const {
    Forces out{Vector3d::Zero(), Vector3d::Zero(), Vector3d::Zero(), Vector3d::Zero()};
    for (std::size_t t = 0; t < 2; ++t) {
        const Vector3d turn = stiffness_ * at.sine / at.height[t] * at.normal[t];
        out[2 + t] += turn;
        out[0] -= (1 - at.foot[t]) * turn;
        out[1] -= at.foot[t] * turn;
    }
    return out;
}

// With v = db - da, e along the edge and m across it, moving on along the same straight lines changes tau by
//     d2 tau = -2 (n . u) (m . u) / h^2 - 2 (n . v) (e . u) / (l h) - (n . v) (m . v) / l^2
// (from dn = -m tau - e (n . v) / l, dh = m . u, ds = (e . u + h m . v / l) / l, du = -ds v), and
//     d2 W = k (cos theta (tau + tau')^2 + sin theta (d2 tau + d2 tau')).
// Compare Tamstorf and Grinspun, Discrete bending forces and their Jacobians (2013).
FabricHinge::Blocks FabricHinge::hessian(const HingeMetric& at, double cosine, double sine) const {
    std::array<Matrix3d, 2> uu;
    std::array<Matrix3d, 2> vu;  // rows by v
    Matrix3d vv = Matrix3d::Zero();
    const double kc = stiffness_ * cosine;
    const double ks = stiffness_ * sine;
    for (std::size_t t = 0; t < 2; ++t) {
        const Vector3d n = at.normal[t] / at.height[t];
        const Matrix3d nm = n * at.across[t].transpose();
        const double by_height = ks / at.height[t];
        uu[t] = kc * n * n.transpose() - by_height * (nm + nm.transpose());
        vu[t] = -ks / at.length * n * at.edge.transpose();
        vv -= ks * at.height[t] / (2 * at.length * at.length) * (nm + nm.transpose());
    }
    const Matrix3d both = kc / (at.height[0] * at.height[1]) * at.normal[0] * at.normal[1].transpose();
    const double s = at.foot[0];
    const double r = at.foot[1];
    Blocks out;
    out[5] = both;                                                                            // 2, 3
    out[2] = (s - 1) * uu[0] + (r - 1) * both - vu[0].transpose();                            // 2, 0
    out[1] = (-s * uu[0] - r * both + vu[0].transpose()).transpose();                         // 1, 2
    out[3] = ((r - 1) * uu[1] + (s - 1) * both.transpose() - vu[1].transpose()).transpose();  // 0, 3
    out[4] = -r * uu[1] - s * both.transpose() + vu[1].transpose();                           // 3, 1
    // By (0, 1): u has 0 with s - 1 and 1 with -s; v has 0 with -1 and 1 with 1.
    out[0] = s * (1 - s) * uu[0] + r * (1 - r) * uu[1] + (1 - s) * r * both + s * (1 - r) * both.transpose() +
             s * vu[0] + r * vu[1] - (1 - s) * vu[0].transpose() - (1 - r) * vu[1].transpose() - vv;
    return out;
}

FabricHinge::Blocks FabricHinge::hessian(const HingeMetric& at) const {
    return hessian(at, at.cosine, at.sine);
}

FabricHinge::Blocks FabricHinge::semidefinite_hessian(const HingeMetric& at) const {
    return hessian(at, std::max(0.0, at.cosine), 0);
}

FabricHinge::Blocks FabricHinge::one_ring_majorant(const HingeMetric& at) const {
    Blocks out;
    out[0].setZero();
    const double k = 2 * stiffness_ * std::max(0.0, at.cosine);
    for (std::size_t t = 0; t < 2; ++t) {
        const Vector3d n = at.normal[t] / at.height[t];
        const Matrix3d nn = k * n * n.transpose();
        const double s = at.foot[t];
        out[0] += s * (1 - s) * nn;
        out[t == 0 ? 2 : 3] = (s - 1) * nn;
        out[t == 0 ? 1 : 4] = -s * nn;
    }
    out[5].setZero();
    return out;
}

}  // namespace roundwright
