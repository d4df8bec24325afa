#pragma once

#include <memory>

#include "core/face/face_surface.h"
#include "core/mesh/fabric_geometry.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// Where the fabric of a studied piece lies, whichever solver found it; null where it has no shape.
[[nodiscard]] std::unique_ptr<FabricGeometry> study_fabric(const Piece& piece, const PieceStudy& study);

/// The same as features see it: by the meridian where the shape has one, and that is far quicker.
[[nodiscard]] FaceSurface study_face(const Piece& piece, const PieceStudy& study);

/// The surface of a studied piece with its stitches, the spare length of loops that ruffle laid in waves.
/// `options.stitch_width_mm` is taken from the study's gauge. Empty where the piece has no shape, or one that
/// is no surface of revolution.
[[nodiscard]] StitchSurface study_surface(const Toy& toy, std::size_t piece, const PieceStudy& study,
                                          RevolveOptions options = {});

/// How many triangles that surface has at most; 0 where it is empty.
[[nodiscard]] std::size_t surface_triangles(const Piece& piece, const PieceStudy& study,
                                            const RevolveOptions& options);

/// The same as a stage: `before` itself where it was made from the same, as it is while only the face, words
/// or prices change.
[[nodiscard]] Shared<SurfaceStage> surface_stage(const Toy& toy, std::size_t piece, const PieceStudy& study,
                                                 const RevolveOptions& options,
                                                 const Shared<SurfaceStage>& before);

}  // namespace roundwright
