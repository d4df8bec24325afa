#include "core/study/study_surface.h"

#include "core/mesh/stitched_surface.h"
#include "core/study/coil_stage.h"

namespace roundwright {

namespace {

std::vector<std::optional<YarnLook>> looks_of(const Toy& toy, const StitchStage& stitches) {
    std::vector<std::optional<YarnLook>> looks;
    for (const std::uint16_t yarn : stitches.yarns) {
        looks.emplace_back();
        if (yarn < toy.yarns.size()) looks.back() = YarnLook{toy.yarns[yarn].colour, toy.yarns[yarn].brushed};
    }
    return looks;
}

StitchSurface coil_surface(const Toy& toy, std::size_t piece, const PieceStudy& study,
                           const RevolveOptions& options) {
    const StitchGraph& graph = study.graph().graph;
    const auto fabric = coil_fabric(toy.pieces[piece], study);
    return fabric ? fabric_surface(toy, graph, lay_fabric(toy.pieces[piece], graph), *fabric, options)
                  : StitchSurface{};
}

}  // namespace

std::unique_ptr<FabricGeometry> study_fabric(const Piece& piece, const PieceStudy& study) {
    if (study.shape->stitched)
        return std::make_unique<StitchedSurface>(*study.shape->stitched, piece.starts_at_top);
    if (is_coil(study)) return coil_fabric(piece, study);
    if (!study.revolved().usable()) return nullptr;
    return revolved_fabric(piece, study.graph().graph, study.revolved(), study.lies());
}

FaceSurface study_face(const Piece& piece, const PieceStudy& study) {
    return study.revolved().usable() ? FaceSurface(piece, study.revolved())
                                     : FaceSurface(piece, study_fabric(piece, study));
}

StitchSurface study_surface(const Toy& toy, std::size_t piece, const PieceStudy& study,
                            RevolveOptions options) {
    options.stitch_width_mm = study.gauge.stitch_width_mm;
    if (study.shape->stitched)
        return fabric_surface(toy, study.graph().graph, study.shape->stitched->cells.rounds,
                              *study_fabric(toy.pieces[piece], study), options);
    if (is_coil(study)) return coil_surface(toy, piece, study, options);
    if (!study.revolved().usable()) return {};
    std::vector<int> waves;
    std::vector<double> heights;
    for (const RoundLie& lie : study.lies()) {
        waves.push_back(lie.waves);
        heights.push_back(lie.wave_height_mm);
    }
    return revolve(toy, toy.pieces[piece], study.graph().graph, study.revolved(), waves, heights, options);
}

std::size_t surface_triangles(const Piece& piece, const PieceStudy& study, const RevolveOptions& options) {
    const auto fabric = study_fabric(piece, study);
    if (!fabric) return 0;
    if (study.shape->stitched) return fabric_triangles(study.shape->stitched->cells.rounds, *fabric, options);
    return fabric_triangles(lay_fabric(piece, study.graph().graph), *fabric, options);
}

Shared<SurfaceStage> surface_stage(const Toy& toy, std::size_t index, const PieceStudy& study,
                                   const RevolveOptions& options, const Shared<SurfaceStage>& before) {
    const Piece& piece = toy.pieces[index];
    SurfaceInputs inputs{study.stitches,
                         study.shape,
                         piece.joining,
                         piece.end,
                         piece.starts_at_top,
                         looks_of(toy, *study.stitches),
                         study.gauge.stitch_width_mm,
                         options.relief,
                         options.most_triangles};
    if (before && before->inputs == inputs) return before;
    auto stage = std::make_shared<SurfaceStage>();
    stage->inputs = std::move(inputs);
    stage->surface = study_surface(toy, index, study, options);
    return stage;
}

}  // namespace roundwright
