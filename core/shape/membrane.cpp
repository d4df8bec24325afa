#include "core/shape/membrane.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace roundwright {

using std::numbers::pi;

namespace {

constexpr double one_hundredth = 0.01;

using Vector = std::array<double, 2>;
using Matrix = std::array<Vector, 2>;

double dot(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1]; }

/// Second derivative of a . d / |d| by d, with t = d / |d|:
/// (3 (a.t) t t' - (a.t) I - a t' - t a') / |d|^2.
Matrix tangent_curvature(const Vector& a, const Vector& t, double length) {
    const double at = dot(a, t);
    const double inverse = 1 / (length * length);
    Matrix m{};
    for (std::size_t i = 0; i < 2; ++i)
        for (std::size_t j = 0; j < 2; ++j)
            m[i][j] = inverse * (3 * at * t[i] * t[j] - (i == j ? at : 0) - a[i] * t[j] - t[i] * a[j]);
    return m;
}

/// (I - t t') / length, the derivative of a unit tangent.
Matrix tangent_derivative(const Vector& t, double length) {
    return {Vector{(1 - t[0] * t[0]) / length, -t[0] * t[1] / length},
            Vector{-t[0] * t[1] / length, (1 - t[1] * t[1]) / length}};
}

Matrix product(const Matrix& a, const Matrix& b) {
    Matrix m{};
    for (std::size_t i = 0; i < 2; ++i)
        for (std::size_t j = 0; j < 2; ++j) m[i][j] = a[i][0] * b[0][j] + a[i][1] * b[1][j];
    return m;
}

/// Adds factor * m to the block at (row node, column node), row node >= column node.
void add_block(BandMatrix& out, std::size_t row_node, std::size_t column_node, const Matrix& m,
               double factor) {
    const std::size_t r = 2 * row_node;
    const std::size_t c = 2 * column_node;
    out.add(r, c, factor * m[0][0]);
    out.add(r + 1, c, factor * m[1][0]);
    out.add(r + 1, c + 1, factor * m[1][1]);
    if (row_node != column_node) out.add(r, c + 1, factor * m[0][1]);
}

}  // namespace

Membrane::Membrane(const Meridian& meridian, const ShapeOptions& options)
    : loops_(meridian.nodes()),
      walls_(meridian.segments()),
      compression_factor_(options.compression_factor),
      first_on_axis_(meridian.first_on_axis),
      last_on_axis_(meridian.last_on_axis) {
    for (std::size_t s = 0; s < walls_.size(); ++s) {
        Wall& wall = walls_[s];
        wall.height = meridian.rest_height[s];
        wall.area = (meridian.rest_loop[s] + meridian.rest_loop[s + 1]) / 2 * wall.height;
        wall.stiffness = options.wale_stiffness * wall.area / (wall.height * wall.height);
        wall.least_squared = 1e-24 * wall.height * wall.height;
        rest_area_ += wall.area;
    }
    for (const Wall& wall : walls_) {
        const double force = one_hundredth * wall.stiffness * wall.height;
        force_scale_ += force * force;
    }
    for (std::size_t i = 0; i < loops_.size(); ++i) {
        Loop& loop = loops_[i];
        const double below = i > 0 ? walls_[i - 1].height : 0;
        const double above = i < walls_.size() ? walls_[i].height : 0;
        const double rest = meridian.rest_loop[i];
        loop.radius = rest / (2 * pi);
        loop.area = rest * (below + above) / 2;
        if (rest > 0) loop.stiffness = options.course_stiffness * loop.area / (loop.radius * loop.radius);
        if (below > 0 && above > 0) loop.bending = options.bending_stiffness * loop.area;
        const double force = one_hundredth * loop.stiffness * loop.radius;
        force_scale_ += force * force;
    }
    force_scale_ = std::sqrt(force_scale_);
}

Membrane::Segment Membrane::segment(const Positions& x, std::size_t s) const {
    const double dr = x[2 * s + 2] - x[2 * s];
    const double dz = x[2 * s + 3] - x[2 * s + 1];
    const double length = std::sqrt(dr * dr + dz * dz + walls_[s].least_squared);
    return {dr / length, dz / length, length};
}

double Membrane::stiffness(const Loop& loop, double r) const {
    return r < loop.radius ? compression_factor_ * loop.stiffness : loop.stiffness;
}

double Membrane::course_stretch(const Positions& x, std::size_t node) const {
    const double radius = loops_[node].radius;
    return radius > 0 ? x[2 * node] / radius - 1 : 0;
}

double Membrane::wale_stretch(const Positions& x, std::size_t s) const {
    return segment(x, s).length / walls_[s].height - 1;
}

double Membrane::energy(const Positions& x) const {
    double twice = 0;
    Segment before{};
    for (std::size_t i = 0; i < loops_.size(); ++i) {
        const double d = x[2 * i] - loops_[i].radius;
        twice += stiffness(loops_[i], x[2 * i]) * d * d;
        if (i == walls_.size()) break;
        const Segment after = segment(x, i);
        const double stretch = after.length - walls_[i].height;
        twice += walls_[i].stiffness * stretch * stretch;
        if (i > 0) {
            // 1 - t . t' of unit tangents as |t - t'|^2 / 2, which keeps its digits where they are nearly
            // one.
            const double r = after.tr - before.tr;
            const double z = after.tz - before.tz;
            twice += loops_[i].bending * (r * r + z * z);
        }
        before = after;
    }
    return twice / 2;
}

double Membrane::volume(const Positions& x) const {
    double sum = 0;
    for (std::size_t s = 0; s < walls_.size(); ++s) {
        const double a = x[2 * s];
        const double b = x[2 * s + 2];
        sum += (x[2 * s + 3] - x[2 * s + 1]) * (a * a + a * b + b * b);
    }
    return pi / 3 * sum;
}

double Membrane::area_stretch(const Positions& x) const {
    double sum = 0;
    for (std::size_t i = 0; i < loops_.size(); ++i)
        sum += loops_[i].area * std::max(0.0, course_stretch(x, i));
    for (std::size_t s = 0; s < walls_.size(); ++s) sum += walls_[s].area * std::max(0.0, wale_stretch(x, s));
    return sum / rest_area_;
}

void Membrane::set_fixed_to_zero(double* gradient) const {
    gradient[1] = 0;
    if (first_on_axis_) gradient[0] = 0;
    if (last_on_axis_) gradient[2 * loops_.size() - 2] = 0;
}

void Membrane::energy_gradient(const Positions& x, double* out) const {
    std::fill(out, out + unknowns(), 0.0);
    Segment before{};
    for (std::size_t i = 0; i < loops_.size(); ++i) {
        const Loop& loop = loops_[i];
        out[2 * i] += stiffness(loop, x[2 * i]) * (x[2 * i] - loop.radius);
        if (i == walls_.size()) break;
        const Segment after = segment(x, i);
        const double tension = walls_[i].stiffness * (after.length - walls_[i].height);
        double fr = tension * after.tr;
        double fz = tension * after.tz;
        if (i > 0) {
            // d(t . t') by the segment after: (t - (t . t') t') / length'; by the one before likewise.
            const double turn = before.tr * after.tr + before.tz * after.tz;
            fr -= loop.bending * (before.tr - turn * after.tr) / after.length;
            fz -= loop.bending * (before.tz - turn * after.tz) / after.length;
            const double br = loop.bending * (after.tr - turn * before.tr) / before.length;
            const double bz = loop.bending * (after.tz - turn * before.tz) / before.length;
            out[2 * i - 2] += br;
            out[2 * i - 1] += bz;
            out[2 * i] -= br;
            out[2 * i + 1] -= bz;
        }
        out[2 * i] -= fr;
        out[2 * i + 1] -= fz;
        out[2 * i + 2] += fr;
        out[2 * i + 3] += fz;
        before = after;
    }
    set_fixed_to_zero(out);
}

void Membrane::volume_gradient(const Positions& x, double* out) const {
    std::fill(out, out + unknowns(), 0.0);
    for (std::size_t s = 0; s < walls_.size(); ++s) {
        const double a = x[2 * s];
        const double b = x[2 * s + 2];
        const double dz = x[2 * s + 3] - x[2 * s + 1];
        const double disc = pi / 3 * (a * a + a * b + b * b);
        out[2 * s] += pi / 3 * dz * (2 * a + b);
        out[2 * s + 1] -= disc;
        out[2 * s + 2] += pi / 3 * dz * (a + 2 * b);
        out[2 * s + 3] += disc;
    }
    set_fixed_to_zero(out);
}

void Membrane::area_stretch_gradient(const Positions& x, double* out) const {
    std::fill(out, out + unknowns(), 0.0);
    for (std::size_t i = 0; i < loops_.size(); ++i)
        if (loops_[i].radius > 0 && x[2 * i] > loops_[i].radius)
            out[2 * i] += loops_[i].area / (loops_[i].radius * rest_area_);
    for (std::size_t s = 0; s < walls_.size(); ++s) {
        const Segment wall = segment(x, s);
        if (wall.length <= walls_[s].height) continue;
        const double factor = walls_[s].area / (walls_[s].height * rest_area_);
        out[2 * s] -= factor * wall.tr;
        out[2 * s + 1] -= factor * wall.tz;
        out[2 * s + 2] += factor * wall.tr;
        out[2 * s + 3] += factor * wall.tz;
    }
    set_fixed_to_zero(out);
}

void Membrane::hessian(const Positions& x, double pressure, Curvature curvature, BandMatrix& out) const {
    out.set_zero();
    for (std::size_t i = 0; i < loops_.size(); ++i) out.add(2 * i, 2 * i, stiffness(loops_[i], x[2 * i]));
    for (std::size_t s = 0; s < walls_.size(); ++s) {
        add_wall_hessian(x, s, curvature, out);
        if (curvature == Curvature::exact && pressure != 0) add_volume_hessian(x, s, -pressure, out);
    }
    for (std::size_t i = 1; i + 1 < loops_.size(); ++i)
        if (loops_[i].bending != 0) add_bending_hessian(x, i, curvature, out);
    out.fix(1);
    if (first_on_axis_) out.fix(0);
    if (last_on_axis_) out.fix(2 * loops_.size() - 2);
}

void Membrane::add_wall_hessian(const Positions& x, std::size_t s, Curvature curvature,
                                BandMatrix& out) const {
    const Wall& wall = walls_[s];
    const Segment at = segment(x, s);
    // The string's own tension stiffens it sideways; in compression that part is negative.
    double across = wall.stiffness * (1 - wall.height / at.length);
    if (curvature == Curvature::projected) across = std::max(0.0, across);
    const double along = wall.stiffness - across;
    const Matrix m{Vector{across + along * at.tr * at.tr, along * at.tr * at.tz},
                   Vector{along * at.tr * at.tz, across + along * at.tz * at.tz}};
    add_block(out, s, s, m, 1);
    add_block(out, s + 1, s + 1, m, 1);
    add_block(out, s + 1, s, m, -1);
}

void Membrane::add_volume_hessian(const Positions& x, std::size_t s, double factor, BandMatrix& out) const {
    const double a = x[2 * s];
    const double b = x[2 * s + 2];
    const double c = factor * pi / 3;
    const double dz = c * (x[2 * s + 3] - x[2 * s + 1]);
    const double by_a = c * (2 * a + b);
    const double by_b = c * (a + 2 * b);
    const std::size_t j = 2 * s;
    out.add(j, j, 2 * dz);
    out.add(j + 2, j, dz);
    out.add(j + 2, j + 2, 2 * dz);
    out.add(j + 1, j, -by_a);
    out.add(j + 3, j, by_a);
    out.add(j + 2, j + 1, -by_b);
    out.add(j + 3, j + 2, by_b);
}

void Membrane::add_bending_hessian(const Positions& x, std::size_t node, Curvature curvature,
                                   BandMatrix& out) const {
    const Segment before = segment(x, node - 1);
    const Segment after = segment(x, node);
    const Vector t{before.tr, before.tz};
    const Vector u{after.tr, after.tz};
    const Matrix dt = tangent_derivative(t, before.length);
    const Matrix du = tangent_derivative(u, after.length);
    Matrix bb{};
    Matrix aa{};
    Matrix ba{};
    if (curvature == Curvature::exact) {
        bb = tangent_curvature(u, t, before.length);
        aa = tangent_curvature(t, u, after.length);
        ba = product(dt, du);
        for (std::size_t i = 0; i < 2; ++i)
            for (std::size_t j = 0; j < 2; ++j) {
                bb[i][j] = -bb[i][j];
                aa[i][j] = -aa[i][j];
                ba[i][j] = -ba[i][j];
            }
    } else {
        // Gauss-Newton part of |u - t|^2 / 2, which is 1 - t . u.
        bb = product(dt, dt);
        aa = product(du, du);
        ba = product(dt, du);
        for (auto& row : ba)
            for (double& value : row) value = -value;
    }
    const Matrix ab{Vector{ba[0][0], ba[1][0]}, Vector{ba[0][1], ba[1][1]}};
    const double k = loops_[node].bending;
    add_block(out, node - 1, node - 1, bb, k);
    add_block(out, node, node - 1, bb, -k);
    add_block(out, node, node - 1, ab, k);
    add_block(out, node + 1, node - 1, ab, -k);
    add_block(out, node, node, bb, k);
    add_block(out, node, node, ba, -k);
    add_block(out, node, node, ab, -k);
    add_block(out, node, node, aa, k);
    add_block(out, node + 1, node, ab, k);
    add_block(out, node + 1, node, aa, -k);
    add_block(out, node + 1, node + 1, aa, k);
}

}  // namespace roundwright
