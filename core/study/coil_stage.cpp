#include "core/study/coil_stage.h"

#include <utility>

#include "core/gauge/offered_circle.h"
#include "core/mesh/coiled_fabric.h"
#include "core/mesh/fabric_surface.h"

namespace roundwright {

bool is_coil(const ShapeStage& shape) {
    const bool strip = shape.problem.equivalent_round && shape.problem.first == MeridianEnd::open;
    return strip && shape.measures.usable() && shape.measures.fidelity == Fidelity::every_stitch &&
           !shape.stitched;
}

bool is_coil(const PieceStudy& study) { return is_coil(*study.shape); }

Shared<ShapeStage> coil_stage(const Coil& coil, ShapeProblem problem, double fabric_mm,
                              const Shared<ShapeStage>& before) {
    problem.fabric_thickness_mm = fabric_mm;
    if (before && is_coil(*before) && before->problem == problem) return before;
    auto stage = std::make_shared<ShapeStage>();
    stage->measures = coil_measures(coil, problem);
    stage->lies.resize(problem.rest_height_mm.size());
    stage->problem = std::move(problem);
    return stage;
}

Shared<SizeStage> coil_size_stage(const Piece& piece, const PieceStudy& study,
                                  const Shared<SizeStage>& before) {
    if (before && before->shape == study.shape && before->gauge == study.gauge) return before;
    auto stage = std::make_shared<SizeStage>();
    stage->shape = study.shape;
    stage->gauge = study.gauge;
    stage->size = coil_size_range(piece, study.problem(), study.gauge, study.fabric.mm);
    if (const auto then = gauge_with_circle(study.gauge))
        stage->with_circle = coil_size_range(piece, study.problem(), *then, study.fabric.mm);
    return stage;
}

std::optional<Coil> study_coil(const Piece& piece, const PieceStudy& study) {
    return is_coil(study) ? coil_of(piece, study.problem(), study.fabric.mm) : std::nullopt;
}

std::unique_ptr<FabricGeometry> coil_fabric(const Piece& piece, const PieceStudy& study) {
    auto coil = study_coil(piece, study);
    const auto rows = lay_fabric(piece, study.graph().graph);
    if (!coil || rows.empty() || coil->radii_mm.size() <= rows.size()) return nullptr;
    coil->radii_mm.resize(rows.size() + 1);
    std::vector<double> loops{static_cast<double>(rows.front().loops_below)};
    for (const LaidRound& row : rows) loops.push_back(static_cast<double>(row.cells.size()));
    return std::make_unique<CoiledFabric>(std::move(*coil), std::move(loops), piece.starts_at_top);
}

}  // namespace roundwright
