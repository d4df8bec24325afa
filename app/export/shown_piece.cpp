#include "app/export/shown_piece.h"

#include <utility>

#include "core/study/study_surface.h"

namespace roundwright::app {
namespace {

RevolveOptions drawn(const ShownOptions& options) {
    RevolveOptions drawn;
    drawn.relief = options.relief;
    drawn.most_triangles = options.most_triangles;
    return drawn;
}

}  // namespace

ShownPiece shown_piece(const Toy& toy, std::size_t piece, const ShownOptions& options) {
    PieceStudy study = study_shape(toy, piece);
    ShownPiece shown;
    const Piece& made = toy.pieces[piece];
    if (options.every_stitch) {
        FabricStage stage = fabric_stage(made, study);
        if (stage.shape->measures.converged())
            study = with_shape(std::move(study), stage.shape);
        else
            shown.refused = std::move(stage);
    }
    if (!study.measures().converged()) return shown;
    shown.surface = study_surface(toy, piece, study, drawn(options));
    const FaceSurface face = study.shape->stitched ? FaceSurface(made, study_fabric(made, study))
                                                   : FaceSurface(made, study.revolved());
    shown.parts = feature_parts(made.features, face, stitch_counts(study.graph().graph), study.fabric.mm);
    return shown;
}

std::size_t shown_triangles(const Toy& toy, std::size_t piece, const ShownOptions& options) {
    const PieceStudy study = study_shape(toy, piece);
    return study.measures().converged() ? surface_triangles(toy.pieces[piece], study, drawn(options)) : 0;
}

}  // namespace roundwright::app
