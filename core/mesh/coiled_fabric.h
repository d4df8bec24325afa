#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/shape/curled_strip.h"

namespace roundwright {

/// The fabric of a strip that curls, on its coil: its rows lie around the axis y from the chain outwards, and
/// climb from y = 0 at their start, which is at the back. One side of the strip looks up the axis, the other
/// down; its turns lie on each other.
class CoiledFabric final : public FabricGeometry {
  public:
    /// `loops`: on each of its edges, the chain's first. Turned over about the axis to the viewer where the
    /// start is to be on top.
    CoiledFabric(Coil coil, std::vector<double> loops, bool turned_over);

    [[nodiscard]] std::size_t rounds() const override { return loops_.size() - 1; }
    [[nodiscard]] FabricEnds ends() const override;
    [[nodiscard]] double girth_radius_mm(std::size_t round, double up) const override;
    [[nodiscard]] double loops(std::size_t edge) const override { return loops_[edge]; }
    /// A helicoid is a minimal surface (Meusnier 1776).
    [[nodiscard]] double mean_curvature(std::size_t) const override { return 0; }
    [[nodiscard]] double room_below_mm(std::size_t edge) const override;
    [[nodiscard]] bool is_layer(std::size_t) const override { return false; }
    void place_row(const CellRow& row, const double* lifts_mm, Vec3* places, Vec3* normals) const override;
    [[nodiscard]] FabricPoint on_edge(std::size_t edge, double loops_along, double lift_mm,
                                      std::uint32_t corners) const override;
    [[nodiscard]] std::optional<FabricPoint> pole_below(double) const override { return std::nullopt; }
    [[nodiscard]] std::optional<FabricPoint> pole_above(double) const override { return std::nullopt; }
    [[nodiscard]] double loops_at(std::size_t edge, double cell, double cells) const override {
        return cell / cells * loops_[edge];
    }
    [[nodiscard]] std::unique_ptr<FabricGeometry> coarser(const std::vector<std::size_t>& kept,
                                                          const std::vector<double>& cells) const override;

    [[nodiscard]] const Coil& coil() const { return coil_; }

  private:
    /// At a share of the way along the strip, so far from the axis.
    [[nodiscard]] FabricPoint at(double share, double radius_mm, double lift_mm) const;

    Coil coil_;
    std::vector<double> loops_;
    bool turned_over_ = false;
};

}  // namespace roundwright
