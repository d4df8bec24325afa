#pragma once

#include "core/mesh/stitch_surface.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {

/// What a mesh comes to, in a few lines: counts, box, area, volume, where its vertices, normals and colours
/// lie on the whole and together, and its numbering.
void tell_mesh(testing::RecordedText& text, const Mesh& mesh);

}  // namespace roundwright::test
