#pragma once

#include <optional>

#include "core/checks/check.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// Corners that increases over each other give a round, as far as the shape of every stitch shows them.
struct Corners {
    int round = 0;  ///< from 0
    int corners = 0;
    double out_mm = 0;  ///< a corner is so much farther from the middle than the middle of a side
};

/// The corners of a round: twice the wave of its edge's distance from the middle that goes around as often as
/// it increases. What is bent, oval or spiral has other waves and does not count.
[[nodiscard]] std::optional<Corners> corners_of(const PieceStudy& study, int round);

/// The round whose corners stand out farthest, where they can be seen; none without a shape of every stitch.
[[nodiscard]] std::optional<Corners> highest_corners(const PieceStudy& study);

/// Corners that stand out by less than this are not seen: a starting value of our own.
inline constexpr double seen_corner_mm = 0.5;

/// A check as the finer shape sees it: what was reckoned of corners is measured.
[[nodiscard]] Check as_seen(Check check, const PieceStudy& study);

}  // namespace roundwright
