#include "core/mesh/files/write_stl.h"

#include <Eigen/Geometry>
#include <array>
#include <cstdint>
#include <utility>

#include "core/mesh/files/little_endian.h"

namespace roundwright {
namespace {

constexpr std::size_t header_bytes = 80;
constexpr std::size_t count_bytes = 4;
constexpr std::size_t bytes_a_triangle = 50;

Vec3 corner(const NamedMesh& named, std::uint32_t index) {
    const float* p = &named.mesh->positions[3u * index];
    return Vec3(p[0], p[1], p[2]) + named.place;
}

void append_z_up(std::string& bytes, const Vec3& point) {
    for (const double x : {point.x(), -point.z(), point.y()})
        append_little_endian(bytes, static_cast<float>(x));
}

void append_triangle(std::string& bytes, const std::array<Vec3, 3>& corners) {
    const Vec3 across = (corners[1] - corners[0]).cross(corners[2] - corners[0]);
    append_z_up(bytes, across.norm() > 0 ? Vec3(across.normalized()) : Vec3(Vec3::Zero()));
    for (const auto& point : corners) append_z_up(bytes, point);
    append_little_endian(bytes, std::uint16_t{0});
}

class StlWriter : public MeshWriter {
  public:
    // The header must not begin with "solid", by which readers know the text form.
    StlWriter() : bytes_("binary, millimetres, z up") { bytes_.resize(header_bytes + count_bytes, ' '); }

    void expect(std::size_t triangles) override {
        bytes_.reserve(header_bytes + count_bytes + bytes_a_triangle * triangles);
    }

    void add(const NamedMesh& named) override {
        const auto& indices = named.mesh->indices;
        for (std::size_t t = 0; t + 2 < indices.size(); t += 3)
            append_triangle(bytes_, {corner(named, indices[t]), corner(named, indices[t + 1]),
                                     corner(named, indices[t + 2])});
        triangles_ += static_cast<std::uint32_t>(named.mesh->triangle_count());
    }

    std::string finish() override {
        std::string count;
        append_little_endian(count, triangles_);
        bytes_.replace(header_bytes, count_bytes, count);
        return std::move(bytes_);
    }

  private:
    std::string bytes_;
    std::uint32_t triangles_ = 0;
};

}  // namespace

std::unique_ptr<MeshWriter> stl_writer() { return std::make_unique<StlWriter>(); }

std::string write_stl(std::span<const NamedMesh> meshes) {
    StlWriter writer;
    for (const auto& named : meshes) writer.add(named);
    return writer.finish();
}

}  // namespace roundwright
