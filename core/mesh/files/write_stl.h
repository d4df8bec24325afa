#pragma once

#include <memory>
#include <span>
#include <string>

#include "core/mesh/files/mesh_writer.h"

namespace roundwright {

/// The meshes as the bytes of one binary STL solid, in mm, with z up as the makers of printed things expect
/// it: our (x, y, z) becomes (x, -z, y).
[[nodiscard]] std::string write_stl(std::span<const NamedMesh> meshes);

/// The same, mesh by mesh.
[[nodiscard]] std::unique_ptr<MeshWriter> stl_writer();

}  // namespace roundwright
