#pragma once

#include <Eigen/Geometry>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/base/vec.h"
#include "core/face/face_surface.h"
#include "core/shape/piece_measures.h"
#include "core/toy/toy.h"

namespace roundwright {

/// How a copy of a piece stands in the toy: from its own frame (that of `StitchSurface`: y up, lowest point
/// at 0, axis at x = z = 0) to the toy's, mm. Turns and shifts only.
using Pose = Eigen::Isometry3d;

struct SeamLine;
struct Solid;

/// What placing reads of a piece that has been solved. Of one without a shape `surface` is empty.
struct SolvedPiece {
    PieceId id = PieceId::none;
    std::shared_ptr<const Piece> piece;
    FaceSurface surface;
    PieceMeasures measures;
    std::vector<int> stitches;             ///< after each round
    double fabric_mm = 0;                  ///< how thick its fabric is
    std::shared_ptr<const Solid> solid;    ///< what its fabric encloses; null: no shape
    std::shared_ptr<const Solid> stuffed;  ///< the part of that which is stuffed; null: none
    std::shared_ptr<const void> made_of;   ///< of two with the same one, the shapes are the same
};

/// Whether two lie the same way, with the same ends and the same face.
[[nodiscard]] bool lies_alike(const SolvedPiece& a, const SolvedPiece& b);

/// One copy of a piece where it is in the toy.
struct PlacedPiece {
    PieceCopy copy;
    std::size_t solved = 0;           ///< index into the pieces given
    std::optional<std::size_t> join;  ///< index into `Toy::joins`; none: it stands by itself
    std::optional<std::size_t> onto;  ///< index of what it is joined to, in `PlacedToy::pieces`
    bool mirrored = false;            ///< the second of a pair
    Pose pose = Pose::Identity();
    /// The line that it is sewn along, in the frame of what it is joined to, not mirrored; null where nothing
    /// of it follows a line.
    std::shared_ptr<const SeamLine> line;
};

enum class JoinFault {
    no_such_piece,  ///< the piece, or what it is joined to, is not in the toy
    no_such_copy,   ///< fewer are made
    no_such_place,  ///< what it is joined to has no such round
    joined_twice,   ///< this copy is joined on by a join before
    in_a_circle,    ///< following the joins leads back to the piece itself
    no_shape        ///< the piece, or what it is joined to, has no shape to place
};

struct JoinProblem {
    std::size_t join = 0;  ///< index into `Toy::joins`
    JoinFault fault = JoinFault::no_such_piece;

    friend bool operator==(const JoinProblem&, const JoinProblem&) = default;
};

/// Every copy of every piece of a toy, placed: what is joined on comes after what it is joined to, whatever
/// stands by itself beside the first of these, in a row.
struct PlacedToy {
    std::vector<PlacedPiece> pieces;
    std::vector<JoinProblem> problems;
};

/// A toy as it was placed before, with what it was placed from: seams whose join and two pieces are the same
/// are taken from it.
struct PlacedBefore {
    const Toy& toy;
    std::span<const SolvedPiece> solved;
    const PlacedToy& placed;
};

/// Places a toy whose pieces are `solved`, one a piece in their order. A join with a problem is passed over:
/// its piece stands by itself. An open edge sits so deep that its middle is that of the line it is sewn
/// along; what hangs hangs straight down, which of a toy that lies is to its back; what a piece begins on
/// stands side by side. `before` may be null.
[[nodiscard]] PlacedToy place_toy(const Toy& toy, std::span<const SolvedPiece> solved,
                                  const PlacedBefore* before = nullptr);

/// How many lines of seams were looked for so far, in all threads.
[[nodiscard]] std::uint64_t seam_lines_found();

}  // namespace roundwright
