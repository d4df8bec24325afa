#pragma once

#include <cstddef>
#include <string>

#include "core/mesh/files/named_mesh.h"

namespace roundwright {

/// A file of meshes made one after the other, so that no more than one of them need be there at a time.
class MeshWriter {
  public:
    virtual ~MeshWriter() = default;
    /// Makes room for so many triangles in all; a guess.
    virtual void expect(std::size_t triangles) = 0;
    virtual void add(const NamedMesh& named) = 0;
    /// The bytes of the file. The writer is empty then.
    [[nodiscard]] virtual std::string finish() = 0;
};

}  // namespace roundwright
