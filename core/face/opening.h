#pragma once

#include <optional>
#include <vector>

#include "core/gauge/gauge.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Opening that two fingers need to press a washer on, mm: common practice.
inline constexpr double fingers_need_mm = 30;

/// Opening down to which stuffing can still be pushed in with a stick or a closed pair of tweezers, mm:
/// common practice.
inline constexpr double stuffing_needs_mm = 12;

/// Diameter of the opening that is left when each round is done, mm: the edge laid in a circle, not
/// stretched, within its fabric, since the loop runs in the middle of that. `rest_loop_mm`: relaxed length of
/// every loop, the start's first, as the shape problem has it. `fabric_mm`: thickness (`FabricThickness`).
[[nodiscard]] std::vector<double> openings_mm(const std::vector<double>& rest_loop_mm, double fabric_mm);

/// Diameter of the opening that the start leaves: 0 where it is drawn closed or worked along a chain.
[[nodiscard]] double start_opening_mm(const Start& start, const std::vector<double>& rest_loop_mm,
                                      double fabric_mm);

/// When a feature with a washer can be fitted. Rounds from 0; "by round k" means after it, before the next.
struct FittingTime {
    int earliest = 0;                    ///< the round after the gap: only then the gap is there
    std::optional<int> last_by_washer;   ///< last round after which the washer still passes the opening
    std::optional<int> last_by_fingers;  ///< last round after which fingers still reach in
    std::optional<int> recommended;      ///< where the pattern says "fit the eyes now"
    bool other_end_open = false;         ///< the start leaves an opening that is wide enough: no hurry
};

/// `start_opening_mm`: 0 where the start is closed.
[[nodiscard]] FittingTime fitting_time(int feature_round, double washer_mm,
                                       const std::vector<double>& openings_mm, double start_opening_mm);

/// Diameter of the washer that usually comes with an eye or nose of this width, mm: from memory, the maker's
/// own wins.
[[nodiscard]] double usual_washer_mm(double width_mm);

/// When to stuff a piece that closes. Rounds from 0, after which to do it; nothing for a piece that is not
/// stuffed.
struct StuffingTime {
    std::optional<int> begin;
    std::optional<int> finish;  ///< the last opening that stuffing passes; the end, for a piece left open
};
[[nodiscard]] StuffingTime stuffing_time(const Piece& piece, const std::vector<double>& openings_mm);

}  // namespace roundwright
