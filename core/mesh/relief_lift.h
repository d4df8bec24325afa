#pragma once

#include <cstddef>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_relief.h"

namespace roundwright {

/// Heights of relief over a fabric's mean surface, mm: how far each vertex of a stitch's face is lifted.
class ReliefLift {
  public:
    /// The inside is a skin of its own, one thickness of fabric below the mean surface, or less where there
    /// is no room.
    ReliefLift(const FabricGeometry& geometry, double stitch_width_mm, bool inside)
        : geometry_(geometry), stitch_width_mm_(stitch_width_mm), inside_(inside) {}

    /// How deep the skin lies below the mean surface at an edge, and at a pole.
    [[nodiscard]] double depth(std::size_t edge) const { return inside_ ? skin_depth(edge) : 0; }
    [[nodiscard]] double depth_of_pole() const { return inside_ ? thickness() : 0; }

    /// What a round's relief must be sunk by so that it holds no volume of its own. A lift d of a surface of
    /// mean curvature H holds (d + H d^2) per area to second order; rows count by their length.
    [[nodiscard]] double sinking(std::size_t round, const ReliefTable& relief) const;

    /// Lifts of row `row` (from 1) of a face of `rows` rows: `relief.grid.columns` entries.
    void lifts(std::size_t round, int row, std::size_t rows, const ReliefTable& relief, double sinking,
               double* lifts_mm) const;

  private:
    [[nodiscard]] double thickness() const;
    [[nodiscard]] double skin_depth(std::size_t edge) const;
    [[nodiscard]] double scale_mm(std::size_t round, double girth_radius_mm) const;
    [[nodiscard]] double least_lift(std::size_t round) const;

    const FabricGeometry& geometry_;
    double stitch_width_mm_;
    bool inside_;
};

}  // namespace roundwright
