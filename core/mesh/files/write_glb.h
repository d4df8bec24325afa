#pragma once

#include <memory>
#include <span>
#include <string>

#include "core/mesh/files/mesh_writer.h"

namespace roundwright {

/// The meshes as the bytes of a binary glTF 2.0 file (The Khronos Group, glTF 2.0 Specification): a named
/// node each, metres, y up, front to +z, with normals and linear vertex colours on a rough, unmetallic
/// material.
[[nodiscard]] std::string write_glb(std::span<const NamedMesh> meshes);

/// The same, mesh by mesh.
[[nodiscard]] std::unique_ptr<MeshWriter> glb_writer();

}  // namespace roundwright
