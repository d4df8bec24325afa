#pragma once

#include "core/mesh/revolve.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// The surface of a studied piece with its stitches, the spare length of loops that ruffle laid in waves.
/// `options.stitch_width_mm` is taken from the study's gauge. Empty where the piece has no shape.
[[nodiscard]] StitchSurface study_surface(const Toy& toy, std::size_t piece, const PieceStudy& study,
                                          RevolveOptions options = {});

}  // namespace roundwright
