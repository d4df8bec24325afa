#pragma once

#include <optional>
#include <vector>

#include "core/face/feature_mesh.h"
#include "core/mesh/revolve.h"
#include "core/mesh/stitch_surface.h"
#include "core/mesh/triangle_limits.h"
#include "core/study/fabric_stage.h"
#include "core/study/piece_study.h"

namespace roundwright::app {

/// A piece as it can be drawn or written: its surface, and what is fitted to it.
struct ShownPiece {
    StitchSurface surface;
    std::vector<FeaturePart> parts;
    /// Why it is not shown stitch by stitch, where that was wanted.
    std::optional<FabricStage> refused;

    [[nodiscard]] bool empty() const { return surface.mesh.indices.empty(); }
};

/// How finely the fabric is made.
struct ShownOptions {
    Relief relief = Relief::solid;
    std::size_t most_triangles = most_file_triangles;
    bool every_stitch = false;                     ///< solved stitch by stitch, where that can be
    double slant_stitches = usual_slant_stitches;  ///< then, the maker's own
};

inline constexpr ShownOptions for_pictures{Relief::shaded, most_picture_triangles};

/// The solved piece; empty where no settled shape was found.
[[nodiscard]] ShownPiece shown_piece(const Toy& toy, std::size_t piece, const ShownOptions& options = {});

/// A copy of a piece where it is in the toy.
struct ShownCopy {
    std::size_t piece = 0;  ///< index into the toy's pieces
    int copy = 0;
    ShownPiece shown;
};

/// The toy as it rests on a table at y = 0, every copy of its pieces placed; pieces without a settled shape
/// are left out. All copies together have about as many triangles as one piece may have in a file, or as four
/// in a picture.
[[nodiscard]] std::vector<ShownCopy> shown_toy(const Toy& toy, const ShownOptions& options = {});

/// Copies as one surface, and all that is fitted to them.
[[nodiscard]] ShownPiece as_one(const std::vector<ShownCopy>& copies);

/// How many triangles its fabric has at most; 0 where it is empty.
[[nodiscard]] std::size_t shown_triangles(const Toy& toy, std::size_t piece, const ShownOptions& options);

}  // namespace roundwright::app
