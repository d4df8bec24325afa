#include "core/assembly/study_solved.h"

#include <algorithm>

#include "core/assembly/solid.h"
#include "core/study/coil_stage.h"
#include "core/study/study_surface.h"
#include "core/toy/stuffed_part.h"

namespace roundwright {
namespace {

FaceSurface surface_of(const Piece& piece, const PieceStudy& study,
                       const std::shared_ptr<const FabricGeometry>& fabric) {
    if (study.revolved().usable()) return {piece, study.revolved()};
    return fabric ? FaceSurface(piece, fabric) : FaceSurface(piece, Shape{});
}

std::shared_ptr<const Solid> stuffed_part(const Piece& piece, const FabricGeometry& fabric,
                                          const std::shared_ptr<const Solid>& whole) {
    if (!(piece.area_stretch > 0)) return nullptr;
    const auto part = stuffed_part(piece);
    if (!part) return whole;
    const auto edge = [](int round) { return static_cast<std::size_t>(round); };
    return std::make_shared<const Solid>(solid_of(fabric, {edge(part->first), edge(part->last + 1)}));
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
    if (is_coil(study)) {
        solved.solid = std::make_shared<const Solid>(solid_of_sheet(*fabric, study.fabric.mm));
        return solved;
    }
    solved.solid = std::make_shared<const Solid>(solid_of(*fabric));
    solved.stuffed = stuffed_part(said, *fabric, solved.solid);
    return solved;
}

}  // namespace roundwright
