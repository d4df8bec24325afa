#include "core/face/place_feature.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/rounds/piece_graph.h"
#include "core/shape/solve_shape.h"
#include "tests/core/face/known_shapes.h"

namespace roundwright {
namespace {

using std::numbers::pi;

Piece head() {
    Piece piece = test::closed_ball();
    for (int n : {6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6}) {
        piece.rounds.push_back({WorkedEvenly{n}, 0, false, {}});
    }
    return piece;
}

struct SolvedHead {
    explicit SolvedHead(const Piece& piece)
        : graph(piece_graph(piece).graph),
          counts(stitch_counts(graph)),
          shape(solve_shape(shape_problem(piece, graph, {5, 5, 0, 0}))),
          surface(piece, shape) {}
    StitchGraph graph;
    std::vector<int> counts;
    Shape shape;
    FaceSurface surface;
};

TEST(PlaceFeature, PairsMirrorExactly) {
    for (double face : {0.0, 37.0}) {
        Piece piece = head();
        piece.face_degrees = face;
        const SolvedHead solved(piece);
        Feature eyes;
        eyes.round = 8;
        eyes.stitches_apart = 7;
        const PlacedFeature placed = place_feature(eyes, solved.surface, solved.counts);
        ASSERT_EQ(placed.starts.size(), 2u);
        EXPECT_EQ(placed.starts[0].along_mm, placed.starts[1].along_mm);
        EXPECT_EQ(placed.starts[0].angle, -placed.starts[1].angle);
        EXPECT_NEAR(placed.starts[1].angle - placed.starts[0].angle, 7 * 2 * pi / 36, 1e-12);
    }
}

TEST(PlaceFeature, MeasuresOfAPairAreChordAndArcAtTheEquator) {
    const FaceSurface sphere(head(), test::sphere_shape(40, 15));
    Feature eyes;
    eyes.round = 7;  // loop 8 of 16: the equator
    eyes.stitches_apart = 6;
    const auto counts = test::constant_counts(15, 36);
    const FeatureMeasures measures = measure_feature(place_feature(eyes, sphere, counts), sphere);
    EXPECT_NEAR(measures.straight_mm, 2 * 40 * std::sin(pi / 6), 1e-9);
    EXPECT_NEAR(measures.along_surface_mm, 40 * pi / 3, 0.02);
    EXPECT_NEAR(measures.height_mm, 40, 1e-9);
    EXPECT_NEAR(measures.angle_degrees, 60, 1e-9);
}

TEST(PlaceFeature, StaysBetweenItsRoundsWhenStuffedFirmer) {
    Piece piece = head();
    Feature eyes;
    eyes.round = 8;
    for (double stretch : {0.0, 0.01, 0.04, 0.08}) {
        piece.area_stretch = stretch;
        const SolvedHead solved(piece);
        const PlacedFeature placed = place_feature(eyes, solved.surface, solved.counts);
        ASSERT_EQ(placed.starts.size(), 2u);
        const SurfacePoint at = solved.surface.at(placed.starts[0]);
        if (solved.shape.flattened()) {
            // On the loop's line, which is bent in its layer.
            const LoopSection& loop = solved.shape.sections[9];
            EXPECT_NEAR(at.radius_mm, loop.half_width_mm, 1e-9);
            EXPECT_GE(at.height_mm, solved.shape.z_mm[9] + loop.lowest_mm() - 1e-9);
            EXPECT_LE(at.height_mm, solved.shape.z_mm[9] + loop.highest_mm() + 1e-9);
            continue;
        }
        EXPECT_NEAR(at.radius_mm, solved.shape.radius_mm[9], 1e-9);
        EXPECT_NEAR(at.height_mm, solved.shape.z_mm[9], 1e-9);
    }
}

TEST(PlaceFeature, MovesToTheNearestGap) {
    const SolvedHead solved(head());
    for (int round : {3, 8, 12}) {
        for (int apart : {2, 5, 9}) {
            Feature wanted;
            wanted.round = round;
            wanted.stitches_apart = apart;
            SurfacePlace place = place_feature(wanted, solved.surface, solved.counts).starts[1];
            place.along_mm += 1.5;
            place.angle += 0.2 * pi / solved.counts[static_cast<std::size_t>(round)];
            EXPECT_EQ(moved_to(Feature{}, place, solved.surface, solved.counts), wanted);
        }
    }
}

TEST(PlaceFeature, NudgesStayOnThePiece) {
    const std::vector<int> counts = test::constant_counts(6, 12);
    Feature eyes;
    eyes.round = 2;
    eyes.stitches_apart = 3;
    EXPECT_EQ(nudged(eyes, 1, 0, counts).round, 3);
    EXPECT_EQ(nudged(eyes, -9, 0, counts).round, 0);
    EXPECT_EQ(nudged(eyes, 9, 0, counts).round, 4);
    EXPECT_EQ(nudged(eyes, 0, -9, counts).stitches_apart, 1);
    EXPECT_EQ(nudged(eyes, 0, 99, counts).stitches_apart, 11);
}

TEST(PlaceFeature, AFeatureWhoseRoundIsGoneIsNowhere) {
    const SolvedHead solved(head());
    Feature eyes;
    eyes.round = 15;
    EXPECT_TRUE(place_feature(eyes, solved.surface, solved.counts).starts.empty());
    eyes.round = 400;
    EXPECT_TRUE(place_feature(eyes, solved.surface, solved.counts).starts.empty());
}

TEST(PlaceFeature, SpacingsAreOrdered) {
    const auto counts = test::constant_counts(10, 36);
    const int close = stitches_apart_for(EyeSpacing::close, 5, counts);
    const int middle = stitches_apart_for(EyeSpacing::middle, 5, counts);
    const int wide = stitches_apart_for(EyeSpacing::wide, 5, counts);
    EXPECT_LT(close, middle);
    EXPECT_LT(middle, wide);
    EXPECT_LT(wide, 18);
}

}  // namespace
}  // namespace roundwright
