#pragma once

#include <vector>

#include <QPolygonF>

#include "core/mesh/stitch_surface.h"
#include "render/drawing/drawing_view.h"

namespace roundwright::render {

/// Lays the points of a mesh's rough boundaries, the mesh to their left, on its outline in the drawing's
/// plane: each moves by up to `reach_mm` straight across its boundary to the outermost triangle there, and a
/// corner to the outermost vertex.
void snap_to_outline(std::vector<QPolygonF>& boundaries, const Mesh& mesh, const Projection& projection,
                     double reach_mm);

}  // namespace roundwright::render
