#pragma once

#include <cstddef>
#include <vector>

#include "core/shape/band_matrix.h"
#include "core/shape/energy.h"
#include "core/shape/meridian.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

/// The walls of a meridian as they lie: direction and length of every segment. Taken once for a set of
/// positions, all derivatives can share them.
struct LyingWall {
    double tr, tz;  ///< unit tangent
    double length;
};
using LyingWalls = std::vector<LyingWall>;

/// The elastic energy of an axisymmetric piece and the volume it encloses, with derivatives.
///
///     E = sum_i k_course a_i e_i^2 / 2   e_i = 2 pi r_i / L_i - 1    (times compression_factor if e_i < 0)
///       + sum_s k_wale   b_s m_s^2 / 2   m_s = length_s / h_s - 1
///       + sum_i k_bend   a_i (1 - t_s . t_{s+1})                     (t: unit tangents on either side)
///     V = sum_s pi/3 dz (r^2 + r r' + r'^2)                          (open ends closed by flat discs)
///
/// Where only some rounds are stuffed, V and the area stretch are those of these, V closed by flat discs at
/// both ends: the pressure pushes on their fabric alone.
///
/// with a_i = L_i times half the heights on either side, and b_s = (L_s + L_{s+1}) / 2 h_s, the fabric each
/// term speaks for. L, h: relaxed loop lengths and heights. Energies are in units of course stiffness * mm^2.
class Membrane {
  public:
    using Elements = LyingWalls;
    using Matrix = BandMatrix;

    Membrane(const Meridian& meridian, const ShapeOptions& options);

    [[nodiscard]] std::size_t nodes() const { return loops_.size(); }
    [[nodiscard]] std::size_t unknowns() const { return 2 * loops_.size(); }
    /// Of the stuffed fabric.
    [[nodiscard]] double rest_area() const { return rest_area_; }
    [[nodiscard]] double rest_height(std::size_t segment) const { return walls_[segment].height; }
    [[nodiscard]] double rest_radius(std::size_t node) const { return loops_[node].radius; }

    /// Size of the forces that a stretch of one hundredth everywhere makes: the scale for residuals.
    [[nodiscard]] double force_scale() const { return force_scale_; }

    /// `out` has as many entries as there are segments.
    void take_walls(const Positions& x, LyingWalls& out) const;
    void take_elements(const Positions& x, LyingWalls& out) const {
        out.resize(nodes() - 1);
        take_walls(x, out);
    }
    /// Leaves every loop at least a tenth of its radius.
    void keep_in_bounds(const Positions& x, Positions& trial) const;

    [[nodiscard]] double energy(const Positions& x) const;
    [[nodiscard]] double energy(const Positions& x, const LyingWalls& walls) const;
    [[nodiscard]] double volume(const Positions& x) const;
    /// Mean over the fabric of course stretch plus wale stretch, where fabric with length to spare counts as
    /// unstretched.
    [[nodiscard]] double area_stretch(const Positions& x, const LyingWalls& walls) const;

    /// Gradients; fixed unknowns have 0. `out` has `unknowns()` entries.
    void energy_gradient(const Positions& x, const LyingWalls& walls, double* out) const;
    void volume_gradient(const Positions& x, double* out) const;
    void area_stretch_gradient(const Positions& x, const LyingWalls& walls, double* out) const;

    /// Second derivatives of E - p V. Projected: without the pressure's part and the indefinite parts of E.
    void hessian(const Positions& x, const LyingWalls& walls, double pressure, Curvature curvature,
                 BandMatrix& out) const;

    [[nodiscard]] double course_stretch(const Positions& x, std::size_t node) const;
    [[nodiscard]] double wale_stretch(const Positions& x, std::size_t segment) const;

  private:
    struct Loop {
        double radius = 0;  ///< relaxed, mm; 0 at a pole
        double area = 0;    ///< mm^2
        double area_by_radius = 0;
        double stiffness = 0;  ///< of E = stiffness (r - radius)^2 / 2
        double bending = 0;    ///< of E = bending (1 - t . t')
    };
    struct Wall {
        double height = 0;
        double area = 0;
        double area_by_height = 0;
        double stiffness = 0;      ///< of E = stiffness (length - height)^2 / 2
        double least_squared = 0;  ///< keeps the length's derivatives finite where it vanishes
    };
    [[nodiscard]] LyingWall wall(const Positions& x, std::size_t s) const;
    [[nodiscard]] double stiffness(const Loop& loop, double r) const;
    /// `wall_at(s)` gives wall s as it lies.
    template <class WallAt>
    [[nodiscard]] double energy_with(const Positions& x, const WallAt& wall_at) const;
    void set_fixed_to_zero(double* gradient) const;
    void add_wall_hessian(std::size_t s, const LyingWall& at, bool exact, BandMatrix& out) const;
    void add_bending_hessian(std::size_t node, const LyingWall& before, const LyingWall& after, bool exact,
                             BandMatrix& out) const;
    void add_volume_hessian(const Positions& x, std::size_t s, double factor, BandMatrix& out) const;

    std::vector<Loop> loops_;
    std::vector<Wall> walls_;
    double compression_factor_;
    std::size_t first_stuffed_, after_stuffed_;  ///< segments
    double rest_area_ = 0;
    double force_scale_ = 0;
    bool first_on_axis_;
    bool last_on_axis_;
};

}  // namespace roundwright
