#include "core/mesh/revolve.h"

#include <Eigen/Geometry>
#include <cmath>
#include <cstdint>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "core/mesh/stitch_cords.h"
#include "tests/core/mesh/example_pieces.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

StitchSurface surface_of(const test::ExamplePiece& example, const RevolveOptions& options = {}) {
    return revolve(example.toy, example.piece(), example.graph, example.shape, {}, {}, options);
}

void expect_sound(const Mesh& mesh, long euler_characteristic) {
    const auto found = test::measure(mesh);
    EXPECT_TRUE(found.finite);
    EXPECT_TRUE(found.unit_normals);
    EXPECT_EQ(found.odd_edges, 0U);
    EXPECT_EQ(found.euler_characteristic, euler_characteristic);
    // Gauss-Bonnet: total curvature is 2 pi times the Euler characteristic (do Carmo, 4-5).
    EXPECT_NEAR(found.total_curvature, 2 * std::numbers::pi * static_cast<double>(euler_characteristic),
                1e-6);
    EXPECT_GT(found.volume_mm3, 0);
}

TEST(Revolve, AClosedBallIsWatertightWithTheSolvedVolume) {
    for (const int n : {2, 4, 6, 10}) {
        const auto example = test::sphere_piece(n);
        const auto surface = surface_of(example);
        expect_sound(surface.mesh, 2);
        EXPECT_NEAR(test::measure(surface.mesh).volume_mm3 / example.shape.volume_mm3, 1, 0.01) << n;
    }
}

TEST(Revolve, KeepsTheSolvedVolumeAtEveryLevelOfDetail) {
    const auto example = test::sphere_piece(5);
    for (const std::size_t most : {1'000U, 3'000U, 10'000U, 30'000U, 200'000U}) {
        RevolveOptions options;
        options.most_triangles = most;
        const auto surface = surface_of(example, options);
        expect_sound(surface.mesh, 2);
        EXPECT_LE(surface.mesh.triangle_count(), most);
        EXPECT_NEAR(test::measure(surface.mesh).volume_mm3 / example.shape.volume_mm3, 1, 0.01) << most;
    }
}

// 300 rounds of 400 stitches have 240,000 cells inside and outside: one face each would be too many.
TEST(Revolve, NoPieceHasMoreTrianglesThanAPictureMay) {
    std::vector<int> counts;
    for (int i = 0; i < 300; ++i) counts.push_back(std::min(6 + 6 * i, 400));
    for (const End end : {End::left_open, End::drawn_closed}) {
        const auto example = test::example_piece(counts, end);
        for (const Relief relief : {Relief::none, Relief::solid, Relief::shaded}) {
            RevolveOptions options;
            options.relief = relief;
            const auto surface = surface_of(example, options);
            EXPECT_LE(surface.mesh.triangle_count(), most_picture_triangles);
            EXPECT_GT(surface.mesh.triangle_count(), most_picture_triangles / 3);
            expect_sound(surface.mesh, 2);
        }
    }
}

TEST(Revolve, ShadedReliefHasTheNormalsAndColoursOfTheMeanSurface) {
    auto example = test::sphere_piece(6);
    example.toy.yarns[0].colour = {255, 255, 255};
    RevolveOptions options;
    options.relief = Relief::shaded;
    const Mesh mesh = surface_of(example, options).mesh;
    const double radius = example.shape.width_mm / 2;
    for (std::size_t k = 0; k < mesh.positions.size(); k += 3) {
        const Vec3 place(mesh.positions[k], mesh.positions[k + 1] - radius, mesh.positions[k + 2]);
        const Vec3 normal(mesh.normals[k], mesh.normals[k + 1], mesh.normals[k + 2]);
        EXPECT_GT(normal.dot(place.normalized()), 0.97);
        EXPECT_EQ(mesh.colours[k], 1);
    }
}

TEST(Revolve, EveryTriangleLiesOnTheFaceOfItsStitch) {
    auto example = test::example_piece({6, 12, 18, 18}, End::left_open);
    for (auto& stitch : example.graph.rounds[3].stitches) stitch.stitch.kind = StitchKind::double_crochet;
    const auto surface = surface_of(example);
    const Mesh& mesh = surface.mesh;
    ASSERT_EQ(mesh.places.size(), 6 * mesh.triangle_count());
    ASSERT_EQ(mesh.faces.size(), mesh.triangle_count());
    std::size_t inside = 0, tall = 0;
    for (std::size_t t = 0; t < mesh.triangle_count(); ++t) {
        const auto face = static_cast<StitchFace>(mesh.faces[t]);
        inside += face == StitchFace::inside;
        tall += face == StitchFace::double_crochet;
        EXPECT_EQ(face == StitchFace::double_crochet,
                  face != StitchFace::inside &&
                      surface.stitches[static_cast<std::size_t>(mesh.stitch_of_triangle[t])].round == 3);
        for (std::size_t k = 0; k < 6; ++k) EXPECT_LE(mesh.places[6 * t + k], Mesh::place_units);
    }
    EXPECT_GT(inside, 0U);
    EXPECT_GT(tall, 0U);
}

TEST(Revolve, OpenPiecesGetAnInside) {
    expect_sound(surface_of(test::example_piece({6, 12, 18, 24, 24, 24}, End::left_open)).mesh, 2);
    expect_sound(surface_of(test::example_piece({12, 12, 12, 12}, End::left_open, 12)).mesh, 0);
    expect_sound(surface_of(test::example_piece({18, 12, 6}, End::drawn_closed, 18)).mesh, 2);
}

TEST(Revolve, RandomPiecesAreSound) {
    std::mt19937 random(20240607);
    for (int k = 0; k < testing::random_cases(300); ++k) {
        const int kind = k % 3;
        const auto counts = test::random_counts(random, 30);
        const auto example = test::example_piece(counts, kind == 0 ? End::drawn_closed : End::left_open,
                                                 kind == 2 ? counts.front() : 0);
        RevolveOptions options;
        options.most_triangles = k % 2 == 0 ? 4'000 : 30'000;
        const auto found = test::measure(surface_of(example, options).mesh);
        ASSERT_TRUE(found.finite && found.unit_normals) << k;
        ASSERT_EQ(found.odd_edges, 0U) << k;
        ASSERT_EQ(found.euler_characteristic, kind == 2 ? 0 : 2) << k;
    }
}

TEST(Revolve, StitchesMeetTheOnesTheyAreWorkedInto) {
    const auto example = test::sphere_piece(4);
    const auto surface = surface_of(example);
    ASSERT_EQ(surface.first_stitch_of_round.size(), example.graph.rounds.size() + 1);
    for (std::size_t i = 1; i < example.graph.rounds.size(); ++i) {
        const auto& stitches = example.graph.rounds[i].stitches;
        for (std::size_t s = 0; s < stitches.size(); ++s) {
            const auto& patch = surface.stitches[surface.first_stitch_of_round[i] + s];
            EXPECT_EQ(patch.round, static_cast<int>(i));
            EXPECT_EQ(patch.stitch, static_cast<int>(s));
            const auto below = surface.first_stitch_of_round[i - 1];
            const auto last_foot =
                static_cast<std::uint32_t>(stitches[s].first_foot + stitches[s].stitch.feet - 1);
            const auto& first = surface.stitches[below + static_cast<std::uint32_t>(stitches[s].first_foot)];
            const auto& last = surface.stitches[below + last_foot];
            const bool shares = stitches[s].stitch.same_foot;
            const bool shared = s + 1 < stitches.size() && stitches[s + 1].stitch.same_foot;
            if (!shares) {
                EXPECT_NEAR((patch.corners[1] - first.corners[2]).norm(), 0, 1e-9);
            }
            if (!shared) {
                EXPECT_NEAR((patch.corners[0] - last.corners[3]).norm(), 0, 1e-9);
            }
            const auto& next = surface.stitches[surface.first_stitch_of_round[i] + (s + 1) % stitches.size()];
            EXPECT_NEAR((patch.corners[3] - next.corners[2]).norm(), 0, 1e-9);
        }
    }
}

TEST(Revolve, NormalsPointOutAndWorkGoesToTheLeft) {
    const auto example = test::sphere_piece(6);
    const auto surface = surface_of(example);
    const Vec3 middle(0, example.shape.height_mm / 2, 0);
    for (const auto& patch : surface.stitches) {
        const Vec3 centre = (patch.corners[0] + patch.corners[1] + patch.corners[2] + patch.corners[3]) / 4;
        EXPECT_GT(patch.normal.dot(centre - middle), 0);
        // Anticlockwise from outside: lower left, lower right, upper right, upper left.
        const Vec3 right = patch.corners[2] - patch.corners[3], up = patch.corners[3] - patch.corners[0];
        EXPECT_GT(right.cross(up).dot(patch.normal), 0);
    }
    for (std::size_t v = 0; v < surface.mesh.positions.size(); v += 3) {
        const Vec3 p(surface.mesh.positions[v], surface.mesh.positions[v + 1], surface.mesh.positions[v + 2]);
        const Vec3 n(surface.mesh.normals[v], surface.mesh.normals[v + 1], surface.mesh.normals[v + 2]);
        EXPECT_GT(n.dot((p - middle).normalized()), 0.1);
    }
}

TEST(Revolve, APieceThatStartsAtTheTopIsTurnedOver) {
    auto example = test::example_piece({6, 12, 18, 18}, End::left_open);
    const auto up = surface_of(example);
    example.toy.pieces[0].starts_at_top = true;
    const auto down = surface_of(example);
    expect_sound(down.mesh, 2);
    ASSERT_EQ(up.stitches.size(), down.stitches.size());
    for (std::size_t s = 0; s < up.stitches.size(); ++s) {
        const Vec3 p = up.stitches[s].corners[3], q = down.stitches[s].corners[3];
        EXPECT_NEAR(q.x(), -p.x(), 1e-9);
        EXPECT_NEAR(q.y(), example.shape.height_mm - p.y(), 1e-9);
        EXPECT_NEAR(q.z(), p.z(), 1e-9);
    }
}

/// Length of the loop above a round along its stitches' upper corners, which stand evenly on it.
double loop_length(const StitchSurface& surface, std::size_t round) {
    double length = 0;
    for (auto s = surface.first_stitch_of_round[round]; s < surface.first_stitch_of_round[round + 1]; ++s)
        length += (surface.stitches[s].corners[2] - surface.stitches[s].corners[3]).norm();
    return length;
}

TEST(Revolve, RufflesCarryTheLoopsSpareLength) {
    // The sine of amplitude 1 over 2 pi is 7.640395578055 long (DLMF ch. 19); n waves around radius r are the
    // same shape at amplitude r / n.
    auto example = test::example_piece({30, 60, 120, 240}, End::left_open);
    const double r = 45;
    example.shape = test::shape_through({0, 7, 14, r - 5, r}, {0, 0.1, 0.2, 0.3, 0.4});
    const int waves = 8;
    const std::vector<int> counts = {0, 0, 0, waves};
    const std::vector<double> heights = {0, 0, 0, 2 * r / waves};
    const auto surface = revolve(example.toy, example.piece(), example.graph, example.shape, counts, heights);
    EXPECT_NEAR(loop_length(surface, 3) / r, 7.640395578055, 0.01);
    const auto flat = revolve(example.toy, example.piece(), example.graph, example.shape, {}, {});
    EXPECT_NEAR(loop_length(flat, 3) / r, 2 * std::numbers::pi, 0.01);
    expect_sound(surface.mesh, 2);
}

TEST(Revolve, TheReliefKeepsTheMeanSurfaceAtTheSolvedRadius) {
    // A straight tube: the mean distance of its outer skin from the axis, by area, is the solved radius.
    auto example = test::example_piece(std::vector<int>(12, 24), End::left_open, 24);
    const auto surface = surface_of(example);
    const double radius = example.shape.radius_mm.front();
    double sum = 0, area = 0;
    for (std::size_t t = 0; t < surface.mesh.indices.size(); t += 3) {
        Vec3 p[3];
        for (std::size_t k = 0; k < 3; ++k) {
            const float* at = &surface.mesh.positions[3U * surface.mesh.indices[t + k]];
            p[k] = Vec3(at[0], at[1], at[2]);
        }
        const Vec3 middle = (p[0] + p[1] + p[2]) / 3, across = (p[1] - p[0]).cross(p[2] - p[0]);
        const Vec3 out(middle.x(), 0, middle.z());
        if (across.dot(out) <= 0) continue;
        // Area as seen along the radius: what a lift of the surface is counted over.
        const double seen = across.dot(out) / out.norm();
        sum += seen * out.norm();
        area += seen;
    }
    EXPECT_NEAR(sum / area, radius, 0.02 * 5);
}

TEST(Revolve, ShapesThatDoNotFitTheGraphGiveNothing) {
    auto example = test::sphere_piece(3);
    example.shape.radius_mm.resize(4);
    EXPECT_TRUE(surface_of(example).stitches.empty());
    example.shape = {};
    EXPECT_EQ(surface_of(example).mesh.triangle_count(), 0U);
    example.graph = {};
    EXPECT_TRUE(surface_of(example).stitches.empty());
}

TEST(Revolve, BrushedYarnHidesItsStitches) {
    auto example = test::sphere_piece(4);
    const auto plain = surface_of(example);
    example.toy.yarns[0].brushed = true;
    const auto brushed = surface_of(example);
    EXPECT_TRUE(brushed.stitches[5].brushed);
    EXPECT_FALSE(plain.stitches[5].brushed);
    // Less relief, less area.
    EXPECT_LT(test::measure(brushed.mesh).area_mm2, 0.95 * test::measure(plain.mesh).area_mm2);
    expect_sound(brushed.mesh, 2);
}

TEST(Revolve, TheMeshAndThePatchesWearTheYarnsColour) {
    auto example = test::sphere_piece(3);
    example.toy.yarns.emplace_back().colour = {200, 30, 20};
    for (auto& stitch : example.graph.rounds[2].stitches) stitch.stitch.yarn = 1;
    const auto surface = surface_of(example);
    for (const auto& patch : surface.stitches)
        EXPECT_EQ(patch.colour, example.toy.yarns[patch.round == 2 ? 1 : 0].colour);
}

}  // namespace
}  // namespace roundwright
