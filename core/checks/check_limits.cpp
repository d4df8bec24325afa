#include <algorithm>
#include <cstdint>
#include <limits>

#include "core/base/limits.h"
#include "core/checks/families.h"
#include "core/checks/stitch_limit.h"

namespace roundwright {

std::int64_t stitches_counted(const Piece& piece) {
    std::int64_t stitches = 0;
    for (const Round& round : piece.rounds) {
        if (const auto* even = std::get_if<WorkedEvenly>(&round.working))
            stitches += std::max(0, even->stitches);
    }
    return stitches;
}

bool exceeds_stitch_limit(const Piece& piece) {
    return stitches_counted(piece) > static_cast<std::int64_t>(max_stitches_per_piece);
}

void check_limits(const CheckInput& input, std::vector<Check>& checks) {
    std::int64_t stitches = stitches_counted(input.piece);
    if (input.graphed_rounds() > 0) {
        stitches = 0;
        for (const GraphRound& round : input.graph.graph.rounds) stitches += std::ssize(round.stitches);
    }
    if (stitches <= static_cast<std::int64_t>(max_stitches_per_piece)) return;
    const auto shown = std::min<std::int64_t>(stitches, std::numeric_limits<int>::max());
    checks.push_back({CheckCode::too_many_stitches,
                      Severity::error,
                      input.piece_index,
                      -1,
                      {static_cast<int>(shown), static_cast<int>(max_stitches_per_piece)},
                      {}});
}

}  // namespace roundwright
