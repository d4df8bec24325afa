#include "render/raster/corner_vertices.h"

#include <cmath>
#include <limits>
#include <numeric>

namespace roundwright::render {

namespace {

constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();

CornerVertices on_no_face(const Mesh& mesh) {
    CornerVertices found;
    found.source.resize(mesh.vertex_count());
    std::iota(found.source.begin(), found.source.end(), 0U);
    found.colours = found.source;
    for (std::size_t i = 0; i < found.source.size(); ++i) found.places.insert(found.places.end(), {0, 0, -1});
    found.indices = mesh.indices;
    return found;
}

/// Vertices told apart by their places and colours; those of one vertex of the mesh are chained.
class Splitter {
  public:
    explicit Splitter(const Mesh& mesh) : mesh_(mesh), latest_(mesh.vertex_count(), none) {}

    CornerVertices split() {
        found_.indices.reserve(mesh_.indices.size());
        for (std::size_t t = 0; t < mesh_.triangle_count(); ++t) {
            const std::uint32_t coloured = colour_vertex(mesh_, t);
            const std::uint64_t side = std::uint64_t{mesh_.faces[t]} << 32U | colour(coloured) << 40U;
            for (std::size_t k = 3 * t; k < 3 * t + 3; ++k) {
                const std::uint64_t place = mesh_.places[2 * k] | std::uint64_t{mesh_.places[2 * k + 1]}
                                                                      << 16U;
                found_.indices.push_back(vertex(mesh_.indices[k], coloured, place | side));
            }
        }
        return std::move(found_);
    }

  private:
    [[nodiscard]] std::uint64_t colour(std::uint32_t vertex) const {
        std::uint64_t packed = 0;
        for (std::size_t k = 0; k < 3; ++k)
            packed =
                packed << 8U | static_cast<std::uint64_t>(std::lround(255 * mesh_.colours[3UL * vertex + k]));
        return packed;
    }

    std::uint32_t vertex(std::uint32_t source, std::uint32_t coloured, std::uint64_t place) {
        for (std::uint32_t at = latest_[source]; at != none; at = before_[at])
            if (place_[at] == place) return at;
        const auto added = static_cast<std::uint32_t>(found_.source.size());
        found_.source.push_back(source);
        found_.colours.push_back(coloured);
        place_.push_back(place);
        before_.push_back(latest_[source]);
        latest_[source] = added;
        constexpr auto unit = static_cast<float>(1 / Mesh::place_units);
        const auto part = [place](unsigned shift, unsigned mask) {
            return static_cast<float>(place >> shift & mask);
        };
        found_.places.insert(found_.places.end(),
                             {unit * part(0, 0xffffU), unit * part(16, 0xffffU), part(32, 0xffU)});
        return added;
    }

    const Mesh& mesh_;
    std::vector<std::uint32_t> latest_, before_;
    std::vector<std::uint64_t> place_;
    CornerVertices found_;
};

}  // namespace

CornerVertices corner_vertices(const Mesh& mesh) {
    return mesh.places.empty() ? on_no_face(mesh) : Splitter(mesh).split();
}

}  // namespace roundwright::render
