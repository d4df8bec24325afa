#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/assembly/placed_surface.h"
#include "core/assembly/sewing_steps.h"
#include "core/assembly/toy_measures.h"
#include "core/materials/estimate.h"
#include "core/materials/materials.h"
#include "core/study/piece_study.h"
#include "core/toy/toy.h"

namespace roundwright::render {

/// Size of a finished piece, mm, with the range that its gauge and stuffing leave.
struct FinishedSize {
    Estimate width_mm;
    Estimate height_mm;
    double wave_height_mm = 0;           ///< of a flat piece whose fabric ruffles, crest to trough
    bool flattened = false;              ///< it is not stuffed, and its two layers lie on each other
    bool flat = false;                   ///< it lies flat as worked
    std::optional<Estimate> depth_mm{};  ///< from front to back, of a piece that is not round
};

/// The size of a piece worked at another gauge, taken as exact.
struct SizeAtGauge {
    double stitches = 0;                              ///< in a swatch of 10 cm, or of 4 in
    bool own = false;                                 ///< the toy's own gauge
    std::vector<std::optional<FinishedSize>> pieces;  ///< one a piece
};

/// A toy and everything its pattern tells of it.
struct PatternStudy {
    Toy toy;
    std::vector<PieceStudy> pieces;                  ///< one a piece
    std::vector<std::optional<FinishedSize>> sizes;  ///< one a piece; nothing where it has no shape
    std::vector<SizeAtGauge> at_gauges;              ///< from the widest stitch to the narrowest
    Materials materials;
    Gauge gauge;
    bool gauge_known = false;
    std::shared_ptr<const AssembledToy> together;  ///< every copy, put together; never null
    ToyMeasures measures;                          ///< of the toy, where something is joined
    std::vector<SewingStep> sewing;                ///< in the order of the work
};

}  // namespace roundwright::render
