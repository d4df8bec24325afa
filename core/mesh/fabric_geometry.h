#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/vec.h"

namespace roundwright {

/// Where the rounds of a fabric go on at their end.
enum class RoundEnds {
    at_their_start,  ///< each closes on itself
    in_the_next,     ///< a spiral: one round higher, where the next one begins
    nowhere,         ///< rows: a sheet with two sides
};

/// How the ends of the piece are made.
struct FabricEnds {
    bool point_below = false;  ///< the edge below round 1 is one vertex, as of a magic ring
    bool fan_below = false;    ///< or is closed by a fan to a pole
    bool fan_above = false;    ///< the last edge is closed by a fan to a pole
    RoundEnds rounds = RoundEnds::at_their_start;

    [[nodiscard]] bool closed() const {
        return (point_below || fan_below) && fan_above && rounds != RoundEnds::nowhere;
    }
};

/// A point of the fabric's outside, mm, with its outward unit normal.
struct FabricPoint {
    Vec3 place = Vec3::Zero();
    Vec3 normal = Vec3::UnitY();
};

/// Points across one cell of a round: `columns` of them from its right side on, its left side left to the
/// next cell.
struct CellRow {
    std::size_t round = 0;                   ///< from 0, between edge `round` and the one above it
    double below_first = 0, below_last = 0;  ///< where the cell's sides stand on the edge below, in loops
    double above_first = 0, above_last = 0;  ///< and on the edge above
    double up = 0;                           ///< share of the way from the one to the other
    std::size_t columns = 1;
    std::uint32_t corners = 0;  ///< of the whole round at this height, if they make one polygon
};

/// Where the fabric of a piece lies, whichever way that was found: the one door by which relief, colours,
/// stitches' corners and coarser cells come to their places. Edge e lies below round e, from 0, and the last
/// one above the last round. Edges run around the piece, in loops from the start of the round in the order
/// worked; seen from outside with the start of the piece below, that is to the left.
class FabricGeometry {
  public:
    virtual ~FabricGeometry() = default;

    [[nodiscard]] virtual std::size_t rounds() const = 0;
    [[nodiscard]] virtual FabricEnds ends() const = 0;

    /// Radius of the circle that is as long as the fabric is around, at a share up a round: the local scale
    /// of its stitches.
    [[nodiscard]] virtual double girth_radius_mm(std::size_t round, double up) const = 0;
    /// Stitches around an edge.
    [[nodiscard]] virtual double loops(std::size_t edge) const = 0;
    /// Half the sum of the principal curvatures at an edge, 1/mm, positive where the outside bulges.
    [[nodiscard]] virtual double mean_curvature(std::size_t edge) const = 0;
    /// How deep below the fabric at an edge its inside may lie without meeting the other side, mm.
    [[nodiscard]] virtual double room_below_mm(std::size_t edge) const = 0;
    /// Whether another layer lies against the inside there, so that relief has no room behind it.
    [[nodiscard]] virtual bool is_layer(std::size_t edge) const = 0;

    /// The points of a row, each lifted along its normal by its entry of `lifts_mm`; all arrays have
    /// `row.columns` entries, and `normals` may be null.
    virtual void place_row(const CellRow& row, const double* lifts_mm, Vec3* places, Vec3* normals) const = 0;
    /// The point so many loops along an edge. `corners`: as of a `CellRow`, 0 for none.
    [[nodiscard]] virtual FabricPoint on_edge(std::size_t edge, double loops_along, double lift_mm = 0,
                                              std::uint32_t corners = 0) const = 0;
    /// Where the fan below or above the fabric comes to a point; none without one.
    [[nodiscard]] virtual std::optional<FabricPoint> pole_below(double lift_mm = 0) const = 0;
    [[nodiscard]] virtual std::optional<FabricPoint> pole_above(double lift_mm = 0) const = 0;

    /// Where on an edge, in loops, cell `cell` of `cells` equal ones begins, all edges divided from one line
    /// up the fabric, without twist.
    [[nodiscard]] virtual double loops_at(std::size_t edge, double cell, double cells) const = 0;
    /// The same fabric between the edges kept, with so many equal cells on each from that line, in place of
    /// its loops.
    [[nodiscard]] virtual std::unique_ptr<FabricGeometry> coarser(const std::vector<std::size_t>& kept,
                                                                  const std::vector<double>& cells) const = 0;
};

}  // namespace roundwright
