#pragma once

#include <vector>

#include "core/mesh/stitch_surface.h"
#include "core/shape/solve_shape.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Triangles that a piece may have in a picture.
inline constexpr std::size_t most_picture_triangles = 200'000;

/// How the stitches stand out from a surface.
enum class Relief {
    none,   ///< not at all
    solid,  ///< by its triangles, as what is to be printed or milled needs it
    shaded  ///< by its triangles roughly; the normals and colours are those of the mean surface, and whoever
            ///< draws it shades the cords of yarn from each triangle's face
};

/// How finely the fabric is drawn.
struct RevolveOptions {
    double stitch_width_mm = 5;  ///< scale of the relief
    Relief relief = Relief::solid;
    /// The relief gets coarser to stay below, and in the end the cells become larger than stitches.
    std::size_t most_triangles = most_picture_triangles;
};

/// The surface of revolution of a solved shape, with the relief of its stitches; a flattened piece has its
/// layers to the front and to the back. The axis is y, and the lowest loop lies at y = 0. Round 1 starts at
/// the back, and work goes to the left, as right-handed crochet does. A piece that starts at the top is
/// turned over.
///
/// A closed piece is one watertight skin around its solved volume. An open one has an inside too, joined to
/// the outside at the rims, so that its mesh is watertight around the fabric itself.
///
/// `ruffle_waves` and `ruffle_height_mm` (crest to trough; may be empty) lay the spare length of each loop in
/// waves: either one entry a loop, rounds + 1 from the start's on, or one a round, for the loop it leaves.
/// Nothing is returned for a shape that does not fit the graph.
[[nodiscard]] StitchSurface revolve(const Toy& toy, const Piece& piece, const StitchGraph& graph,
                                    const Shape& shape, const std::vector<int>& ruffle_waves,
                                    const std::vector<double>& ruffle_height_mm,
                                    const RevolveOptions& options = {});

}  // namespace roundwright
