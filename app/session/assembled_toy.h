#pragma once

#include <memory>
#include <vector>

#include "core/assembly/hidden_features.h"
#include "core/assembly/placed_toy.h"
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
    std::vector<SolvedPiece> solved;  ///< one a piece
    PlacedToy placed;
    /// Of each placed piece, in the toy's frame; null where it has no shape.
    std::vector<std::shared_ptr<const StitchSurface>> surfaces;
    std::vector<HiddenFeature> hidden;
    /// How many surfaces were made and placed for it anew, and not taken from the one before.
    std::size_t placed_anew = 0;
};

/// Puts a toy together. `studies`: one a piece, whose shapes are of the toy's pieces as they are; null where
/// there is none. What `before` (may be null) has of the same is shared with it; a piece whose study found no
/// shape keeps its last one.
[[nodiscard]] AssembledToy assemble(std::shared_ptr<const Toy> toy,
                                    const std::vector<std::shared_ptr<const PieceStudy>>& studies,
                                    const AssembledToy* before, const RevolveOptions& options);

}  // namespace roundwright::app
