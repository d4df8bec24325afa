#pragma once

#include <optional>
#include <span>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// What can be measured on a join.
struct SeamMeasures {
    double line_mm = 0;       ///< the line that the edge is sewn along; once along a straight seam
    double stitches_mm = 0;   ///< the edge's own stitches, relaxed; of a straight seam those of one layer
    int stitches = 0;         ///< on the edge, all the way round; 0: not known
    int lowest_round = -1;    ///< the line lies in the gaps after these rounds of the other piece, from 0;
    int highest_round = -1;   ///< -1: before its first
    double lean_over_mm = 0;  ///< how far the edge's points bend over from where they would stand, at most

    /// By which share the stitches must be eased in where the line is shorter (below 0: "gathered"), or
    /// stretched where it is longer.
    [[nodiscard]] double stretch() const { return stitches_mm > 0 ? line_mm / stitches_mm - 1 : 0; }

    friend bool operator==(const SeamMeasures&, const SeamMeasures&) = default;
};

/// Of copy `index` of a placed toy; nothing where no edge of it follows a line, and of the second of a pair.
[[nodiscard]] std::optional<SeamMeasures> seam_measures(const Toy& toy, const PlacedToy& placed,
                                                        std::span<const SolvedPiece> solved,
                                                        std::size_t index);

}  // namespace roundwright
