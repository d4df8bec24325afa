#include <algorithm>
#include <bit>
#include <cstdint>
#include <cstring>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/mesh/files/write_glb.h"
#include "core/mesh/files/write_obj.h"
#include "core/mesh/files/write_stl.h"

namespace roundwright {
namespace {

/// Two triangles over a square of 2 by 3 mm, one corner raised, and a third of no area.
Mesh folded_square() {
    Mesh mesh;
    mesh.positions = {0, 0, 0, 2, 0, 0, 2, 3, 0.5F, 0, 3, 0};
    mesh.normals = {0, 0, 1, 0, 0, 1, 0, 1, 0, -1, 0, 0};
    mesh.colours = {0, 1, 0.5F, 0.04F, 0.2F, 1, 1, 1, 1, 0, 0, 0};
    mesh.indices = {0, 1, 2, 0, 2, 3, 1, 1, 2};
    mesh.stitch_of_triangle = {0, 0, -1};
    return mesh;
}

std::uint32_t word_at(const std::string& bytes, std::size_t at) {
    std::uint32_t word = 0;
    for (std::size_t k = 4; k-- > 0;) word = word << 8U | static_cast<unsigned char>(bytes[at + k]);
    return word;
}

std::uint16_t half_word_at(const std::string& bytes, std::size_t at) {
    return static_cast<std::uint16_t>(static_cast<unsigned char>(bytes[at]) |
                                      static_cast<unsigned char>(bytes[at + 1]) << 8U);
}

float number_at(const std::string& bytes, std::size_t at) { return std::bit_cast<float>(word_at(bytes, at)); }

std::vector<float> numbers_at(const std::string& bytes, std::size_t at, std::size_t count) {
    std::vector<float> numbers;
    for (std::size_t k = 0; k < count; ++k) numbers.push_back(number_at(bytes, at + 4 * k));
    return numbers;
}

// The binary form as its users describe it: 80 bytes, a count, and 50 bytes a triangle: a normal, three
// corners, and two bytes that mean nothing and are 0.
TEST(WrittenBytes, StlIsAHeaderACountAndFiftyBytesATriangle) {
    const Mesh mesh = folded_square();
    const std::vector<NamedMesh> meshes{{"square", &mesh, Vec3(10, 20, 30)}, {"again", &mesh, Vec3::Zero()}};
    const std::string bytes = write_stl(meshes);
    ASSERT_EQ(bytes.size(), 84U + 6 * 50U);
    EXPECT_EQ(bytes.substr(0, 26), "binary, millimetres, z up ");
    EXPECT_EQ(bytes.substr(26, 54), std::string(54, ' '));
    EXPECT_EQ(word_at(bytes, 80), 6U);
    // (x, y, z) is written (x, -z, y), with its mesh's place.
    const float long_side = std::sqrt(0.25F * 4 + 36);
    const std::vector<float> first = numbers_at(bytes, 84, 12);
    const float expected[] = {
        0, -6 / std::sqrt(37.0F), -1 / std::sqrt(37.0F), 10, -30, 20, 12, -30, 20, 12, -30.5F, 23};
    for (std::size_t k = 0; k < 12; ++k) EXPECT_NEAR(first[k], expected[k], 1e-6F) << k << ' ' << long_side;
    for (std::size_t triangle = 0; triangle < 6; ++triangle)
        EXPECT_EQ(half_word_at(bytes, 84 + 50 * triangle + 48), 0) << triangle;
    EXPECT_EQ(numbers_at(bytes, 84 + 2 * 50, 3), (std::vector<float>{0, 0, 0}));  // no area, no normal
    EXPECT_EQ(numbers_at(bytes, 84 + 3 * 50 + 12, 3), (std::vector<float>{0, 0, 0}));
}

TEST(WrittenBytes, ObjCountsItsVerticesOnFromMeshToMesh) {
    Mesh mesh = folded_square();
    mesh.indices.resize(6);
    const std::vector<NamedMesh> meshes{
        {"left ear", &mesh, Vec3(1, 0, -2)}, {"", &mesh, Vec3::Zero()}, {"a#b\tc", &mesh, Vec3::Zero()}};
    const std::string text = write_obj(meshes);
    const std::string normals = "vn 0 0 1\nvn 0 0 1\nvn 0 1 0\nvn -1 0 0\n";
    const std::string first =
        "# Millimetres, y up\no left_ear\n"
        "v 1 0 -2 0 1 0.5\nv 3 0 -2 0.04 0.2 1\nv 3 3 -1.5 1 1 1\nv 1 3 -2 0 0 0\n" +
        normals + "f 1//1 2//2 3//3\nf 1//1 3//3 4//4\n";
    EXPECT_EQ(text.substr(0, first.size()), first);
    const std::string own_place =
        "v 0 0 0 0 1 0.5\nv 2 0 0 0.04 0.2 1\nv 2 3 0.5 1 1 1\nv 0 3 0 0 0 0\n" + normals;
    EXPECT_EQ(text.substr(first.size()), "o piece\n" + own_place + "f 5//5 6//6 7//7\nf 5//5 7//7 8//8\n" +
                                             "o a_b_c\n" + own_place +
                                             "f 9//9 10//10 11//11\nf 9//9 11//11 12//12\n");
}

struct Glb {
    nlohmann::json json;
    std::string binary;
};

/// The chunks of a binary glTF (glTF 2.0 Specification, 4.4), with what every reader checks.
Glb read_glb(const std::string& bytes) {
    EXPECT_EQ(bytes.substr(0, 4), "glTF");
    EXPECT_EQ(word_at(bytes, 4), 2U);
    EXPECT_EQ(word_at(bytes, 8), bytes.size());
    const std::size_t text = word_at(bytes, 12);
    EXPECT_EQ(text % 4, 0U);
    EXPECT_EQ(bytes.substr(16, 4), "JSON");
    Glb glb{nlohmann::json::parse(bytes.substr(20, text)), {}};
    if (20 + text == bytes.size()) return glb;
    const std::size_t binary = word_at(bytes, 20 + text);
    EXPECT_EQ(bytes.substr(24 + text, 4), std::string("BIN\0", 4));
    EXPECT_EQ(28 + text + binary, bytes.size());
    glb.binary = bytes.substr(28 + text);
    return glb;
}

const nlohmann::json& view_of(const Glb& glb, const nlohmann::json& accessor) {
    return glb.json["bufferViews"][accessor["bufferView"].get<std::size_t>()];
}

TEST(WrittenBytes, GlbHasTheBoundsAndNumbersOfItsMeshes) {
    const Mesh mesh = folded_square();
    const std::vector<NamedMesh> meshes{{"left fin", &mesh, Vec3(10, -20, 30)},
                                        {"plain", &mesh, Vec3::Zero()}};
    const Glb glb = read_glb(write_glb(meshes));
    EXPECT_EQ(glb.json["asset"]["version"], "2.0");
    EXPECT_EQ(glb.json["scene"], 0);
    EXPECT_EQ(glb.json["scenes"][0]["nodes"], (nlohmann::json{0, 1}));
    EXPECT_EQ(glb.json["materials"][0]["pbrMetallicRoughness"]["metallicFactor"], 0.0);
    EXPECT_EQ(glb.json["materials"][0]["pbrMetallicRoughness"]["roughnessFactor"], 1.0);
    EXPECT_EQ(glb.json["buffers"][0]["byteLength"], glb.binary.size());
    EXPECT_EQ(glb.json["nodes"][0]["name"], "left fin");
    EXPECT_NEAR(glb.json["nodes"][0]["translation"][1].get<double>(), -0.02, 1e-9);
    EXPECT_FALSE(glb.json["nodes"][1].contains("translation"));
    for (std::size_t number = 0; number < 2; ++number) {
        EXPECT_EQ(glb.json["nodes"][number]["mesh"], number);
        const auto& primitive = glb.json["meshes"][number]["primitives"][0];
        const auto& accessors = glb.json["accessors"];
        const auto& positions = accessors[primitive["attributes"]["POSITION"].get<std::size_t>()];
        EXPECT_EQ(positions["count"], 4);
        EXPECT_EQ(positions["type"], "VEC3");
        EXPECT_EQ(positions["componentType"], 5126);
        const double low[] = {0, 0, 0}, high[] = {0.002, 0.003, 0.0005};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            EXPECT_NEAR(positions["min"][axis].get<double>(), low[axis], 1e-9);
            EXPECT_NEAR(positions["max"][axis].get<double>(), high[axis], 1e-9);
        }
        const auto& view = view_of(glb, positions);
        EXPECT_EQ(view["buffer"], 0);
        EXPECT_EQ(view["byteStride"], 12);
        EXPECT_EQ(view["byteLength"], 48);
        EXPECT_EQ(view["target"], 34962);
        for (std::size_t k = 0; k < 12; ++k)
            EXPECT_NEAR(number_at(glb.binary, view["byteOffset"].get<std::size_t>() + 4 * k),
                        mesh.positions[k] * 0.001F, 1e-9F);
        const auto& normals = accessors[primitive["attributes"]["NORMAL"].get<std::size_t>()];
        EXPECT_EQ(numbers_at(glb.binary, view_of(glb, normals)["byteOffset"].get<std::size_t>(), 12),
                  mesh.normals);
        const auto& indices = accessors[primitive["indices"].get<std::size_t>()];
        EXPECT_EQ(indices["type"], "SCALAR");
        EXPECT_EQ(indices["componentType"], 5125);
        EXPECT_EQ(indices["count"], 9);
        EXPECT_EQ(view_of(glb, indices)["target"], 34963);
        EXPECT_FALSE(view_of(glb, indices).contains("byteStride"));
        for (std::size_t k = 0; k < 9; ++k)
            EXPECT_EQ(word_at(glb.binary, view_of(glb, indices)["byteOffset"].get<std::size_t>() + 4 * k),
                      mesh.indices[k]);
    }
}

// sRGB to linear by IEC 61966-2-1, in 65535ths: 0.5 is 0.21404, 0.2 is 0.033105, 0.04 is 0.04 / 12.92.
TEST(WrittenBytes, GlbColoursAreLinearInSixteenBits) {
    const Mesh mesh = folded_square();
    const std::vector<NamedMesh> meshes{{"square", &mesh, Vec3::Zero()}};
    const Glb glb = read_glb(write_glb(meshes));
    const auto& primitive = glb.json["meshes"][0]["primitives"][0];
    const auto& colours = glb.json["accessors"][primitive["attributes"]["COLOR_0"].get<std::size_t>()];
    EXPECT_EQ(colours["type"], "VEC4");
    EXPECT_EQ(colours["componentType"], 5123);
    EXPECT_EQ(colours["normalized"], true);
    EXPECT_EQ(colours["count"], 4);
    const auto& view = view_of(glb, colours);
    EXPECT_EQ(view["byteStride"], 8);
    EXPECT_EQ(view["byteLength"], 32);
    const int expected[] = {0,     65535, 14027, 65535, 203, 2170, 65535, 65535,
                            65535, 65535, 65535, 65535, 0,   0,    0,     65535};
    for (std::size_t k = 0; k < 16; ++k)
        EXPECT_NEAR(half_word_at(glb.binary, view["byteOffset"].get<std::size_t>() + 2 * k), expected[k], 1)
            << k;
}

TEST(WrittenBytes, GlbLeavesOutWhatHasNoTriangle) {
    const Mesh none;
    const Mesh mesh = folded_square();
    const std::vector<NamedMesh> only_none{{"nothing", &none, Vec3::Zero()}};
    const Glb empty = read_glb(write_glb(only_none));
    EXPECT_FALSE(empty.json["scenes"][0].contains("nodes"));
    EXPECT_FALSE(empty.json.contains("buffers"));
    EXPECT_TRUE(empty.binary.empty());
    const std::vector<NamedMesh> both{{"nothing", &none, Vec3::Zero()}, {"square", &mesh, Vec3::Zero()}};
    const Glb glb = read_glb(write_glb(both));
    EXPECT_EQ(glb.json["meshes"].size(), 1U);
    EXPECT_EQ(glb.json["nodes"][0]["name"], "square");
}

/// Names of every length, so that the text is padded by none to three blanks.
TEST(WrittenBytes, GlbTextIsPaddedToFourBytes) {
    const Mesh mesh = folded_square();
    for (const char* name : {"a", "ab", "abc", "abcd", "abcde"}) {
        const std::vector<NamedMesh> meshes{{name, &mesh, Vec3::Zero()}};
        EXPECT_EQ(read_glb(write_glb(meshes)).json["nodes"][0]["name"], name);
    }
}

}  // namespace
}  // namespace roundwright
