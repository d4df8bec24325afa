#include <gtest/gtest.h>

#include "core/face/face_surface.h"
#include "core/face/place_feature.h"
#include "tests/core/recorded/varied_pieces.h"

namespace roundwright::test {
namespace {

/// Whether a gauge of its own is said, which can be made larger.
GivenGauge* given_gauge(Toy& toy) { return std::get_if<GivenGauge>(&toy.gauge); }

Toy in_yarn_twice_as_thick(Toy toy) {
    Gauge& gauge = given_gauge(toy)->gauge;
    gauge.stitch_width_mm *= 2;
    gauge.round_height_mm *= 2;
    gauge.stitch_width_error_mm *= 2;
    gauge.round_height_error_mm *= 2;
    return toy;
}

void expect_twice(const std::vector<double>& small, const std::vector<double>& large, double factor) {
    ASSERT_EQ(small.size(), large.size());
    for (std::size_t i = 0; i < small.size(); ++i)
        EXPECT_NEAR(large[i], factor * small[i], 1e-5 * (1 + std::abs(small[i]))) << i;
}

/// There is no length in the model but the stitch's: yarn twice as thick makes the same piece twice as large.
/// Its fabric's thickness follows the stitch then, and no weight of yarn.
Toy in_unknown_yarn(Toy toy) {
    toy.yarns.clear();
    return toy;
}

TEST(VariedPieces, InYarnTwiceAsThickAreTwiceAsLarge) {
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        Toy toy = in_unknown_yarn(varied_pieces()[i].toy);
        if (given_gauge(toy) == nullptr) continue;
        SCOPED_TRACE(varied_pieces()[i].name);
        const VariedStudy small = studied(toy);
        const VariedStudy large = studied(in_yarn_twice_as_thick(toy));
        const Shape &a = small.shape, &b = large.shape;
        EXPECT_EQ(a.termination, b.termination);
        expect_twice({a.width_mm, a.height_mm, a.depth_mm, a.first_pole_z_mm, a.last_pole_z_mm},
                     {b.width_mm, b.height_mm, b.depth_mm, b.first_pole_z_mm, b.last_pole_z_mm}, 2);
        expect_twice({a.surface_mm2}, {b.surface_mm2}, 4);
        expect_twice({a.volume_mm3}, {b.volume_mm3}, 8);
        expect_twice(a.radius_mm, b.radius_mm, 2);
        expect_twice(a.z_mm, b.z_mm, 2);
        expect_twice(a.course_stretch, b.course_stretch, 1);
        expect_twice(a.wale_stretch, b.wale_stretch, 1);
        expect_twice({small.size.width_mm.low, small.size.height_mm.high},
                     {large.size.width_mm.low, large.size.height_mm.high}, 2);
        ASSERT_EQ(small.lies.size(), large.lies.size());
        for (std::size_t round = 0; round < small.lies.size(); ++round) {
            EXPECT_EQ(small.lies[round].lie, large.lies[round].lie) << round;
            EXPECT_EQ(small.lies[round].waves, large.lies[round].waves) << round;
            EXPECT_NEAR(2 * small.lies[round].wave_height_mm, large.lies[round].wave_height_mm, 1e-4)
                << round;
        }
    }
}

TEST(VariedPieces, TheirMeshesGrowWithThem) {
    RevolveOptions options;
    options.most_triangles = 3'000;
    for (std::size_t i = 0; i < varied_pieces().size(); i += 2) {
        Toy toy = in_unknown_yarn(varied_pieces()[i].toy);
        if (given_gauge(toy) == nullptr) continue;
        SCOPED_TRACE(varied_pieces()[i].name);
        const Mesh small = surface_of(toy, studied(toy), options).mesh;
        const Toy thick = in_yarn_twice_as_thick(toy);
        const Mesh large = surface_of(thick, studied(thick), options).mesh;
        EXPECT_EQ(small.indices, large.indices);
        ASSERT_EQ(small.positions.size(), large.positions.size());
        for (std::size_t k = 0; k < small.positions.size(); ++k)
            ASSERT_NEAR(2 * small.positions[k], large.positions[k], 1e-3F) << k;
    }
}

/// How a round is joined to the next, which yarn of one weight it is in and its notes are nothing to its
/// shape.
TEST(VariedPieces, ColourAndJoinsLeaveTheShape) {
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        Toy toy = varied_pieces()[i].toy;
        for (Yarn& yarn : toy.yarns) yarn.weight = YarnWeight::light;
        const Shape before = studied(toy).shape;
        Piece& piece = toy.pieces[0];
        if (piece.joining == Joining::rows) continue;
        piece.joining = piece.joining == Joining::spiral ? Joining::joined : Joining::spiral;
        piece.make = 3;
        piece.starts_at_top = !piece.starts_at_top;
        piece.features.clear();
        for (Round& round : piece.rounds) {
            round.yarn = 1 - std::min<std::size_t>(round.yarn, 1);
            round.note = "a note";
        }
        const Shape shape = studied(toy).shape;
        EXPECT_EQ(shape.radius_mm, before.radius_mm) << varied_pieces()[i].name;
        EXPECT_EQ(shape.z_mm, before.z_mm) << varied_pieces()[i].name;
    }
}

/// Wherever the face looks, what is fitted to it lies as it did on the fabric of a round piece.
TEST(VariedPieces, TheFaceTurnsAsAWhole) {
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        Piece piece = varied_pieces()[i].toy.pieces[0];
        const Shape& shape = varied_studies()[i].shape;
        if (piece.features.empty() || shape.flattened()) continue;
        const FaceSurface before(piece, shape);
        piece.face_degrees += 90;
        const FaceSurface after(piece, shape);
        const std::vector<int> counts = stitch_counts(varied_studies()[i].graph.graph);
        for (const Feature& feature : piece.features) {
            const PlacedFeature placed = place_feature(feature, before, counts);
            ASSERT_EQ(placed.starts, place_feature(feature, after, counts).starts);
            for (const SurfacePlace& place : placed.starts) {
                const Vec3 here = before.at(place).point, there = after.at(place).point;
                EXPECT_LT((there - Vec3(here.z(), here.y(), -here.x())).norm(), 1e-9)
                    << varied_pieces()[i].name;
            }
            EXPECT_NEAR(measure_feature(placed, before).along_surface_mm,
                        measure_feature(placed, after).along_surface_mm, 1e-9);
        }
    }
}

}  // namespace
}  // namespace roundwright::test
