#include "app/export/shown_piece.h"

#include "core/study/study_surface.h"

namespace roundwright::app {

ShownPiece shown_piece(const Toy& toy, std::size_t piece, const ShownOptions& options) {
    const PieceStudy study = study_piece(toy, piece);
    ShownPiece shown;
    if (!study.measures().usable()) return shown;
    const Piece& made = toy.pieces[piece];
    RevolveOptions drawn;
    drawn.relief = options.relief;
    drawn.most_triangles = options.most_triangles;
    shown.surface = study_surface(toy, piece, study, drawn);
    shown.parts =
        feature_parts(made.features, FaceSurface(made, study.revolved()), stitch_counts(study.graph().graph));
    return shown;
}

}  // namespace roundwright::app
