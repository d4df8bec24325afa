#include "core/assembly/study_solved.h"

#include <algorithm>

#include "core/assembly/solid.h"
#include "core/study/study_surface.h"

namespace roundwright {
namespace {

FaceSurface surface_of(const Piece& piece, const PieceStudy& study,
                       const std::shared_ptr<const FabricGeometry>& fabric) {
    return study.revolved().usable() ? FaceSurface(piece, study.revolved()) : FaceSurface(piece, fabric);
}

std::shared_ptr<const Solid> stuffed_part(const Piece& piece, const FabricGeometry& fabric,
                                          const std::shared_ptr<const Solid>& whole) {
    if (!(piece.area_stretch > 0)) return nullptr;
    if (!piece.stuffed_rounds) return whole;
    const auto edge = [&](int round) { return static_cast<std::size_t>(std::max(0, round)); };
    return std::make_shared<const Solid>(
        solid_of(fabric, {edge(piece.stuffed_rounds->first), edge(piece.stuffed_rounds->last + 1)}));
}

}  // namespace

SolvedPiece solved_piece(const Toy& toy, std::size_t piece, const PieceStudy& study,
                         const SolvedPiece* before) {
    if (before && before->made_of == study.shape && before->piece == toy.pieces.shared(piece) &&
        before->id == toy.pieces.id(piece) && before->fabric_mm == study.fabric.mm)
        return *before;
    const Piece& said = toy.pieces[piece];
    const std::shared_ptr<const FabricGeometry> fabric = study_fabric(said, study);
    SolvedPiece solved{.id = toy.pieces.id(piece),
                       .piece = toy.pieces.shared(piece),
                       .surface = surface_of(said, study, fabric),
                       .measures = study.measures(),
                       .stitches = stitch_counts(study.graph().graph),
                       .fabric_mm = study.fabric.mm,
                       .solid = {},
                       .stuffed = {},
                       .made_of = study.shape};
    if (!fabric) return solved;
    solved.solid = std::make_shared<const Solid>(solid_of(*fabric));
    solved.stuffed = stuffed_part(said, *fabric, solved.solid);
    return solved;
}

}  // namespace roundwright
