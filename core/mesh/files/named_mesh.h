#pragma once

#include <string>

#include "core/base/vec.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// A mesh under a name and at a place, as a file holds it. `mesh` must outlive the call only.
struct NamedMesh {
    std::string name;  ///< UTF-8; any text
    const Mesh* mesh = nullptr;
    Vec3 place = Vec3::Zero();  ///< mm
};

}  // namespace roundwright
