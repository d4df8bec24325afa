#include "core/mesh/fabric_surface.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/mesh/revolve.h"
#include "core/shape/fabric_thickness.h"
#include "tests/core/mesh/bent_tube.h"
#include "tests/core/mesh/corner_grid.h"
#include "tests/core/mesh/example_pieces.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/support/random_cases.h"

// What lies on a fabric knows its geometry by one interface: shown with geometries that are no surface of
// revolution.
namespace roundwright::test {
namespace {

Vec3 vertex(const Mesh& mesh, std::uint32_t v) {
    return {static_cast<double>(mesh.positions[3 * v]), static_cast<double>(mesh.positions[3 * v + 1]),
            static_cast<double>(mesh.positions[3 * v + 2])};
}

Vec3 centroid(const Mesh& mesh, std::size_t triangle) {
    Vec3 sum = Vec3::Zero();
    for (std::size_t k = 0; k < 3; ++k) sum += vertex(mesh, mesh.indices[3 * triangle + k]);
    return sum / 3;
}

void expect_sound(const Mesh& mesh, long euler_characteristic) {
    const MeshMeasures found = measure(mesh);
    EXPECT_TRUE(found.finite);
    EXPECT_TRUE(found.unit_normals);
    EXPECT_EQ(found.odd_edges, 0U);
    EXPECT_EQ(found.euler_characteristic, euler_characteristic);
    EXPECT_GT(found.volume_mm3, 0) << "it faces outwards";
}

struct Tube {
    BentTube::Size size;
    Toy toy;
    StitchGraph graph;
    std::vector<LaidRound> rounds;

    explicit Tube(const BentTube::Size& of) : size(of) {
        const std::vector<int> counts(size.rounds, static_cast<int>(size.stitches));
        graph = even_graph(counts, static_cast<int>(size.stitches));
        toy.yarns.emplace_back();
        rounds = lay_stitches(graph);
    }
    [[nodiscard]] BentTube geometry() const { return BentTube(size); }
    [[nodiscard]] StitchSurface surface(Relief relief, std::size_t most_triangles = 200'000) const {
        return fabric_surface(toy, graph, rounds, geometry(), {5, relief, most_triangles});
    }
};

TEST(FabricSurface, ABentTubeIsWatertightWithItsVolume) {
    const Tube tube({});
    const double volume = tube.geometry().volume_mm3();
    for (const Relief relief : {Relief::none, Relief::solid, Relief::shaded}) {
        const StitchSurface surface = tube.surface(relief);
        expect_sound(surface.mesh, 2);
        EXPECT_NEAR(measure(surface.mesh).volume_mm3 / volume, 1, relief == Relief::none ? 0.002 : 0.02);
        ASSERT_TRUE(surface.first_pole && surface.last_pole);
        EXPECT_NEAR(surface.first_pole->norm(), 0, 1e-9);
    }
}

TEST(FabricSurface, AnOpenBentTubeHasAnInsideAndRims) {
    BentTube::Size size;
    size.closed = false;
    const Tube tube(size);
    const Mesh mesh = tube.surface(Relief::none).mesh;
    expect_sound(mesh, 0);
    const double thickness = fabric_thickness_in_stitches * 5;
    const double inner = 1 - thickness / 2 / size.tube_radius_mm;
    EXPECT_NEAR(measure(mesh).volume_mm3, tube.geometry().fabric_mm2() * thickness * inner,
                0.01 * tube.geometry().fabric_mm2() * thickness);
}

TEST(FabricSurface, EveryTriangleOfABentTubeBelongsToTheStitchItLiesOn) {
    const Tube tube({});
    const BentTube geometry = tube.geometry();
    for (const Relief relief : {Relief::none, Relief::solid}) {
        const StitchSurface surface = tube.surface(relief);
        std::size_t wrong = 0, fans = 0;
        for (std::size_t t = 0; t < surface.mesh.triangle_count(); ++t) {
            const Vec2 at = geometry.round_and_stitch(centroid(surface.mesh, t));
            const auto& patch =
                surface.stitches[static_cast<std::size_t>(surface.mesh.stitch_of_triangle[t])];
            const bool on_fan = at.x() < 1e-3 || at.x() > static_cast<double>(tube.size.rounds) - 1e-3;
            fans += on_fan;
            wrong += patch.stitch != static_cast<int>(at.y()) ||
                     (!on_fan && patch.round != static_cast<int>(at.x()));
        }
        EXPECT_EQ(wrong, 0U);
        EXPECT_GT(fans, 0U);
        EXPECT_LT(fans, surface.mesh.triangle_count() / 4);
    }
}

TEST(FabricSurface, NormalsOfAShadedBentTubeAreThoseOfItsMeanSurface) {
    const Tube tube({});
    const Mesh mesh = tube.surface(Relief::shaded).mesh;
    // The poles' are those of the flat ends.
    for (std::uint32_t v = 0; v + 2 < mesh.vertex_count(); ++v) {
        const Vec3 normal(static_cast<double>(mesh.normals[3 * v]),
                          static_cast<double>(mesh.normals[3 * v + 1]),
                          static_cast<double>(mesh.normals[3 * v + 2]));
        ASSERT_GT(normal.dot(tube.geometry().outward(vertex(mesh, v))), 0.9999) << v;
    }
}

TEST(FabricSurface, PatchesOfABentTubeLieOnItAndFaceOutwards) {
    const Tube tube({});
    const StitchSurface surface = tube.surface(Relief::none);
    ASSERT_EQ(surface.stitches.size(), 180U);
    for (const StitchPatch& patch : surface.stitches) {
        Vec3 middle = Vec3::Zero();
        for (const Vec3& corner : patch.corners) middle += corner / 4;
        const Vec2 at = tube.geometry().round_and_stitch(middle);
        EXPECT_NEAR(at.x(), patch.round + 0.5, 0.05);
        EXPECT_NEAR(at.y(), patch.stitch + 0.5, 0.05);
        EXPECT_GT(patch.normal.dot(tube.geometry().outward(middle)), 0.99);
    }
}

TEST(FabricSurface, ABentTubeOfMoreStitchesThanTrianglesGetsLargerCells) {
    BentTube::Size size;
    size.rounds = 60;
    size.stitches = 90;
    const Tube tube(size);
    const BentTube geometry = tube.geometry();
    const StitchSurface surface = tube.surface(Relief::shaded, 2'000);
    expect_sound(surface.mesh, 2);
    EXPECT_LE(surface.mesh.triangle_count(), 2'000U);
    EXPECT_GT(surface.mesh.triangle_count(), 1'000U);
    EXPECT_NEAR(measure(surface.mesh).volume_mm3 / geometry.volume_mm3(), 1, 0.01);
    for (std::size_t t = 0; t < surface.mesh.triangle_count(); ++t) {
        const Vec2 at = geometry.round_and_stitch(centroid(surface.mesh, t));
        const auto& patch = surface.stitches[static_cast<std::size_t>(surface.mesh.stitch_of_triangle[t])];
        EXPECT_LT(std::abs(patch.round + 0.5 - at.x()), 4);
        EXPECT_LT(std::abs(std::remainder(patch.stitch + 0.5 - at.y(), 90)), 4);
    }
}

// Of a ball, its corners tell where it lies but for the roundness between them.
TEST(FabricSurface, TheCornersOfARevolvedPieceGiveItsMeshBack) {
    for (const Relief relief : {Relief::none, Relief::solid, Relief::shaded}) {
        const ExamplePiece ball = sphere_piece(6);
        RevolveOptions options;
        options.relief = relief;
        const StitchSurface revolved =
            revolve(ball.toy, ball.piece(), ball.graph, ball.shape, {}, {}, options);
        const StitchSurface again = fabric_surface(ball.toy, ball.graph, lay_fabric(ball.piece(), ball.graph),
                                                   CornerGrid::of(revolved), options);
        EXPECT_EQ(again.mesh.indices, revolved.mesh.indices);
        EXPECT_EQ(again.mesh.stitch_of_triangle, revolved.mesh.stitch_of_triangle);
        EXPECT_EQ(again.mesh.places, revolved.mesh.places);
        EXPECT_EQ(again.mesh.faces, revolved.mesh.faces);
        EXPECT_EQ(again.mesh.colours, revolved.mesh.colours);
        expect_sound(again.mesh, 2);
        double furthest = 0;
        for (std::uint32_t v = 0; v < again.mesh.vertex_count(); ++v)
            furthest = std::max(furthest, (vertex(again.mesh, v) - vertex(revolved.mesh, v)).norm());
        EXPECT_LT(furthest, 1.5);
        // The lower ones may stand in the middle of a loop, where the chord is not the arc.
        for (std::size_t s = 0; s < again.stitches.size(); ++s)
            for (const std::size_t upper : {2U, 3U})
                EXPECT_LT((again.stitches[s].corners[upper] - revolved.stitches[s].corners[upper]).norm(),
                          1e-9);
    }
}

/// Corners of a random piece, its loops no circles, its axis no line, every corner off its place.
CornerGrid crooked(const StitchSurface& surface, std::mt19937& random) {
    std::uniform_real_distribution<double> shift(-0.4, 0.4), part(0.7, 1.3), angle(0, 6.28);
    const double wide = part(random), phase = angle(random), sway = angle(random);
    const auto bent = [&](const Vec3& at) {
        const double round = 1 + 0.1 * std::cos(3 * std::atan2(at.x(), at.z()) + phase);
        return Vec3(wide * round * at.x() + 4 * std::sin(at.y() / 20 + sway), at.y() + at.x() / 5,
                    round * at.z() + 3 * std::cos(at.y() / 25));
    };
    CornerGrid::Edges edges(surface.first_stitch_of_round.size());
    const auto& first = surface.first_stitch_of_round;
    for (std::size_t i = 0; i + 1 < first.size(); ++i)
        for (std::size_t s = first[i]; s < first[i + 1]; ++s)
            edges[i + 1].push_back(bent(surface.stitches[s].corners[2]) +
                                   Vec3(shift(random), shift(random), shift(random)));
    edges[0] = {bent(surface.stitches[0].corners[1])};
    std::optional<Vec3> pole;
    if (surface.last_pole) pole = bent(*surface.last_pole);
    return {edges, std::nullopt, pole};
}

TEST(FabricSurface, AnyGridOfCornersIsWatertightAndFacesOutwards) {
    std::mt19937 random(31);
    for (int k = 0; k < testing::random_cases(300); ++k) {
        const End end = k % 2 == 0 ? End::drawn_closed : End::left_open;
        const ExamplePiece example = example_piece(random_counts(random, 14), end);
        RevolveOptions options;
        options.relief = static_cast<Relief>(k % 3);
        options.most_triangles = k % 5 == 0 ? 900 : 40'000;
        const StitchSurface plain =
            revolve(example.toy, example.piece(), example.graph, example.shape, {}, {}, options);
        const auto grid = crooked(plain, random);
        const auto rounds = lay_fabric(example.piece(), example.graph);
        const StitchSurface surface = fabric_surface(example.toy, example.graph, rounds, grid, options);
        SCOPED_TRACE(k);
        expect_sound(surface.mesh, 2);
        for (const StitchPatch& patch : surface.stitches) {
            ASSERT_NEAR(patch.normal.norm(), 1, 1e-9);
            const auto round = static_cast<std::size_t>(patch.round);
            const Vec3 expected = grid.on_edge(round + 1, patch.stitch, 0, 0).place;
            ASSERT_LT((patch.corners[2] - expected).norm(), 1e-9);
        }
    }
}

}  // namespace
}  // namespace roundwright::test
