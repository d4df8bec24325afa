#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/shape/piece_measures.h"

namespace roundwright {

/// Where a piece is wide and where it is narrow along its rounds, as an eye would see it; loops as in
/// `PieceMeasures::loops`, so that loop k is the one that the round numbered k leaves.
struct WidthProfile {
    std::size_t widest = 0;
    std::optional<std::size_t> narrows_from;  ///< the first loop after the widest that is noticeably narrower
    std::vector<std::size_t> necks;           ///< narrower than what is on both sides of them
};

/// Nothing where there is no shape. What is noticed is a judgement of our own: a difference of 2 % of the
/// largest width beside the widest round, and of 5 % on both sides of a neck.
[[nodiscard]] std::optional<WidthProfile> width_profile(const PieceMeasures& measures);

}  // namespace roundwright
