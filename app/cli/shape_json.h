#pragma once

#include <nlohmann/json_fwd.hpp>

#include "core/gauge/yarn_standard.h"
#include "core/study/piece_study.h"

namespace roundwright::app {

/// [low, high]
[[nodiscard]] nlohmann::ordered_json range_json(const Range& range);

/// A piece's shape and, per round, where it lies and how its fabric does. With `stitches`, the loops that
/// every stitch is worked into as well.
[[nodiscard]] nlohmann::ordered_json shape_json(const Piece& piece, const PieceStudy& study, bool stitches);

}  // namespace roundwright::app
