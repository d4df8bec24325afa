#include "app/assembly/join_handles.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/assembly/study_solved.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

struct JoinHandlesTest : ::testing::Test {
    JoinHandlesTest() {
        toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
        toy.pieces.push_back(piece_of({6, 9, 9, 9, 9}, "Fin"));
        toy.pieces[1].make = 2;
        toy.pieces[0].face_degrees = 20;
        Join join;
        join.piece = {toy.pieces.id(1), 0};
        join.onto = {toy.pieces.id(0), 0};
        join.pair = true;
        join.at = {8, 6, false};
        join.seam = Seam::closed;
        toy.joins = {join};
    }
    [[nodiscard]] std::optional<JoinHandles> handles(std::size_t copy) const {
        std::vector<SolvedPiece> solved;
        for (std::size_t i = 0; i < 2; ++i) solved.push_back(solved_piece(toy, i, study_shape(toy, i)));
        const auto whole = roundwright::assemble(toy, solved, {nullptr, nullptr});
        return join_handles(toy, whole, copy, in_picture);
    }
    /// Towards a point, from far before it.
    static Ray ray_to(const Vec3& point, const Vec3& from) {
        return {point + 500 * from.normalized(), -from.normalized()};
    }

    Toy toy;
    Pose in_picture = Pose::Identity();
};

TEST_F(JoinHandlesTest, TheKnobLeansThePieceToWhereItIsPulled) {
    for (const std::size_t copy : {1u, 2u}) {
        for (const auto& [up, right] :
             {std::pair{0, 0}, std::pair{25, 0}, std::pair{0, -30}, std::pair{-15, 20}}) {
            toy.joins[0].lean_degrees = up;
            toy.joins[0].lean_right_degrees = right;
            const auto now = handles(copy);
            ASSERT_TRUE(now);
            const Vec3 knob = now->place + now->knob_reach * now->axis;
            const Lean lean = leant_to(*now, ray_to(knob, now->axis + 0.2 * now->up));
            EXPECT_NEAR(lean.up_degrees, up, 1) << copy;
            EXPECT_NEAR(lean.right_degrees, right, 1) << copy;
        }
    }
}

TEST_F(JoinHandlesTest, AQuarterPullOnTheHoopTurnsByAQuarter) {
    for (const std::size_t copy : {1u, 2u}) {
        const auto now = handles(copy);
        ASSERT_TRUE(now);
        const Vec3 one = now->axis.unitOrthogonal(), other = now->axis.cross(one);
        const Ray from = ray_to(now->hoop_middle + now->hoop_radius * one, now->axis);
        const Ray to = ray_to(now->hoop_middle + now->hoop_radius * other, now->axis);
        const auto turned = turned_by(*now, from, to);
        ASSERT_TRUE(turned);
        EXPECT_NEAR(*turned, copy == 1 ? 90 : -90, 1e-6);
        EXPECT_FALSE(turned_by(*now, ray_to(now->hoop_middle, one), to));
    }
}

TEST_F(JoinHandlesTest, FollowTheToyAsItLies) {
    const auto upright = handles(2);
    in_picture = Eigen::AngleAxisd(1.2, Vec3(2, -1, 1).normalized());
    in_picture.pretranslate(Vec3(4, 5, -6));
    const auto lying = handles(2);
    ASSERT_TRUE(upright && lying);
    EXPECT_NEAR((lying->place - in_picture * upright->place).norm(), 0, 1e-9);
    EXPECT_NEAR((lying->hoop_middle - in_picture * upright->hoop_middle).norm(), 0, 1e-9);
    for (const auto direction :
         {&JoinHandles::axis, &JoinHandles::out, &JoinHandles::up, &JoinHandles::right})
        EXPECT_NEAR(((*lying).*direction - in_picture.linear() * ((*upright).*direction)).norm(), 0, 1e-9);
    const Vec3 knob = lying->place + lying->knob_reach * lying->axis;
    const Lean lean = leant_to(*lying, ray_to(knob, lying->axis + 0.2 * lying->up));
    EXPECT_NEAR(lean.up_degrees, 0, 1);
    EXPECT_NEAR(lean.right_degrees, 0, 1);
}

TEST_F(JoinHandlesTest, WhatStandsByItselfHasNone) { EXPECT_FALSE(handles(0)); }

TEST_F(JoinHandlesTest, TheirMeshesFaceOutwards) {
    const auto now = handles(1);
    ASSERT_TRUE(now);
    for (const Mesh& mesh : {hoop_mesh(*now, {}), knob_mesh(*now, {})}) {
        ASSERT_GT(mesh.triangle_count(), 100u);
        const auto at = [&](const std::vector<float>& from, std::uint32_t vertex) {
            return Vec3(from[3 * vertex], from[3 * vertex + 1], from[3 * vertex + 2]);
        };
        for (std::size_t i = 0; i < mesh.triangle_count(); ++i) {
            const auto* corner = &mesh.indices[3 * i];
            const Vec3 a = at(mesh.positions, corner[0]);
            const Vec3 face = (at(mesh.positions, corner[1]) - a).cross(at(mesh.positions, corner[2]) - a);
            if (face.norm() < 1e-6) continue;  // at the knob's poles
            EXPECT_GT(face.dot(at(mesh.normals, corner[0])), 0);
        }
    }
}

}  // namespace
}  // namespace roundwright::app
