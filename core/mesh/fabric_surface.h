#pragma once

#include <cstddef>
#include <vector>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_surface.h"
#include "core/mesh/triangle_limits.h"
#include "core/stitches/stitch_graph.h"
#include "core/stitches/stitch_layout.h"
#include "core/toy/toy.h"

namespace roundwright {

/// How the stitches stand out from a surface.
enum class Relief {
    none,   ///< not at all
    solid,  ///< by its triangles, as what is to be printed or milled needs it
    shaded  ///< by its triangles roughly; the normals and colours are those of the mean surface, and whoever
            ///< draws it shades the cords of yarn from each triangle's face
};

/// How finely the fabric is drawn.
struct SurfaceOptions {
    double stitch_width_mm = 5;  ///< scale of the relief
    Relief relief = Relief::solid;
    /// The relief gets coarser to stay below, and in the end the cells become larger than stitches.
    std::size_t most_triangles = most_picture_triangles;
};

/// The surface of a piece whose stitches are laid as `rounds`, with their relief, wherever the geometry says
/// that its fabric lies. The rounds are those up to the first one without cells (`lay_fabric`).
///
/// A closed piece is one watertight skin around its solved volume. An open one has an inside too, joined to
/// the outside at the rims, so that its mesh is watertight around the fabric itself.
[[nodiscard]] StitchSurface fabric_surface(const Toy& toy, const StitchGraph& graph,
                                           const std::vector<LaidRound>& rounds,
                                           const FabricGeometry& geometry, const SurfaceOptions& options = {});

/// How many triangles that surface has. Of a brushed piece that is shaded, whose fibres take two thirds, it
/// may be fewer.
[[nodiscard]] std::size_t fabric_triangles(const std::vector<LaidRound>& rounds,
                                           const FabricGeometry& geometry, const SurfaceOptions& options = {});

/// The laid rounds of a piece that a surface can be made of: those before the first that leaves no loop.
[[nodiscard]] std::vector<LaidRound> lay_fabric(const Piece& piece, const StitchGraph& graph);

}  // namespace roundwright
