#pragma once

#include <vector>

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// For each vertex 1 if it belongs to a stitch of one of the rounds (from 0), else 0; a vertex shared with
/// another round counts as lit, so that the value falls off across the first row of triangles outside.
/// `mesh` is the surface's own or another whose triangles belong to its stitches.
[[nodiscard]] std::vector<float> lit_vertices(const StitchSurface& surface, const Mesh& mesh,
                                              const std::vector<int>& rounds);

}  // namespace roundwright::render
