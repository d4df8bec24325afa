#include "core/mesh/files/write_obj.h"

#include <array>
#include <charconv>
#include <cstdint>
#include <utility>

namespace roundwright {
namespace {

/// The shortest decimal that reads back to the same float.
void append(std::string& text, float value) {
    std::array<char, 32> digits;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
    text.append(digits.data(), end);
}

void append(std::string& text, std::uint64_t value) {
    std::array<char, 24> digits;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
    text.append(digits.data(), end);
}

/// A name ends at the line, and some readers end it at a blank.
std::string object_name(const std::string& name) {
    std::string found = name.empty() ? "piece" : name;
    for (auto& letter : found)
        if (static_cast<unsigned char>(letter) <= ' ' || letter == '#') letter = '_';
    return found;
}

void append_three(std::string& text, const std::vector<float>& values, std::size_t at, const Vec3& add) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
        text += ' ';
        append(text, values[at + axis] + static_cast<float>(add[static_cast<Eigen::Index>(axis)]));
    }
}

void append_faces(std::string& text, const Mesh& mesh, std::uint64_t first_vertex) {
    for (std::size_t t = 0; t + 2 < mesh.indices.size(); t += 3) {
        text += 'f';
        for (std::size_t k = 0; k < 3; ++k) {
            const std::uint64_t vertex = first_vertex + mesh.indices[t + k];
            text += ' ';
            append(text, vertex);
            text += "//";
            append(text, vertex);
        }
        text += '\n';
    }
}

class ObjWriter : public MeshWriter {
  public:
    void expect(std::size_t triangles) override { text_.reserve(bytes_a_triangle * triangles); }

    void add(const NamedMesh& named) override {
        const Mesh& mesh = *named.mesh;
        text_ += "o " + object_name(named.name) + '\n';
        for (std::size_t v = 0; v < mesh.positions.size(); v += 3) {
            text_ += 'v';
            append_three(text_, mesh.positions, v, named.place);
            append_three(text_, mesh.colours, v, Vec3::Zero());
            text_ += '\n';
        }
        for (std::size_t v = 0; v < mesh.normals.size(); v += 3) {
            text_ += "vn";
            append_three(text_, mesh.normals, v, Vec3::Zero());
            text_ += '\n';
        }
        append_faces(text_, mesh, first_vertex_);
        first_vertex_ += mesh.vertex_count();
    }

    std::string finish() override { return std::move(text_); }

  private:
    static constexpr std::size_t bytes_a_triangle = 110;

    std::string text_ = "# Millimetres, y up\n";
    std::uint64_t first_vertex_ = 1;
};

}  // namespace

std::unique_ptr<MeshWriter> obj_writer() { return std::make_unique<ObjWriter>(); }

std::string write_obj(std::span<const NamedMesh> meshes) {
    ObjWriter writer;
    for (const auto& named : meshes) writer.add(named);
    return writer.finish();
}

}  // namespace roundwright
