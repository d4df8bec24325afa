#pragma once

#include <memory>
#include <span>
#include <string>

#include "core/mesh/files/mesh_writer.h"

namespace roundwright {

/// The meshes as a Wavefront OBJ text: one object each, in mm, y up, with a normal and a colour (three more
/// numbers on the `v` line, which readers that do not know them leave out) at every vertex.
[[nodiscard]] std::string write_obj(std::span<const NamedMesh> meshes);

/// The same, mesh by mesh.
[[nodiscard]] std::unique_ptr<MeshWriter> obj_writer();

}  // namespace roundwright
