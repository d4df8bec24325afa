#pragma once

#include <memory>
#include <vector>

#include "core/assembly/hidden_features.h"
#include "core/assembly/overlap_region.h"
#include "core/assembly/placed_surface.h"
#include "core/assembly/toy_measures.h"
#include "core/study/study_surface.h"

namespace roundwright::app {

/// A piece of a toy that is put together, with what it was made from.
struct AssembledPiece {
    PieceId id = PieceId::none;
    std::shared_ptr<const Piece> said;  ///< as it stands in the toy
    std::shared_ptr<const PieceStudy> study;
    Shared<SurfaceStage> drawn;  ///< in the piece's own frame; null or empty: no shape was found so far
};

/// The toy together, as it was at one moment: a value that nobody changes any more.
struct AssembledToy {
    std::shared_ptr<const Toy> toy;
    std::vector<AssembledPiece> pieces;
    std::shared_ptr<const roundwright::AssembledToy> whole;
    std::vector<HiddenFeature> hidden;
    /// From the toy's frame to the table's, y up, as it is meant to rest. Standing it is as it was built.
    /// Until it is measured: as the toy before rested in the same stance.
    Pose on_table = Pose::Identity();
    std::shared_ptr<const ToyMeasures> measures;  ///< null: they are not known yet
    std::vector<OverlapRegion> overlaps;          ///< of `measures->overlaps`, one each

    [[nodiscard]] const std::vector<SolvedPiece>& solved() const { return whole->solved; }
    [[nodiscard]] const PlacedToy& placed() const { return whole->placed; }
    /// Of each placed piece, in the toy's frame; null where it has no shape.
    [[nodiscard]] const std::vector<std::shared_ptr<const StitchSurface>>& surfaces() const {
        return whole->surfaces;
    }
};

/// Puts a toy together, but for its measures. `studies`: one a piece, whose shapes are of the toy's pieces as
/// they are; null where there is none. What `before` (may be null) has of the same is shared with it; a piece
/// whose study found no shape keeps its last one.
[[nodiscard]] AssembledToy put_in_place(std::shared_ptr<const Toy> toy,
                                        const std::vector<std::shared_ptr<const PieceStudy>>& studies,
                                        const AssembledToy* before, const RevolveOptions& options);

/// The same with its measures.
[[nodiscard]] AssembledToy measured(AssembledToy toy);

}  // namespace roundwright::app
