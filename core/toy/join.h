#pragma once

#include <cstdint>

#include "core/base/kept_keys.h"
#include "core/toy/piece_id.h"

namespace roundwright {

/// One of the copies that a piece is made in.
struct PieceCopy {
    PieceId piece = PieceId::none;
    int copy = 0;  ///< from 0, below `Piece::make`

    friend bool operator==(const PieceCopy&, const PieceCopy&) = default;
    friend auto operator<=>(const PieceCopy&, const PieceCopy&) = default;
};

/// Which end of a piece is joined to another.
enum class JoinedEnd : std::uint8_t { start, end };

/// How an end is joined.
enum class Seam : std::uint8_t {
    edge,      ///< an open edge, sewn on all the way round: it follows the surface
    closed,    ///< a closed end, sewn on where it touches
    straight,  ///< an edge flattened and closed straight, sewn along that line
    hung,      ///< hangs on one stitch by its tip
    layers,    ///< laid flat on the other, sewn together around both edges
    worked_on  ///< no seam: one fabric, the rounds of the one going on from the edge of the other
};

/// Where on a piece another is joined: in the gap between two rounds, counted in stitches of the round below
/// it from the middle of the face to the viewer's right, as features are, so that it stays in its gap when
/// the piece is resized, restuffed or recoloured.
struct JoinPlace {
    int round = 0;  ///< from 0: the gap is after this round; -1: the start's own edge or pole; that of the
                    ///< last round: the last edge, or the pole it is drawn to
    double stitches_right = 0;
    bool around = false;  ///< all the way round the piece, so that both share an axis

    friend bool operator==(const JoinPlace&, const JoinPlace&) = default;
};

/// One piece of a toy joined to another. The piece's axis stands on the surface at `at`, outwards; its face
/// looks the way that the other's does, or up where the surface itself looks that way.
struct Join {
    PieceCopy piece;    ///< what is joined on; each copy of a piece at most once
    PieceCopy onto;     ///< what it is joined to
    bool pair = false;  ///< and the next copy of the piece, its mirror image about the plane through the
                        ///< other's axis and the middle of its face
    JoinedEnd end = JoinedEnd::end;
    Seam seam = Seam::edge;
    JoinPlace at;
    double turn_degrees = 0;        ///< about its own axis, anticlockwise seen from its far end
    double lean_degrees = 0;        ///< of its far end, upwards; at an end of the other, towards its face
    double lean_right_degrees = 0;  ///< of its far end, to the viewer's right
    double sink_mm = 0;             ///< how far it sinks into the surface
    KeptKeys kept{};

    friend bool operator==(const Join&, const Join&) = default;
};

/// How the finished toy is meant to rest on a table.
enum class Stance : std::uint8_t { standing, sitting, lying };

}  // namespace roundwright
