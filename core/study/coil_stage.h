#pragma once

#include <memory>
#include <optional>

#include "core/mesh/fabric_geometry.h"
#include "core/shape/curled_strip.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// A strip that curls (core/shape/curled_strip.h) needs no solver: plane geometry says where each of its
/// stitches lies. Its shape stage has measures, but no surface of revolution.

/// Whether a studied piece is shown as a coil.
[[nodiscard]] bool is_coil(const PieceStudy& study);
[[nodiscard]] bool is_coil(const ShapeStage& shape);

/// The shape of a piece that curls. `before` (may be null) itself where it is the same.
[[nodiscard]] Shared<ShapeStage> coil_stage(const Coil& coil, ShapeProblem problem, double fabric_mm,
                                            const Shared<ShapeStage>& before);

/// The range of its sizes. `before` (may be null) itself where it is the same.
[[nodiscard]] Shared<SizeStage> coil_size_stage(const Piece& piece, const PieceStudy& study,
                                                const Shared<SizeStage>& before);

/// The coil of such a piece, and where its fabric lies; nothing of any other.
[[nodiscard]] std::optional<Coil> study_coil(const Piece& piece, const PieceStudy& study);
[[nodiscard]] std::unique_ptr<FabricGeometry> coil_fabric(const Piece& piece, const PieceStudy& study);

}  // namespace roundwright
