#include "core/assembly/one_surface.h"

#include <gtest/gtest.h>

#include "core/study/study_surface.h"

namespace roundwright {
namespace {

StitchSurface ball(int most) {
    Toy toy;
    toy.yarns.emplace_back();
    Piece piece;
    for (int n = 6; n <= most; n += 6)
        piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
    for (int n = most; n > 0; n -= 6)
        piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
    piece.end = End::drawn_closed;
    toy.pieces.push_back(piece);
    return study_surface(toy, 0, study_shape(toy, 0));
}

TEST(OneSurface, HoldsEveryPartWithItsRoundsNumberedOn) {
    const StitchSurface small = ball(18);
    const StitchSurface large = ball(30);
    const ShiftedSurface parts[] = {{&small, {0, 0, 0}}, {&large, {40, 0, -7}}};
    const OneSurface whole = one_surface(parts);
    ASSERT_EQ(whole.first_round, (std::vector{0, 6, 16}));
    EXPECT_EQ(whole.part_of(5), 0);
    EXPECT_EQ(whole.part_of(6), 1);
    EXPECT_EQ(whole.part_of(15), 1);
    const auto& surface = whole.surface;
    ASSERT_EQ(surface.stitches.size(), small.stitches.size() + large.stitches.size());
    EXPECT_EQ(surface.mesh.triangle_count(), small.mesh.triangle_count() + large.mesh.triangle_count());
    ASSERT_EQ(surface.first_stitch_of_round.size(), 17u);
    EXPECT_EQ(surface.first_stitch_of_round.back(), surface.stitches.size());
    const auto first = surface.first_stitch_of_round[6];
    EXPECT_EQ(first, small.stitches.size());
    EXPECT_EQ(surface.stitches[first].round, 6);
    EXPECT_EQ(surface.stitches[first].stitch, 0);
    const Vec3 moved = surface.stitches[first].corners[2] - large.stitches[0].corners[2];
    EXPECT_NEAR((moved - Vec3(40, 0, -7)).norm(), 0, 1e-9);
    for (std::size_t triangle = 0; triangle < surface.mesh.triangle_count(); ++triangle) {
        const bool of_large = triangle >= small.mesh.triangle_count();
        const auto stitch = surface.mesh.stitch_of_triangle[triangle];
        if (stitch >= 0) {
            EXPECT_EQ(stitch >= static_cast<int>(first), of_large);
        }
        EXPECT_EQ(surface.mesh.indices[3 * triangle] >= small.mesh.vertex_count(), of_large);
    }
    EXPECT_EQ(surface.mesh.places.size(), 6 * surface.mesh.triangle_count());
}

TEST(OneSurface, IsTurnedAsAWhole) {
    const StitchSurface small = ball(18);
    const ShiftedSurface parts[] = {{&small, {0, 0, 5}}};
    Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
    pose.rotate(Eigen::AngleAxisd(0.7, Vec3(1, 2, 3).normalized()));
    pose.pretranslate(Vec3(3, -4, 9));
    const OneSurface whole = one_surface(parts, pose);
    const StitchPatch& patch = whole.surface.stitches[7];
    EXPECT_NEAR((patch.corners[1] - pose * (small.stitches[7].corners[1] + Vec3(0, 0, 5))).norm(), 0, 1e-9);
    EXPECT_NEAR((patch.normal - pose.linear() * small.stitches[7].normal).norm(), 0, 1e-9);
    const auto vertex = [](const std::vector<float>& of) { return Vec3(of[30], of[31], of[32]); };
    const Vec3 then = vertex(small.mesh.positions) + Vec3(0, 0, 5);
    EXPECT_NEAR((vertex(whole.surface.mesh.positions) - pose * then).norm(), 0, 1e-4);
    EXPECT_NEAR((vertex(whole.surface.mesh.normals) - pose.linear() * vertex(small.mesh.normals)).norm(), 0,
                1e-5);
}

TEST(OneSurface, OfNothingIsEmpty) {
    const OneSurface whole = one_surface({});
    EXPECT_EQ(whole.first_round, (std::vector{0}));
    EXPECT_TRUE(whole.surface.stitches.empty());
}

}  // namespace
}  // namespace roundwright
