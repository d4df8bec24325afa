#include "core/mesh/files/write_glb.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <nlohmann/json.hpp>

#include "core/mesh/files/little_endian.h"

namespace roundwright {
namespace {

using Json = nlohmann::json;

// glTF 2.0 Specification, 3.6.2 (accessors), 3.6.1 (buffer views) and 4.4 (binary form).
constexpr int of_unsigned_short = 5123, of_unsigned_int = 5125, of_float = 5126;
constexpr int array_buffer = 34962, element_array_buffer = 34963;
constexpr std::uint32_t magic = 0x46546C67, version = 2, json_chunk = 0x4E4F534A, binary_chunk = 0x004E4942;
constexpr float metres_per_mm = 0.001F;

/// IEC 61966-2-1, clause 5.2: a vertex colour of glTF is linear.
float linear(float srgb) {
    return srgb <= 0.04045F ? srgb / 12.92F : std::pow((srgb + 0.055F) / 1.055F, 2.4F);
}

std::uint16_t normalised(float share) {
    return static_cast<std::uint16_t>(std::lround(std::clamp(share, 0.0F, 1.0F) * 65535));
}

class GlbWriter : public MeshWriter {
  public:
    GlbWriter() {
        json_ = {
            {"asset", {{"version", "2.0"}, {"generator", "Roundwright"}}},
            {"scene", 0},
            {"scenes", Json::array({{{"nodes", Json::array()}}})},
            {"materials",
             Json::array({{{"name", "yarn"},
                           {"pbrMetallicRoughness", {{"metallicFactor", 0.0}, {"roughnessFactor", 1.0}}}}})}};
    }

    void expect(std::size_t triangles) override { binary_.reserve(bytes_a_triangle * triangles); }

    std::string finish() override {
        if (json_["scenes"][0]["nodes"].empty()) json_["scenes"][0].erase("nodes");
        if (!binary_.empty()) json_["buffers"] = Json::array({{{"byteLength", binary_.size()}}});
        return packed();
    }

    void add(const NamedMesh& named) override {
        const Mesh& mesh = *named.mesh;
        if (mesh.triangle_count() == 0) return;
        const std::size_t positions = add_positions(mesh);
        const std::size_t normals = add_floats(mesh.normals, 1);
        const std::size_t colours = add_colours(mesh);
        const std::size_t indices = add_indices(mesh);
        const Json primitive = {
            {"attributes", {{"POSITION", positions}, {"NORMAL", normals}, {"COLOR_0", colours}}},
            {"indices", indices},
            {"material", 0}};
        const std::size_t number = json_["meshes"].size();
        json_["meshes"].push_back({{"name", named.name}, {"primitives", Json::array({primitive})}});
        Json node = {{"name", named.name}, {"mesh", number}};
        if (named.place != Vec3::Zero()) {
            const Vec3 place = named.place * static_cast<double>(metres_per_mm);
            node["translation"] = {place.x(), place.y(), place.z()};
        }
        json_["nodes"].push_back(node);
        json_["scenes"][0]["nodes"].push_back(number);
    }

  private:
    static constexpr std::size_t bytes_a_triangle = 30;

    std::size_t add_view(std::size_t from, int target, int stride) {
        Json view = {
            {"buffer", 0}, {"byteOffset", from}, {"byteLength", binary_.size() - from}, {"target", target}};
        if (stride > 0) view["byteStride"] = stride;
        json_["bufferViews"].push_back(view);
        return json_["bufferViews"].size() - 1;
    }

    std::size_t add_accessor(std::size_t view, int component, std::size_t count, const char* type) {
        json_["accessors"].push_back(
            {{"bufferView", view}, {"componentType", component}, {"count", count}, {"type", type}});
        return json_["accessors"].size() - 1;
    }

    std::size_t add_floats(const std::vector<float>& values, float scale) {
        const std::size_t from = binary_.size();
        for (const float value : values) append_little_endian(binary_, value * scale);
        return add_accessor(add_view(from, array_buffer, 12), of_float, values.size() / 3, "VEC3");
    }

    std::size_t add_positions(const Mesh& mesh) {
        const std::size_t accessor = add_floats(mesh.positions, metres_per_mm);
        std::array<float, 3> low, high;
        low.fill(std::numeric_limits<float>::max());
        high.fill(std::numeric_limits<float>::lowest());
        for (std::size_t k = 0; k < mesh.positions.size(); ++k) {
            low[k % 3] = std::min(low[k % 3], mesh.positions[k] * metres_per_mm);
            high[k % 3] = std::max(high[k % 3], mesh.positions[k] * metres_per_mm);
        }
        json_["accessors"][accessor]["min"] = low;
        json_["accessors"][accessor]["max"] = high;
        return accessor;
    }

    std::size_t add_colours(const Mesh& mesh) {
        const std::size_t from = binary_.size();
        for (std::size_t k = 0; k < mesh.colours.size(); ++k) {
            append_little_endian(binary_, normalised(linear(mesh.colours[k])));
            if (k % 3 == 2) append_little_endian(binary_, std::uint16_t{65535});
        }
        const std::size_t accessor =
            add_accessor(add_view(from, array_buffer, 8), of_unsigned_short, mesh.vertex_count(), "VEC4");
        json_["accessors"][accessor]["normalized"] = true;
        return accessor;
    }

    std::size_t add_indices(const Mesh& mesh) {
        const std::size_t from = binary_.size();
        for (const auto index : mesh.indices) append_little_endian(binary_, index);
        return add_accessor(add_view(from, element_array_buffer, 0), of_unsigned_int, mesh.indices.size(),
                            "SCALAR");
    }

    std::string packed() const {
        // Chunks are padded to four bytes: text with blanks, binary with zeros (all of ours are already).
        std::string text = json_.dump(-1, ' ', false, Json::error_handler_t::replace);
        text.resize((text.size() + 3) / 4 * 4, ' ');
        std::string bytes;
        const std::size_t chunks = 8 + text.size() + (binary_.empty() ? 0 : 8 + binary_.size());
        bytes.reserve(12 + chunks);
        for (const auto word : {magic, version, static_cast<std::uint32_t>(12 + chunks)})
            append_little_endian(bytes, word);
        append_chunk(bytes, json_chunk, text);
        if (!binary_.empty()) append_chunk(bytes, binary_chunk, binary_);
        return bytes;
    }

    static void append_chunk(std::string& bytes, std::uint32_t kind, const std::string& content) {
        append_little_endian(bytes, static_cast<std::uint32_t>(content.size()));
        append_little_endian(bytes, kind);
        bytes += content;
    }

    Json json_;
    std::string binary_;
};

}  // namespace

std::unique_ptr<MeshWriter> glb_writer() { return std::make_unique<GlbWriter>(); }

std::string write_glb(std::span<const NamedMesh> meshes) {
    GlbWriter writer;
    for (const auto& named : meshes) writer.add(named);
    return writer.finish();
}

}  // namespace roundwright
