#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "core/assembly/geodesic_rays.h"
#include "core/assembly/join_frames.h"

namespace roundwright {

/// How an end of a piece lies against what it is joined to.
enum class SeamForm {
    none,      ///< nothing bends: closed ends, what hangs
    ring,      ///< around a piece, or edge to edge: the line is given, and the edge takes its length
    circle,    ///< on the surface, about the place: as long as the edge's own stitches
    straight,  ///< on the surface, through the place: a seam or an edge flattened on itself
    patch      ///< a flat piece that lies on the surface as a whole
};

/// Points of a line around an edge: point k lies at the angle of the piece's face plus k equal parts of a
/// turn.
inline constexpr std::size_t points_of_seam = 72;
/// Circles of a patch between its middle and its edge.
inline constexpr std::size_t circles_of_patch = 12;

/// The line that an end is sewn along, on the surface of what it is joined to and in the frame of that piece.
/// Point k belongs to point k of the end (`edge_points`).
struct SeamLine {
    SeamForm form = SeamForm::none;
    std::vector<SurfaceSpot> points;   ///< `points_of_seam`; of a straight seam there and back again
    std::vector<SurfacePlace> places;  ///< the same on the fabric
    double length_mm = 0;              ///< of the line; of a straight seam once
    /// Of a patch: the points of its circles, from the middle outwards, `points_of_seam` each, the last its
    /// edge.
    std::vector<SurfaceSpot> within;

    [[nodiscard]] bool empty() const { return points.empty(); }
    /// The middle of the line.
    [[nodiscard]] Vec3 middle() const;
};

/// The end of a piece as it is before it is sewn on, in its own frame.
struct SewnEdge {
    Vec3 middle = Vec3::Zero();
    double radius_mm = 0;    ///< of the circle that is as long
    double stitches_mm = 0;  ///< its stitches' own length, relaxed, all the way round
};
[[nodiscard]] SewnEdge sewn_edge(const SolvedPiece& piece, JoinedEnd end);

/// Where on the end of a piece the points of its line belong.
[[nodiscard]] std::vector<Vec3> edge_points(const SolvedPiece& piece, JoinedEnd end);

/// How a join's seam lies.
[[nodiscard]] SeamForm seam_form(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto);

/// The line of a join whose place is `place`. Empty where its form has none, or where its end or its place
/// has no length.
[[nodiscard]] SeamLine seam_line(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto,
                                 const JoinFrame& end, const JoinFrame& place);

}  // namespace roundwright
