#pragma once

#include <stop_token>

#include "core/shape/fabric/solved_stitches.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// Why a piece has no shape of every stitch.
enum class EveryStitchRefusal {
    none,
    no_cells,   ///< `StitchCells::refusal` says why
    lies_limp,  ///< not stuffed and closed: it lies in two layers, which touch
    not_solved,
};

struct FabricStage {
    Shared<ShapeStage> shape = no_stage<ShapeStage>();  ///< not usable where it was refused
    EveryStitchRefusal refusal = EveryStitchRefusal::none;
    CellsRefusal cells = CellsRefusal::none;
};

/// The shape of a studied piece with every stitch in its place, to be shown by `with_shape`. It starts from
/// the one before if that is of every stitch too, else from the round solver's shape, else by scaling.
/// `before` (may be null): the shape stage of the piece before an edit; it comes back where it is of the same
/// problem and the same stitches. `slant_stitches`: the maker's own (core/stitches/stitch_slant.h).
[[nodiscard]] FabricStage fabric_stage(const Piece& piece, const PieceStudy& round,
                                       const Shared<ShapeStage>& before = nullptr, std::stop_token stop = {},
                                       double slant_stitches = usual_slant_stitches);

}  // namespace roundwright
