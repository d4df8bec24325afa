#pragma once

#include <Eigen/Geometry>
#include <optional>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// Where and which way something is joined, in the frame of its piece: `out` away from the piece's fabric,
/// `front` the way its face looks, `up` and `right` the ways that the far end of what is joined there leans;
/// all three at right angles to `out`.
struct JoinFrame {
    Vec3 point = Vec3::Zero();
    Vec3 out = Vec3::UnitY();
    Vec3 front = Vec3::UnitZ();
    Vec3 up = Vec3::UnitZ();
    Vec3 right = Vec3::UnitX();
};

/// Of the middle of a loop in its piece's frame, mm (`LoopMeasures` count from where the piece starts, and a
/// piece may start at its top).
[[nodiscard]] double height_of_loop(const SolvedPiece& piece, int loop);

/// The end of a piece that is joined on: the middle of its edge, seam or pole; `out` leads from the piece to
/// what it is joined to, along its axis.
[[nodiscard]] std::optional<JoinFrame> frame_of_end(const SolvedPiece& piece, JoinedEnd end);

/// The place on a piece that another is joined to; `out` is the surface's normal, or the piece's axis where
/// the join goes around it, and at its ends.
[[nodiscard]] std::optional<JoinFrame> frame_of_place(const SolvedPiece& piece, const JoinPlace& place);

/// How the piece stands in the frame of the one it is joined to: the end's frame turned to meet the place's,
/// leant, turned and sunk as the join says.
[[nodiscard]] Pose pose_of_join(const Join& join, const JoinFrame& end, const JoinFrame& place);

/// The pose of the other of a pair: the mirror image of the placing about the plane through the axis and the
/// middle of the face of what both are joined to. By a turn and a shift, as the piece itself is worked twice
/// the same way: it takes the place of its image about its own plane.
[[nodiscard]] Pose mirrored(const Pose& pose, const Piece& piece, const Piece& onto);

}  // namespace roundwright
