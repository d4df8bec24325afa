#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/shape/fabric/solved_stitches.h"

namespace roundwright {

/// The mean surface of a piece of which every stitch was solved. Between two edges it runs straight. Along an
/// edge it runs smoothly from node to node; since a curve through the corners of a line of loops would be
/// longer than the line, the corners are drawn in by a 24th of the square of a loop times the line's
/// curvature, which for a circle keeps its length to second order.
class StitchedSurface final : public FabricGeometry {
  public:
    StitchedSurface(const SolvedStitches& stitches, bool turned_over);

    [[nodiscard]] std::size_t rounds() const override { return lines_.size() - 1; }
    [[nodiscard]] FabricEnds ends() const override { return ends_; }
    [[nodiscard]] double girth_radius_mm(std::size_t round, double up) const override;
    [[nodiscard]] double loops(std::size_t edge) const override { return lines_[edge].loops; }
    [[nodiscard]] double mean_curvature(std::size_t edge) const override { return lines_[edge].curvature; }
    [[nodiscard]] double room_below_mm(std::size_t edge) const override { return lines_[edge].room_mm; }
    [[nodiscard]] bool is_layer(std::size_t) const override { return false; }
    void place_row(const CellRow& row, const double* lifts_mm, Vec3* places, Vec3* normals) const override;
    [[nodiscard]] FabricPoint on_edge(std::size_t edge, double loops_along, double lift_mm,
                                      std::uint32_t corners) const override;
    [[nodiscard]] std::optional<FabricPoint> pole_below(double lift_mm) const override;
    [[nodiscard]] std::optional<FabricPoint> pole_above(double lift_mm) const override;
    [[nodiscard]] double loops_at(std::size_t edge, double cell, double cells) const override;
    [[nodiscard]] std::unique_ptr<FabricGeometry> coarser(const std::vector<std::size_t>& kept,
                                                          const std::vector<double>& cells) const override;

  private:
    /// A node of an edge, so many loops along, with the direction in which the edge passes it, mm a loop.
    struct Knot {
        double at = 0;
        FabricPoint point;
        Vec3 along = Vec3::Zero();
    };
    struct Line {
        double loops = 1;
        double turn = 0;  ///< of its start about the piece, in the direction worked
        double girth_radius_mm = 0;
        double curvature = 0;
        double room_mm = 0;
        std::vector<Knot> knots;
    };
    StitchedSurface() = default;
    void set_line(const SolvedStitches& stitches, std::size_t edge, const std::vector<FabricPoint>& points);
    static void measure(Line& line, bool sheet);
    [[nodiscard]] static FabricPoint on(const Line& line, double along);

    std::vector<Line> lines_;
    FabricEnds ends_;
    std::optional<FabricPoint> pole_below_, pole_above_;
    bool sheet_ = false, sewn_ = false;
};

}  // namespace roundwright
