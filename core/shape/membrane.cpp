#include "core/shape/membrane.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {

using std::numbers::pi;

namespace {

constexpr double one_hundredth = 0.01;
/// Of its radius, that a loop keeps in one step.
constexpr double smallest_part = 0.1;

/// A symmetric 2 by 2 matrix, and a general one.
struct Symmetric {
    double rr = 0, rz = 0, zz = 0;
};
struct Block {
    double rr = 0, rz = 0, zr = 0, zz = 0;
};

/// Adds m at the diagonal block of a node.
void add_diagonal(BandMatrix& out, std::size_t node, const Symmetric& m) {
    const std::size_t i = 2 * node;
    out.add(i, i, m.rr);
    out.add(i + 1, i, m.rz);
    out.add(i + 1, i + 1, m.zz);
}

/// Adds m at the block in the rows of node + `below` and the columns of node.
void add_below(BandMatrix& out, std::size_t node, std::size_t below, const Block& m) {
    const std::size_t column = 2 * node;
    const std::size_t row = column + 2 * below;
    out.add(row, column, m.rr);
    out.add(row + 1, column, m.zr);
    out.add(row, column + 1, m.rz);
    out.add(row + 1, column + 1, m.zz);
}

}  // namespace

Membrane::Membrane(const Meridian& meridian, const ShapeOptions& options)
    : loops_(meridian.nodes()),
      walls_(meridian.segments()),
      compression_factor_(options.compression_factor),
      first_stuffed_(std::min(meridian.first_stuffed, meridian.segments())),
      after_stuffed_(std::min(meridian.after_stuffed, meridian.segments())),
      first_on_axis_(meridian.first_on_axis),
      last_on_axis_(meridian.last_on_axis) {
    for (std::size_t s = 0; s < walls_.size(); ++s) {
        Wall& wall = walls_[s];
        wall.height = meridian.rest_height[s];
        wall.area = (meridian.rest_loop[s] + meridian.rest_loop[s + 1]) / 2 * wall.height;
        wall.stiffness = options.wale_stiffness * wall.area / (wall.height * wall.height);
        wall.area_by_height = wall.area / wall.height;
        wall.least_squared = 1e-24 * wall.height * wall.height;
        if (s >= first_stuffed_ && s < after_stuffed_) rest_area_ += wall.area;
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
        if (rest > 0) loop.area_by_radius = loop.area / loop.radius;
        if (rest > 0) loop.stiffness = options.course_stiffness * loop.area / (loop.radius * loop.radius);
        loop.bending = options.bending_stiffness * loop.area;
        const double force = one_hundredth * loop.stiffness * loop.radius;
        force_scale_ += force * force;
    }
    force_scale_ = std::sqrt(force_scale_);
}

LyingWall Membrane::wall(const Positions& x, std::size_t s) const {
    const double dr = x[2 * s + 2] - x[2 * s];
    const double dz = x[2 * s + 3] - x[2 * s + 1];
    const double length = std::sqrt(dr * dr + dz * dz + walls_[s].least_squared);
    const double inverse = 1 / length;
    return {dr * inverse, dz * inverse, length};
}

double Membrane::stiffness(const Loop& loop, double r) const {
    return r < loop.radius ? compression_factor_ * loop.stiffness : loop.stiffness;
}

void Membrane::keep_in_bounds(const Positions& x, Positions& trial) const {
    for (std::size_t i = 0; i < x.size(); i += 2) trial[i] = std::max(trial[i], smallest_part * x[i]);
}

void Membrane::take_walls(const Positions& x, LyingWalls& out) const {
    for (std::size_t s = 0; s < walls_.size(); ++s) out[s] = wall(x, s);
}

double Membrane::course_stretch(const Positions& x, std::size_t node) const {
    const double radius = loops_[node].radius;
    return radius > 0 ? x[2 * node] / radius - 1 : 0;
}

double Membrane::wale_stretch(const Positions& x, std::size_t s) const {
    return wall(x, s).length / walls_[s].height - 1;
}

template <class WallAt>
double Membrane::energy_with(const Positions& x, const WallAt& wall_at) const {
    double twice = 0;
    LyingWall before{};
    for (std::size_t i = 0; i < loops_.size(); ++i) {
        const double d = x[2 * i] - loops_[i].radius;
        twice += stiffness(loops_[i], x[2 * i]) * d * d;
        if (i == walls_.size()) break;
        const LyingWall after = wall_at(i);
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

double Membrane::energy(const Positions& x) const {
    return energy_with(x, [&](std::size_t s) { return wall(x, s); });
}

double Membrane::energy(const Positions& x, const LyingWalls& walls) const {
    return energy_with(x, [&](std::size_t s) -> const LyingWall& { return walls[s]; });
}

double Membrane::volume(const Positions& x) const {
    double sum = 0;
    for (std::size_t s = first_stuffed_; s < after_stuffed_; ++s) {
        const double a = x[2 * s];
        const double b = x[2 * s + 2];
        sum += (x[2 * s + 3] - x[2 * s + 1]) * (a * a + a * b + b * b);
    }
    return pi / 3 * sum;
}

double Membrane::area_stretch(const Positions& x, const LyingWalls& walls) const {
    double sum = 0;
    for (std::size_t i = first_stuffed_; i <= after_stuffed_; ++i) {
        const Loop& loop = loops_[i];
        if (x[2 * i] > loop.radius) sum += loop.area_by_radius * (x[2 * i] - loop.radius);
    }
    for (std::size_t s = first_stuffed_; s < after_stuffed_; ++s) {
        const Wall& wall = walls_[s];
        if (walls[s].length > wall.height) sum += wall.area_by_height * (walls[s].length - wall.height);
    }
    return sum / rest_area_;
}

void Membrane::set_fixed_to_zero(double* gradient) const {
    gradient[1] = 0;
    if (first_on_axis_) gradient[0] = 0;
    if (last_on_axis_) gradient[2 * loops_.size() - 2] = 0;
}

void Membrane::energy_gradient(const Positions& x, const LyingWalls& walls, double* out) const {
    std::fill(out, out + unknowns(), 0.0);
    LyingWall before{};
    for (std::size_t i = 0; i < loops_.size(); ++i) {
        const Loop& loop = loops_[i];
        out[2 * i] += stiffness(loop, x[2 * i]) * (x[2 * i] - loop.radius);
        if (i == walls_.size()) break;
        const LyingWall& after = walls[i];
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
    for (std::size_t s = first_stuffed_; s < after_stuffed_; ++s) {
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

void Membrane::area_stretch_gradient(const Positions& x, const LyingWalls& walls, double* out) const {
    std::fill(out, out + unknowns(), 0.0);
    for (std::size_t i = first_stuffed_; i <= after_stuffed_; ++i)
        if (x[2 * i] > loops_[i].radius) out[2 * i] += loops_[i].area_by_radius / rest_area_;
    for (std::size_t s = first_stuffed_; s < after_stuffed_; ++s) {
        if (walls[s].length <= walls_[s].height) continue;
        const double factor = walls_[s].area_by_height / rest_area_;
        out[2 * s] -= factor * walls[s].tr;
        out[2 * s + 1] -= factor * walls[s].tz;
        out[2 * s + 2] += factor * walls[s].tr;
        out[2 * s + 3] += factor * walls[s].tz;
    }
    set_fixed_to_zero(out);
}

void Membrane::hessian(const Positions& x, const LyingWalls& walls, double pressure, Curvature curvature,
                       BandMatrix& out) const {
    out.set_zero();
    const bool exact = curvature == Curvature::exact;
    LyingWall before{};
    for (std::size_t i = 0; i < loops_.size(); ++i) {
        out.add(2 * i, 2 * i, stiffness(loops_[i], x[2 * i]));
        if (i == walls_.size()) break;
        const LyingWall& after = walls[i];
        add_wall_hessian(i, after, exact, out);
        const bool pushed = i >= first_stuffed_ && i < after_stuffed_;
        if (exact && pushed && pressure != 0) add_volume_hessian(x, i, -pressure, out);
        if (i > 0) add_bending_hessian(i, before, after, exact, out);
        before = after;
    }
    out.fix(1);
    if (first_on_axis_) out.fix(0);
    if (last_on_axis_) out.fix(2 * loops_.size() - 2);
}

void Membrane::add_wall_hessian(std::size_t s, const LyingWall& at, bool exact, BandMatrix& out) const {
    const Wall& wall = walls_[s];
    // The string's own tension stiffens it sideways; in compression that part is negative.
    double across = wall.stiffness * (1 - wall.height / at.length);
    if (!exact) across = std::max(0.0, across);
    const double along = wall.stiffness - across;
    const Symmetric m{across + along * at.tr * at.tr, along * at.tr * at.tz, across + along * at.tz * at.tz};
    add_diagonal(out, s, m);
    add_diagonal(out, s + 1, m);
    add_below(out, s, 1, {-m.rr, -m.rz, -m.rz, -m.zz});
}

void Membrane::add_volume_hessian(const Positions& x, std::size_t s, double factor, BandMatrix& out) const {
    const double a = x[2 * s];
    const double b = x[2 * s + 2];
    const double c = factor * pi / 3;
    const double dz = c * (x[2 * s + 3] - x[2 * s + 1]);
    const double by_a = c * (2 * a + b);
    const double by_b = c * (a + 2 * b);
    add_diagonal(out, s, {2 * dz, -by_a, 0});
    add_diagonal(out, s + 1, {2 * dz, by_b, 0});
    add_below(out, s, 1, {dz, -by_b, by_a, 0});
}

// With unit tangents t, u and their normals n, m, c = t . u and s = n . u, the second derivatives of -t . u
// are
//     by the segment before   (c n n' + s (n t' + t n')) / |d|^2
//     by the one after        (c m m' - s (m u' + u m')) / |d'|^2
//     mixed                   -c n m' / (|d| |d'|).
// Without the terms in s, and with c = 1 in the first two, what is left is the square of a first derivative.
void Membrane::add_bending_hessian(std::size_t node, const LyingWall& before, const LyingWall& after,
                                   bool exact, BandMatrix& out) const {
    const double k = loops_[node].bending;
    const double c = before.tr * after.tr + before.tz * after.tz;
    const double s = exact ? before.tr * after.tz - before.tz * after.tr : 0;
    const double square = exact ? c : 1;
    const double p = 1 / before.length;
    const double q = 1 / after.length;
    const double nr = -before.tz;
    const double nz = before.tr;
    const double mr = -after.tz;
    const double mz = after.tr;
    const double kp = k * p * p;
    const double kq = k * q * q;
    const Symmetric bb{kp * (square * nr * nr + 2 * s * nr * before.tr),
                       kp * (square * nr * nz + s * (nr * before.tz + nz * before.tr)),
                       kp * (square * nz * nz + 2 * s * nz * before.tz)};
    const Symmetric aa{kq * (square * mr * mr - 2 * s * mr * after.tr),
                       kq * (square * mr * mz - s * (mr * after.tz + mz * after.tr)),
                       kq * (square * mz * mz - 2 * s * mz * after.tz)};
    const double mixed = -k * c * p * q;
    // Rows by the segment after, columns by the one before.
    const Block ab{mixed * mr * nr, mixed * mr * nz, mixed * mz * nr, mixed * mz * nz};
    add_diagonal(out, node - 1, bb);
    add_diagonal(out, node,
                 {bb.rr + aa.rr - 2 * ab.rr, bb.rz + aa.rz - ab.rz - ab.zr, bb.zz + aa.zz - 2 * ab.zz});
    add_diagonal(out, node + 1, aa);
    add_below(out, node - 1, 1, {ab.rr - bb.rr, ab.rz - bb.rz, ab.zr - bb.rz, ab.zz - bb.zz});
    add_below(out, node, 1, {ab.rr - aa.rr, ab.rz - aa.rz, ab.zr - aa.rz, ab.zz - aa.zz});
    add_below(out, node - 1, 2, {-ab.rr, -ab.rz, -ab.zr, -ab.zz});
}

}  // namespace roundwright
