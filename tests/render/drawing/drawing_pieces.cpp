#include "tests/render/drawing/drawing_pieces.h"

#include <cmath>
#include <cstdint>
#include <numbers>

#include "core/mesh/revolve.h"
#include "core/mesh/vertex_normals.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::test {

DrawingPiece drawing_piece(const std::vector<int>& counts, Start start, End end, double area_stretch,
                           const std::vector<std::size_t>& yarns) {
    DrawingPiece made;
    for (const Colour colour : {Colour{143, 168, 190}, Colour{196, 92, 70}, Colour{232, 222, 204}})
        made.toy.yarns.emplace_back().colour = colour;
    Piece piece;
    piece.start = start;
    piece.end = end;
    piece.area_stretch = area_stretch;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        auto& round = piece.rounds.emplace_back();
        round.working = WorkedEvenly{counts[i]};
        round.yarn = i < yarns.size() ? yarns[i] : 0;
    }
    made.graph = piece_graph(piece).graph;
    made.shape = solve_shape(shape_problem(piece, made.graph, {5, 5, 0, 0}));
    RevolveOptions options;
    options.most_triangles = 40'000;
    made.surface = revolve(made.toy, piece, made.graph, made.shape, {}, {}, options);
    made.toy.pieces.push_back(std::move(piece));
    return made;
}

DrawingPiece drawing_ball() {
    return drawing_piece({6, 12, 18, 24, 24, 24, 24, 18, 12, 6}, MagicRing{}, End::drawn_closed, 0.04);
}

DrawingPiece drawing_bowl() {
    return drawing_piece({6, 12, 18, 24, 24, 24}, MagicRing{}, End::left_open, 0, {2, 2, 2, 2, 2, 2});
}

Mesh ball_mesh(const Vec3& centre, double radius_mm, Colour colour) {
    constexpr std::uint32_t around = 24, up = 12;
    Mesh mesh;
    for (std::uint32_t j = 0; j <= up; ++j) {
        for (std::uint32_t i = 0; i < around; ++i) {
            const double a = 2 * std::numbers::pi * i / around, b = std::numbers::pi * (1.0 * j / up - 0.5);
            const Vec3 out(std::cos(b) * std::sin(a), std::sin(b), std::cos(b) * std::cos(a));
            const Vec3 place = centre + radius_mm * out;
            for (const double x : {place.x(), place.y(), place.z()})
                mesh.positions.push_back(static_cast<float>(x));
            for (const auto c : {colour.red, colour.green, colour.blue})
                mesh.colours.push_back(static_cast<float>(c) / 255);
        }
    }
    for (std::uint32_t j = 0; j < up; ++j)
        for (std::uint32_t i = 0; i < around; ++i) {
            const std::uint32_t a = j * around + i, b = j * around + (i + 1) % around;
            for (const auto k : {a, b, a + around, b, b + around, a + around}) mesh.indices.push_back(k);
        }
    mesh.stitch_of_triangle.assign(mesh.triangle_count(), -1);
    set_vertex_normals(mesh);
    return mesh;
}

}  // namespace roundwright::test
