#pragma once

#include <Eigen/Geometry>
#include <cstddef>
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

/// What placing reads of a piece that has been solved. Of one without a shape `surface` is empty.
struct SolvedPiece {
    PieceId id = PieceId::none;
    std::shared_ptr<const Piece> piece;
    FaceSurface surface;
    PieceMeasures measures;
    std::vector<int> stitches;  ///< after each round
};

/// One copy of a piece where it is in the toy.
struct PlacedPiece {
    PieceCopy copy;
    std::size_t solved = 0;           ///< index into the pieces given
    std::optional<std::size_t> join;  ///< index into `Toy::joins`; none: it stands by itself
    std::optional<std::size_t> onto;  ///< index of what it is joined to, in `PlacedToy::pieces`
    bool mirrored = false;            ///< the second of a pair
    Pose pose = Pose::Identity();
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

/// Places a toy whose pieces are `solved`, one a piece in their order. A join with a problem is passed over:
/// its piece stands by itself.
[[nodiscard]] PlacedToy place_toy(const Toy& toy, std::span<const SolvedPiece> solved);

}  // namespace roundwright
