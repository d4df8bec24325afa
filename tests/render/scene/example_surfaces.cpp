#include "tests/render/scene/example_surfaces.h"

#include <cmath>
#include <cstdint>
#include <numbers>

#include "core/mesh/revolve.h"
#include "tests/core/mesh/example_pieces.h"

namespace roundwright::test {

StitchSurface ball_surface(int n, bool relief, std::size_t most_triangles) {
    const ExamplePiece ball = sphere_piece(n);
    RevolveOptions options;
    options.relief = relief ? Relief::shaded : Relief::none;
    options.most_triangles = most_triangles;
    return revolve(ball.toy, ball.piece(), ball.graph, ball.shape, {}, {}, options);
}

StitchSurface striped_ball_surface(int n, const std::vector<Colour>& colours, std::size_t most_triangles) {
    ExamplePiece ball = sphere_piece(n);
    ball.toy.yarns.resize(colours.size());
    for (std::size_t i = 0; i < colours.size(); ++i) ball.toy.yarns[i].colour = colours[i];
    for (std::size_t i = 0; i < ball.graph.rounds.size(); ++i) {
        const auto yarn = static_cast<std::uint16_t>(i / 2 % colours.size());
        for (auto& worked : ball.graph.rounds[i].stitches) worked.stitch.yarn = yarn;
    }
    RevolveOptions options;
    options.relief = Relief::shaded;
    options.most_triangles = most_triangles;
    return revolve(ball.toy, ball.piece(), ball.graph, ball.shape, {}, {}, options);
}

StitchSurface brushed_ball_surface(int n, Colour colour) {
    ExamplePiece ball = sphere_piece(n);
    ball.toy.yarns[0].colour = colour;
    ball.toy.yarns[0].brushed = true;
    RevolveOptions options;
    options.relief = Relief::shaded;
    return revolve(ball.toy, ball.piece(), ball.graph, ball.shape, {}, {}, options);
}

StitchSurface tube_surface(int stitches, int rounds) {
    const auto tube =
        example_piece(std::vector<int>(static_cast<std::size_t>(rounds), stitches), End::left_open, stitches);
    RevolveOptions options;
    options.relief = Relief::shaded;
    return revolve(tube.toy, tube.piece(), tube.graph, tube.shape, {}, {}, options);
}

Mesh sphere_mesh(const Vec3& centre, double radius_mm, int slices, Colour colour) {
    Mesh mesh;
    const int rows = slices / 2;
    for (int j = 0; j <= rows; ++j) {
        for (int k = 0; k < slices; ++k) {
            const double polar = std::numbers::pi * j / rows;
            const double around = 2 * std::numbers::pi * k / slices;
            const Vec3 normal(std::sin(polar) * std::sin(around), std::cos(polar),
                              std::sin(polar) * std::cos(around));
            const Vec3 place = centre + radius_mm * normal;
            for (int d = 0; d < 3; ++d) {
                mesh.positions.push_back(static_cast<float>(place[d]));
                mesh.normals.push_back(static_cast<float>(normal[d]));
            }
            for (const std::uint8_t c : {colour.red, colour.green, colour.blue}) {
                mesh.colours.push_back(static_cast<float>(c) / 255);
            }
        }
    }
    const auto at = [slices](int j, int k) { return static_cast<std::uint32_t>(j * slices + k % slices); };
    for (int j = 0; j < rows; ++j) {
        for (int k = 0; k < slices; ++k) {
            for (const std::uint32_t i :
                 {at(j, k), at(j + 1, k), at(j + 1, k + 1), at(j, k), at(j + 1, k + 1), at(j, k + 1)}) {
                mesh.indices.push_back(i);
            }
        }
    }
    mesh.stitch_of_triangle.assign(mesh.triangle_count(), -1);
    return mesh;
}

}  // namespace roundwright::test
