#pragma once

#include <optional>
#include <vector>

#include "core/reshape/piece_form.h"

namespace roundwright {

/// One round of two pieces, by number.
struct RoundPair {
    std::optional<int> old_stitches;  ///< nothing: the old piece has no such round
    std::optional<int> new_stitches;
    bool same = false;  ///< stitch for stitch, over the same loops
};

struct Comparison {
    std::vector<RoundPair> rounds;
    int first_difference =
        0;              ///< round (from 0) up to which both are the same; the number of rounds if all are
    int old_total = 0;  ///< stitches
    int new_total = 0;
    Size old_size;
    Size new_size;
    double outlines_apart_mm = 0;  ///< `distance_mm` of the two outlines
};

[[nodiscard]] Comparison compare(const PieceForm& old, const PieceForm& made);

}  // namespace roundwright
