#pragma once

#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// Sets `mesh.normals` to the area-weighted mean of the normals of the triangles at each vertex.
void set_vertex_normals(Mesh& mesh);

}  // namespace roundwright
