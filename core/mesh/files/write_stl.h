#pragma once

#include <span>
#include <string>

#include "core/mesh/files/named_mesh.h"

namespace roundwright {

/// The meshes as the bytes of one binary STL solid, in mm, with z up as the makers of printed things expect
/// it: our (x, y, z) becomes (x, -z, y).
[[nodiscard]] std::string write_stl(std::span<const NamedMesh> meshes);

}  // namespace roundwright
