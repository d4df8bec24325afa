#include <array>
#include <assimp/Importer.hpp>
#include <assimp/postprocess.h>
#include <assimp/scene.h>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>
#include <regex>
#include <unistd.h>

#include "core/mesh/revolve.h"
#include "core/mesh/files/write_glb.h"
#include "core/mesh/files/write_obj.h"
#include "core/mesh/files/write_stl.h"
#include "tests/core/mesh/example_pieces.h"
#include "tests/core/mesh/mesh_measures.h"

namespace roundwright {
namespace {

/// A mesh as an independent reader (Open Asset Import Library) finds it, welded by position.
struct ReadBack {
    std::unique_ptr<Assimp::Importer> importer = std::make_unique<Assimp::Importer>();
    const aiScene* scene = nullptr;

    ReadBack(const std::string& bytes, const char* kind, unsigned steps = aiProcess_Triangulate) {
        scene = importer->ReadFileFromMemory(bytes.data(), bytes.size(), steps, kind);
    }
    [[nodiscard]] Mesh mesh(unsigned number) const {
        const aiMesh& read = *scene->mMeshes[number];
        Mesh mesh;
        for (unsigned v = 0; v < read.mNumVertices; ++v)
            for (const float x : {read.mVertices[v].x, read.mVertices[v].y, read.mVertices[v].z})
                mesh.positions.push_back(x);
        for (unsigned f = 0; f < read.mNumFaces; ++f)
            for (unsigned k = 0; k < read.mFaces[f].mNumIndices; ++k)
                mesh.indices.push_back(read.mFaces[f].mIndices[k]);
        return mesh;
    }
};

class WriteMesh : public ::testing::Test {
  protected:
    WriteMesh() {
        RevolveOptions options;
        options.most_triangles = 12'000;
        ball = revolve(example.toy, example.piece(), example.graph, example.shape, {}, {}, options);
        const auto tube = test::example_piece({12, 12, 12}, End::left_open, 12);
        fin = revolve(tube.toy, tube.piece(), tube.graph, tube.shape, {}, {}, options);
        meshes = {{"body", &ball.mesh, Vec3::Zero()}, {"left fin #1", &fin.mesh, Vec3(80, 10, 0)}};
    }

    test::ExamplePiece example = test::sphere_piece(4);
    StitchSurface ball, fin;
    std::vector<NamedMesh> meshes;
};

TEST_F(WriteMesh, ObjIsReadByAnotherReader) {
    const ReadBack read(write_obj(meshes), "obj");
    ASSERT_TRUE(read.scene) << read.importer->GetErrorString();
    ASSERT_EQ(read.scene->mNumMeshes, 2U);
    EXPECT_STREQ(read.scene->mMeshes[0]->mName.C_Str(), "body");
    EXPECT_STREQ(read.scene->mMeshes[1]->mName.C_Str(), "left_fin__1");
    EXPECT_TRUE(read.scene->mMeshes[0]->HasNormals());
    ASSERT_TRUE(read.scene->mMeshes[0]->HasVertexColors(0));
    EXPECT_EQ(read.scene->mMeshes[0]->mNumFaces, ball.mesh.triangle_count());
    EXPECT_NEAR(test::measure(read.mesh(0)).volume_mm3 / example.shape.volume_mm3, 1, 0.01);
}

TEST_F(WriteMesh, GlbIsReadByAnotherReader) {
    const ReadBack read(write_glb(meshes), "glb");
    ASSERT_TRUE(read.scene) << read.importer->GetErrorString();
    ASSERT_EQ(read.scene->mNumMeshes, 2U);
    const aiNode* node = read.scene->mRootNode->FindNode("left fin #1");
    ASSERT_TRUE(node);
    EXPECT_NEAR(static_cast<double>(node->mTransformation.a4), 0.080, 1e-7);
    const Mesh body = read.mesh(0);
    const auto found = test::measure(body);
    EXPECT_EQ(found.odd_edges, 0U);
    EXPECT_EQ(found.euler_characteristic, 2);
    // Metres: the standard's unit.
    EXPECT_NEAR(found.volume_mm3 / (example.shape.volume_mm3 * 1e-9), 1, 0.01);
    ASSERT_TRUE(read.scene->mMeshes[0]->HasVertexColors(0));
    // sRGB to linear of the ball's first vertex (IEC 61966-2-1).
    const auto srgb = static_cast<double>(ball.mesh.colours[0]);
    EXPECT_NEAR(static_cast<double>(read.scene->mMeshes[0]->mColors[0][0].r),
                std::pow((srgb + 0.055) / 1.055, 2.4), 1e-4);
}

TEST_F(WriteMesh, StlIsReadByAnotherReader) {
    const std::vector<NamedMesh> body = {meshes[0]};
    const ReadBack read(write_stl(body), "stl", aiProcess_JoinIdenticalVertices);
    ASSERT_TRUE(read.scene) << read.importer->GetErrorString();
    EXPECT_EQ(read.scene->mMeshes[0]->mNumFaces, ball.mesh.triangle_count());
    EXPECT_NEAR(test::measure(read.mesh(0)).volume_mm3 / example.shape.volume_mm3, 1, 0.01);
}

/// What the program `admesh` says of an STL file.
std::optional<std::string> admesh(const std::string& bytes) {
    const auto path = std::filesystem::temp_directory_path() /
                      ("roundwright_mesh_test_" + std::to_string(getpid()) + ".stl");
    std::ofstream(path, std::ios::binary) << bytes;
    std::string said;
    const std::string command = std::string(ROUNDWRIGHT_ADMESH) + " " + path.string();
    if (FILE* pipe = popen(command.c_str(), "r")) {
        std::array<char, 512> line;
        while (std::fgets(line.data(), static_cast<int>(line.size()), pipe)) said += line.data();
        pclose(pipe);
    }
    std::filesystem::remove(path);
    if (said.empty()) return {};
    return said;
}

double number_after(const std::string& text, const std::string& words) {
    std::smatch found;
    if (!std::regex_search(text, found, std::regex(words + "\\s*:\\s*([-0-9.e+]+)"))) return -1;
    return std::stod(found[1]);
}

TEST_F(WriteMesh, StlIsWatertightToAnIndependentChecker) {
    const auto said = admesh(write_stl(meshes));
    ASSERT_TRUE(said);
    EXPECT_EQ(number_after(*said, "Number of parts"), 2) << *said;
    for (const char* fault : {"Degenerate facets", "Edges fixed", "Facets removed", "Facets added",
                              "Facets reversed", "Backwards edges"})
        EXPECT_EQ(number_after(*said, fault), 0) << fault << '\n' << *said;
    EXPECT_EQ(number_after(*said, "Total disconnected facets"), 0) << *said;
    const double both = test::measure(ball.mesh).volume_mm3 + test::measure(fin.mesh).volume_mm3;
    EXPECT_NEAR(number_after(*said, "Volume") / both, 1, 1e-4) << *said;
}

TEST(WriteMeshEdges, NoMeshesAndOddNamesStillMakeAFile) {
    EXPECT_EQ(write_stl({}).size(), 84U);
    EXPECT_EQ(write_obj({}).find("v "), std::string::npos);
    const std::string empty = write_glb({});
    EXPECT_EQ(empty.substr(0, 4), "glTF");
    EXPECT_EQ(empty.size() % 4, 0U);
    const auto tiny = test::sphere_piece(2);
    const auto surface = revolve(tiny.toy, tiny.piece(), tiny.graph, tiny.shape, {}, {});
    const std::vector<NamedMesh> odd = {{"a\nb\xff \"q\"", &surface.mesh, Vec3::Zero()},
                                        {"", &surface.mesh, Vec3::Zero()}};
    const ReadBack glb(write_glb(odd), "glb"), obj(write_obj(odd), "obj");
    ASSERT_TRUE(glb.scene && obj.scene);
    EXPECT_EQ(glb.scene->mNumMeshes, 2U);
    EXPECT_EQ(obj.scene->mNumMeshes, 2U);
}

}  // namespace
}  // namespace roundwright
