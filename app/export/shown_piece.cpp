#include "app/export/shown_piece.h"

#include <algorithm>
#include <utility>

#include "core/assembly/assembled_studies.h"
#include "core/assembly/toy_measures.h"
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
        FabricStage stage = fabric_stage(made, study, nullptr, {}, options.slant_stitches);
        if (stage.shape->measures.converged())
            study = with_shape(std::move(study), stage.shape);
        else
            shown.refused = std::move(stage);
    }
    study = as_worked(std::move(study), toy, piece);
    if (!study.measures().converged()) return shown;
    shown.surface = study_surface(toy, piece, study, drawn(options));
    const FaceSurface face = study_face(made, study);
    shown.parts = feature_parts(made.features, face, stitch_counts(study.graph().graph), study.fabric.mm);
    return shown;
}

namespace {

/// Copies share what four pieces may have.
ShownOptions shared_among(std::size_t copies, ShownOptions options) {
    options.most_triangles =
        std::max<std::size_t>(1'000, std::min(options.most_triangles, 4 * options.most_triangles / copies));
    return options;
}

std::size_t copies_of(const Toy& toy) {
    std::size_t copies = 0;
    for (const Piece& piece : toy.pieces) copies += static_cast<std::size_t>(std::max(1, piece.make));
    return std::max<std::size_t>(1, copies);
}

/// A copy lowered onto the table.
ShownCopy resting(const AssembledToy& made, std::size_t i, const PlacedForm& table) {
    ShownCopy shown{made.placed.pieces[i].solved, made.placed.pieces[i].copy.copy, {}};
    shown.shown.surface = placed_surface(*made.surfaces[i], table);
    shown.shown.parts = placed_features(made, i);
    for (FeaturePart& part : shown.shown.parts) part.mesh = placed_mesh(part.mesh, table);
    return shown;
}

}  // namespace

std::vector<ShownCopy> shown_toy(const Toy& toy, const ShownOptions& options) {
    std::vector<PieceStudy> studies;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        studies.push_back(as_worked(study_shape(toy, piece), toy, piece));
    const AssembledToy made = assemble(toy, studies, drawn(shared_among(copies_of(toy), options)));
    const PlacedForm table(toy_rest(made, studies).pose);
    std::vector<ShownCopy> copies;
    for (std::size_t i = 0; i < made.surfaces.size(); ++i)
        if (made.surfaces[i] && !made.surfaces[i]->mesh.indices.empty())
            copies.push_back(resting(made, i, table));
    return copies;
}

ShownPiece as_one(const std::vector<ShownCopy>& copies) {
    ShownPiece sum;
    std::vector<std::shared_ptr<const StitchSurface>> surfaces;
    for (const ShownCopy& copy : copies) {
        surfaces.push_back(std::make_shared<const StitchSurface>(copy.shown.surface));
        sum.parts.insert(sum.parts.end(), copy.shown.parts.begin(), copy.shown.parts.end());
    }
    sum.surface = one_surface(surfaces);
    return sum;
}

std::size_t shown_triangles(const Toy& toy, std::size_t piece, const ShownOptions& options) {
    const PieceStudy study = as_worked(study_shape(toy, piece), toy, piece);
    return study.measures().converged() ? surface_triangles(toy.pieces[piece], study, drawn(options)) : 0;
}

}  // namespace roundwright::app
