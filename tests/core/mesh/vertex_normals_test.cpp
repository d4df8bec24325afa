#include "core/mesh/vertex_normals.h"

#include <cmath>
#include <gtest/gtest.h>

namespace roundwright {
namespace {

// A triangle of 6 mm2 that looks along z, one of 1 mm2 that looks along x, both at vertex 0: the larger
// counts for more.
TEST(VertexNormals, AreTheMeanOfTheTrianglesByTheirArea) {
    Mesh mesh;
    mesh.positions = {0, 0, 0, 4, 0, 0, 0, 3, 0, 0, 2, 0, 0, 0, 1, 9, 9, 9};
    mesh.indices = {0, 1, 2, 0, 3, 4};
    mesh.normals = {7, 7, 7};
    set_vertex_normals(mesh);
    ASSERT_EQ(mesh.normals.size(), mesh.positions.size());
    const float length = std::sqrt(37.0F);
    const float expected[] = {1 / length, 0, 6 / length, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0, 0, 1, 0};
    for (std::size_t k = 0; k < 18; ++k) EXPECT_NEAR(mesh.normals[k], expected[k], 1e-6F) << k;
}

TEST(VertexNormals, OfSkewTrianglesAreSquareOnThem) {
    Mesh mesh;
    mesh.positions = {1, 2, 3, 4, 1, 5, 2, 6, 4};
    mesh.indices = {0, 1, 2};
    set_vertex_normals(mesh);
    // (3, -1, 2) x (1, 4, 1) = (-9, -1, 13)
    const float length = std::sqrt(251.0F);
    for (std::size_t v = 0; v < 9; v += 3) {
        EXPECT_NEAR(mesh.normals[v], -9 / length, 1e-6F);
        EXPECT_NEAR(mesh.normals[v + 1], -1 / length, 1e-6F);
        EXPECT_NEAR(mesh.normals[v + 2], 13 / length, 1e-6F);
    }
}

}  // namespace
}  // namespace roundwright
