#include "core/face/fabric_face.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "core/face/face_surface.h"
#include "core/face/place_feature.h"
#include "core/mesh/revolve.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/face/known_shapes.h"
#include "tests/core/mesh/bent_tube.h"
#include "tests/core/shape/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

struct Both {
    Piece piece;
    StitchGraph graph;
    Shape shape;

    explicit Both(std::mt19937& random) {
        piece.end = End::drawn_closed;
        piece.starts_at_top = random() % 2 == 0;
        piece.face_degrees = static_cast<double>(random() % 360);
        for (const int count : random_toy_counts(random))
            piece.rounds.emplace_back().working = WorkedEvenly{count};
        graph = piece_graph(piece).graph;
        shape = solve_shape(shape_problem(piece, graph, {5, 5, 0, 0}));
    }
    [[nodiscard]] FaceSurface by_shape() const { return {piece, shape}; }
    [[nodiscard]] FaceSurface by_fabric() const {
        return {piece, std::shared_ptr<const FabricGeometry>(revolved_fabric(piece, graph, shape, {}))};
    }
};

double counted(const std::vector<int>& counts, int round) { return counts[static_cast<std::size_t>(round)]; }

// What is known of round pieces in closed form, any fabric gives by its stitches alone.
TEST(FabricFace, OfARoundPiecePlacesAndMeasuresFeaturesAsTheClosedFormDoes) {
    std::mt19937 random(12);
    for (int k = 0; k < testing::random_cases(200); ++k) {
        const Both both(random);
        if (both.shape.flattened() || both.shape.termination != Termination::converged) continue;
        SCOPED_TRACE(k);
        const FaceSurface closed = both.by_shape(), any = both.by_fabric();
        ASSERT_EQ(any.loops(), closed.loops());
        EXPECT_NEAR(any.width_mm(), closed.width_mm(), 0.001 * closed.width_mm());
        EXPECT_NEAR(any.height_mm(), closed.height_mm(), 1e-6);
        const std::vector<int> counts = stitch_counts(both.graph);
        Feature eyes;
        eyes.round = static_cast<int>(counts.size()) / 3;
        eyes.stitches_apart = std::max(1, static_cast<int>(counted(counts, eyes.round) / 4));
        const PlacedFeature a = place_feature(eyes, closed, counts), b = place_feature(eyes, any, counts);
        ASSERT_EQ(a.starts.size(), 2U);
        ASSERT_EQ(b.starts.size(), 2U);
        for (std::size_t side = 0; side < 2; ++side) {
            const SurfacePoint one = closed.at(a.starts[side]), other = any.at(b.starts[side]);
            EXPECT_LT((one.point - other.point).norm(), 1e-3);
            EXPECT_GT(one.normal.dot(other.normal), 0.98);
            EXPECT_GT(one.up.dot(other.up), 0.98);
            EXPECT_GT(one.right.dot(other.right), 0.98);
            EXPECT_NEAR(one.height_mm, other.height_mm, 1e-3);
            EXPECT_NEAR(one.radius_mm, other.radius_mm, 1e-6);
            EXPECT_NEAR(one.round_curvature, other.round_curvature,
                        0.15 * std::abs(one.round_curvature) + 0.01);
        }
        const FeatureMeasures measured = measure_feature(a, closed), again = measure_feature(b, any);
        EXPECT_NEAR(again.straight_mm, measured.straight_mm, 2e-3);
        EXPECT_NEAR(again.height_mm, measured.height_mm, 1e-3);
        EXPECT_NEAR(again.angle_degrees, measured.angle_degrees, 1e-9);
        EXPECT_NEAR(again.along_surface_mm, measured.along_surface_mm,
                    0.01 * measured.along_surface_mm + 0.2);
    }
}

std::shared_ptr<const BentTube> bent_tube() { return std::make_shared<const BentTube>(BentTube::Size{}); }

TEST(FabricFace, FeaturesOfABentTubeSitOnTheirStitches) {
    const auto tube = bent_tube();
    const FaceSurface face(Piece{}, tube);
    ASSERT_EQ(face.loops(), 11);
    const std::vector<int> counts(10, 18);
    Feature eyes;
    eyes.round = 4;
    eyes.stitches_apart = 5;
    const PlacedFeature placed = place_feature(eyes, face, counts);
    ASSERT_EQ(placed.starts.size(), 2U);
    const Vec2 left = tube->round_and_stitch(face.at(placed.starts[0]).point);
    const Vec2 right = tube->round_and_stitch(face.at(placed.starts[1]).point);
    EXPECT_NEAR(left.x(), 5, 1e-6) << "in the gap above round 5";
    EXPECT_NEAR(right.x(), 5, 1e-6);
    EXPECT_NEAR(std::remainder(left.y() - right.y(), 18), 5, 1e-6) << "stitches run to the left";
    const SurfacePoint one = face.at(placed.starts[0]), other = face.at(placed.starts[1]);
    EXPECT_NEAR(one.point.z(), other.point.z(), 1e-4) << "the middle of the face looks to the viewer";
    EXPECT_GT(one.point.z(), 0);
    EXPECT_GT(one.normal.dot(tube->outward(one.point)), 0.999);
    EXPECT_NEAR(one.round_curvature, 1 / BentTube::Size{}.tube_radius_mm, 0.01);
    const FeatureMeasures measures = measure_feature(placed, face);
    EXPECT_NEAR(measures.along_surface_mm, 15 * 2 * pi * 5 / 18, 0.1);
    EXPECT_LT(measures.straight_mm, measures.along_surface_mm);
}

TEST(FabricFace, AFeatureMovedToItsPlaceOnABentTubeStaysThere) {
    const FaceSurface face(Piece{}, bent_tube());
    const std::vector<int> counts(10, 18);
    for (const int round : {1, 4, 7}) {
        for (const double right : {-4.0, -1.5, 0.0, 2.5, 6.0}) {
            Feature nose;
            nose.pair = false;
            nose.round = round;
            nose.stitches_right = right;
            const SurfacePlace at = place_feature(nose, face, counts).starts.front();
            const SurfacePlace found = face.nearest(face.at(at).point);
            Feature elsewhere = nose;
            elsewhere.round = 3;
            elsewhere.stitches_right = 1;
            const Feature back = moved_to(elsewhere, found, face, counts);
            EXPECT_EQ(back.round, round);
            EXPECT_EQ(back.stitches_right, right);
        }
    }
}

TEST(FabricFace, NothingIsPlacedOnNothing) {
    EXPECT_TRUE(FaceSurface(Piece{}, std::shared_ptr<const FabricGeometry>()).empty());
}

}  // namespace
}  // namespace roundwright::test
