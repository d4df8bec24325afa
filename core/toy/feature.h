#pragma once

#include <cstdint>
#include <string>

#include "core/base/colour.h"
#include "core/base/kept_keys.h"

namespace roundwright {

enum class FeatureKind : std::uint8_t {
    safety_eye,       ///< a dome on a post, held by a washer pressed on from inside
    safety_nose,      ///< the same with another outline
    embroidered_eye,  ///< satin stitch
    felt_disc,
    stitched_line,  ///< a straight stitch from one place to another: mouth, whisker, lash
};

/// Something fitted to a piece, in the gap between two rounds.
///
/// Places are counted in stitches of the round below the gap, from the middle of the face
/// (`Piece::face_degrees`) to the right as the viewer sees it; the two of a pair mirror each other about the
/// middle. A feature keeps its place when the shape changes, since it is tied to stitches and not to
/// millimetres.
struct Feature {
    FeatureKind kind = FeatureKind::safety_eye;
    std::string name;  ///< the maker's own, may be empty
    bool pair = true;
    int round = 0;              ///< from 0; the gap is between this round and the next
    int stitches_apart = 6;     ///< of a pair: from one to the other
    double stitches_right = 0;  ///< of a single one: from the middle; whole and half stitches
    double width_mm = 8;
    double height_mm = 8;  ///< other than the width: oval
    double washer_mm = 0;  ///< diameter; 0: the usual one for the width
    Colour colour{0x1C, 0x1C, 0x20};
    bool lids = false;  ///< half covered by a lid of yarn or felt
    // Where a stitched line ends.
    int end_round = 0;
    double end_stitches_right = 0;
    KeptKeys kept{};

    friend bool operator==(const Feature&, const Feature&) = default;
};

}  // namespace roundwright
