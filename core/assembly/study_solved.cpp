#include "core/assembly/study_solved.h"

#include "core/study/study_surface.h"

namespace roundwright {
namespace {

FaceSurface surface_of(const Piece& piece, const PieceStudy& study) {
    if (study.revolved().usable()) return {piece, study.revolved()};
    return {piece, study_fabric(piece, study)};
}

}  // namespace

SolvedPiece solved_piece(const Toy& toy, std::size_t piece, const PieceStudy& study) {
    const Piece& said = toy.pieces[piece];
    return {.id = toy.pieces.id(piece),
            .piece = toy.pieces.shared(piece),
            .surface = surface_of(said, study),
            .measures = study.measures(),
            .stitches = stitch_counts(study.graph().graph)};
}

}  // namespace roundwright
