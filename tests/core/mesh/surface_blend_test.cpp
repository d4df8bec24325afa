#include "core/mesh/surface_blend.h"

#include <gtest/gtest.h>

#include "core/study/fabric_stage.h"
#include "core/study/study_surface.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright::test {
namespace {

struct RoundAndFine {
    StitchSurface round;
    std::shared_ptr<const StitchSurface> fine;
};

RoundAndFine surfaces_of(const Toy& toy) {
    const auto study = std::make_shared<const PieceStudy>(study_shape(toy, 0));
    const EveryStitchStudy fine = with_every_stitch(study, toy, 0);
    RevolveOptions options;
    options.relief = Relief::shaded;
    options.most_triangles = 20'000;
    return {study_surface(toy, 0, *study, options),
            std::make_shared<const StitchSurface>(study_surface(toy, 0, *fine.study, options))};
}

double farthest_vertex(const StitchSurface& a, const StitchSurface& b) {
    double farthest = 0;
    for (std::size_t i = 0; i < a.mesh.positions.size(); ++i)
        farthest = std::max(farthest, std::abs(double(a.mesh.positions[i]) - double(b.mesh.positions[i])));
    return farthest;
}

/// The farthest that a stitch's corner is from the other's distance from the axis and its height.
double farthest_outline(const StitchSurface& a, const StitchSurface& b) {
    double farthest = 0;
    for (std::size_t i = 0; i < a.stitches.size(); ++i)
        for (std::size_t k = 0; k < 4; ++k) {
            const Vec3 &one = a.stitches[i].corners[k], &other = b.stitches[i].corners[k];
            const double out = std::hypot(one.x(), one.z()) - std::hypot(other.x(), other.z());
            farthest = std::max(farthest, std::hypot(out, one.y() - other.y()));
        }
    return farthest;
}

TEST(SurfaceBlend, GoesFromTheOneToTheOther) {
    const RoundAndFine both = surfaces_of(stuffed_toy_of(ball(5)));
    const auto blend = SurfaceBlend::between(both.round, both.fine);
    ASSERT_TRUE(blend.has_value());
    EXPECT_EQ(blend->at(1), both.fine) << "no copy";
    const double difference = farthest_outline(*both.fine, both.round);
    EXPECT_GT(difference, 0.3);
    EXPECT_LT(farthest_outline(*blend->at(0), both.round), 1e-6);
    EXPECT_LT(farthest_outline(*blend->at(0.5), both.round), 0.6 * difference);
}

// No jump larger than the difference, and no vertex left behind.
TEST(SurfaceBlend, NoVertexGoesFartherThanTheStitchesDo) {
    const RoundAndFine both = surfaces_of(stuffed_toy_of(ball(5)));
    const auto blend = SurfaceBlend::between(both.round, both.fine);
    ASSERT_TRUE(blend.has_value());
    const double difference = farthest_outline(*both.fine, both.round);
    EXPECT_LE(blend->farthest_mm(), 1.01 * difference);
    EXPECT_LE(farthest_vertex(*blend->at(0), *both.fine), 1.01 * difference);
    EXPECT_EQ(blend->at(0.3)->mesh.indices, both.fine->mesh.indices);
}

TEST(SurfaceBlend, IsBetweenTheSameStitchesOnly) {
    const RoundAndFine five = surfaces_of(stuffed_toy_of(ball(5)));
    const RoundAndFine four = surfaces_of(stuffed_toy_of(ball(4)));
    EXPECT_FALSE(SurfaceBlend::between(four.round, five.fine).has_value());
    EXPECT_FALSE(SurfaceBlend::between({}, five.fine).has_value());
    EXPECT_FALSE(SurfaceBlend::between(five.round, nullptr).has_value());
}

}  // namespace
}  // namespace roundwright::test
