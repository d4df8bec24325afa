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
    too_large,  ///< more stitches than were asked for
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

/// What became of a piece that was asked for with every stitch in its place.
struct EveryStitchStudy {
    std::shared_ptr<const PieceStudy> study;  ///< with that shape and its sizes; the one given where refused
    EveryStitchRefusal refusal = EveryStitchRefusal::none;
    CellsRefusal cells = CellsRefusal::none;

    [[nodiscard]] bool refused() const { return refusal != EveryStitchRefusal::none; }
};
struct EveryStitchOptions {
    Shared<ShapeStage> before{};    ///< as of `fabric_stage`; may be null
    std::size_t most_stitches = 0;  ///< beyond these it is refused, since it would take long; 0: no limit
    std::stop_token stop{};
};
/// The study of piece `index` with the shape of every stitch in the place of the round solver's, where there
/// is one that settled; checks stay, since they and their cures are judged by the round solver.
[[nodiscard]] EveryStitchStudy with_every_stitch(const std::shared_ptr<const PieceStudy>& round,
                                                 const Toy& toy, std::size_t index,
                                                 const EveryStitchOptions& options = {});

/// Whether the round solver's shape is one of the piece itself: not where that has a round one in the place
/// of an oval or of rows, nor where partial rounds bend the piece. A coil, by plane geometry, is.
[[nodiscard]] bool is_round_as_worked(const Piece& piece, const PieceStudy& study);

/// The study with a shape that is the piece's own, which is what leaves the program: the round solver's where
/// the piece is round as worked, and else that of every stitch, where there is one.
[[nodiscard]] PieceStudy as_worked(PieceStudy study, const Toy& toy, std::size_t index,
                                   std::stop_token stop = {});

}  // namespace roundwright
