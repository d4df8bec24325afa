#pragma once

#include <algorithm>
#include <optional>

#include "core/toy/toy.h"

namespace roundwright {

/// The rounds of a piece that are stuffed, where that is some of them and not all: what of
/// `Piece::stuffed_rounds` there is. Nothing where the whole piece is stuffed, or none of it.
[[nodiscard]] inline std::optional<RoundSpan> stuffed_part(const Piece& piece) {
    if (!piece.stuffed_rounds || !(piece.area_stretch > 0)) return std::nullopt;
    const int last_round = static_cast<int>(piece.rounds.size()) - 1;
    const RoundSpan span{std::max(piece.stuffed_rounds->first, 0),
                         std::min(piece.stuffed_rounds->last, last_round)};
    const bool whole = span.first == 0 && span.last == last_round;
    return whole || span.first > span.last ? std::nullopt : std::optional(span);
}

}  // namespace roundwright
