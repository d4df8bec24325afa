#include "tests/core/recorded/mesh_summary.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "tests/core/mesh/mesh_measures.h"

namespace roundwright::test {
namespace {

/// Weights that tell vertices apart, so that two that change places show.
double weight(std::size_t i) { return 1 + 0.5 * std::sin(0.7 * static_cast<double>(i % 1009)); }

void tell_box(testing::RecordedText& text, const std::vector<float>& positions) {
    text.line("box");
    for (std::size_t axis = 0; axis < 3; ++axis) {
        float low = std::numeric_limits<float>::max(), high = -low;
        for (std::size_t i = axis; i < positions.size(); i += 3) {
            low = std::min(low, positions[i]);
            high = std::max(high, positions[i]);
        }
        text << static_cast<double>(low) << static_cast<double>(high);
    }
}

/// Weighted means of three numbers a vertex, of their squares, and of their products with the positions.
void tell_means(testing::RecordedText& text, const char* name, const std::vector<float>& values,
                const std::vector<float>& positions) {
    std::array<double, 9> sum{};
    const std::size_t vertices = values.size() / 3;
    for (std::size_t v = 0; v < vertices; ++v)
        for (std::size_t k = 0; k < 3; ++k) {
            const double value = weight(v) * static_cast<double>(values[3 * v + k]);
            sum[k] += value;
            sum[3 + k] += value * static_cast<double>(values[3 * v + k]);
            sum[6 + k] += value * static_cast<double>(positions[3 * v + (k + 1) % 3]);
        }
    text.line(name);
    for (const double total : sum) text << total / static_cast<double>(std::max<std::size_t>(vertices, 1));
}

/// A number that any change of order or value changes.
template <class Number>
std::size_t checksum(const std::vector<Number>& values) {
    std::uint64_t sum = 1469598103934665603ULL;
    for (const Number value : values) sum = (sum ^ static_cast<std::uint64_t>(value)) * 1099511628211ULL;
    return static_cast<std::size_t>(sum >> 40U);
}

}  // namespace

void tell_mesh(testing::RecordedText& text, const Mesh& mesh) {
    const MeshMeasures measures = measure(mesh);
    text.line("mesh") << mesh.vertex_count() << mesh.triangle_count() << measures.area_mm2
                      << measures.volume_mm3 << measures.euler_characteristic << measures.odd_edges;
    if (mesh.positions.empty()) return;
    tell_box(text, mesh.positions);
    tell_means(text, "places", mesh.positions, mesh.positions);
    tell_means(text, "normals", mesh.normals, mesh.positions);
    tell_means(text, "colours", mesh.colours, mesh.positions);
    double on_face = 0;
    for (std::size_t i = 0; i < mesh.places.size(); ++i) on_face += weight(i) * mesh.places[i];
    text.line("numbering") << checksum(mesh.indices) << checksum(mesh.stitch_of_triangle)
                           << checksum(mesh.faces) << mesh.places.size() << on_face;
}

}  // namespace roundwright::test
