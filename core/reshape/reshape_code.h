#pragma once

#include <string_view>

namespace roundwright {

/// What came of a wish to reshape a piece.
enum class ReshapeCode {
    met,             ///< width and height within half a round or 2 %
    unchanged,       ///< it is that size already
    width_not_met,   ///< the piece is the nearest that was found
    height_not_met,  ///< as above
    size_not_met,    ///< neither width nor height; as above
    nothing_wanted,
    conflicting_target,  ///< a scale beside a size, or a circumference beside a width
    unusable_target,  ///< a size that is not a positive finite number, or a silhouette that encloses nothing
    too_small,        ///< smaller than a few stitches around, or less than a round high
    too_large,        ///< more rounds or stitches than a piece may have
    unusable_piece,   ///< no rounds, rounds that do not come out, or no shape to start from
    not_of_revolution,  ///< the piece's shape has no outline that could be turned about an axis
    cancelled,
};

/// A name for machines: "met", "width_not_met", ...
[[nodiscard]] std::string_view reshape_code_name(ReshapeCode code);

/// Whether there is a new piece to show (which may be the nearest only).
[[nodiscard]] bool has_piece(ReshapeCode code);

}  // namespace roundwright
