#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/assembly/join_frames.h"
#include "core/assembly/placed_toy.h"
#include "core/assembly/seam_line.h"
#include "core/assembly/study_solved.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

using std::numbers::pi;

struct PlaceToy : ::testing::Test {
    Toy toy;
    PlacedToy place() {
        solved.clear();
        for (std::size_t i = 0; i < toy.pieces.size(); ++i)
            solved.push_back(solved_piece(toy, i, study_shape(toy, i)));
        return place_toy(toy, solved);
    }
    PieceCopy copy(std::size_t piece, int number = 0) const { return {toy.pieces.id(piece), number}; }
    std::vector<SolvedPiece> solved;
};

TEST_F(PlaceToy, WhatIsNotJoinedStandsInARowWithoutTouching) {
    toy.pieces = PieceList{test::ball_piece(36), test::cup_piece(18, 4), test::ball_piece(24)};
    const PlacedToy placed = place();
    ASSERT_EQ(placed.pieces.size(), 3u);
    for (std::size_t i = 1; i < 3; ++i) {
        const double apart =
            placed.pieces[i].pose.translation().x() - placed.pieces[i - 1].pose.translation().x();
        const double touching = (solved[placed.pieces[i].solved].measures.width_mm +
                                 solved[placed.pieces[i - 1].solved].measures.width_mm) /
                                2;
        EXPECT_GT(apart, touching);
    }
}

TEST_F(PlaceToy, AnOpenEdgeSitsSoDeepThatItsMiddleIsThatOfItsLineAndItsFarEndPointsOutwards) {
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(18, 4)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 10, .stitches_right = 7}}};
    const PlacedToy placed = place();
    ASSERT_TRUE(placed.problems.empty());
    const auto end = frame_of_end(solved[1], JoinedEnd::end);
    const auto at = frame_of_place(solved[0], toy.joins[0].at);
    ASSERT_TRUE(end && at);
    const Pose& pose = placed.pieces[1].pose;
    ASSERT_TRUE(placed.pieces[1].line);
    const Vec3 middle = placed.pieces[1].line->middle();
    EXPECT_NEAR((pose * end->point - middle).dot(at->out), 0, 1e-9);
    EXPECT_LT((middle - at->point).dot(at->out), -1);
    EXPECT_NEAR((pose.linear() * end->out + at->out).norm(), 0, 1e-9);
    EXPECT_NEAR(pose.linear().determinant(), 1, 1e-12);
    // The magic ring is the far end.
    const auto start = frame_of_end(solved[1], JoinedEnd::start);
    EXPECT_NEAR((pose * start->point - middle).dot(at->out), solved[1].measures.height_mm, 1e-6);
}

TEST_F(PlaceToy, APieceThatStartsAtTheTopIsSewnOnByTheSameEdge) {
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(18, 4)};
    toy.pieces[1].starts_at_top = true;
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 10, .stitches_right = 7}}};
    const PlacedToy placed = place();
    const auto at = frame_of_place(solved[0], toy.joins[0].at);
    const auto start = frame_of_end(solved[1], JoinedEnd::start);
    ASSERT_TRUE(placed.pieces[1].line && at && start);
    const Vec3 middle = placed.pieces[1].line->middle();
    const Pose& pose = placed.pieces[1].pose;
    EXPECT_NEAR((pose * sewn_edge(solved[1], JoinedEnd::end).middle - middle).dot(at->out), 0, 1e-9);
    EXPECT_NEAR((pose * start->point - middle).dot(at->out), solved[1].measures.height_mm, 1e-6);
}

TEST_F(PlaceToy, APairMirrorsExactlyHoweverTheFacesAreTurned) {
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(18, 4)};
    toy.pieces[0].face_degrees = 25;
    toy.pieces[1].make = 2;
    toy.pieces[1].face_degrees = -40;
    toy.joins = {{.piece = copy(1),
                  .onto = copy(0),
                  .pair = true,
                  .at = {.round = 10, .stitches_right = 7},
                  .turn_degrees = 30,
                  .lean_degrees = 20,
                  .lean_right_degrees = -12,
                  .sink_mm = 2}};
    const PlacedToy placed = place();
    ASSERT_EQ(placed.pieces.size(), 3u);
    const double turn = 25 * pi / 180;
    const Vec3 right(std::cos(turn), 0, -std::sin(turn));
    const auto image = [&](const Vec3& p) -> Vec3 { return p - 2 * p.dot(right) * right; };
    // A point of the piece and its image about the piece's own plane are images of each other in the toy.
    const double own = -40 * pi / 180;
    const Vec3 own_right(std::cos(own), 0, -std::sin(own));
    for (const Vec3& p : {Vec3(3, 1, 4), Vec3(-2, 7, 1), Vec3(0, 0, 9)}) {
        const Vec3 own_image = p - 2 * p.dot(own_right) * own_right;
        EXPECT_NEAR((placed.pieces[2].pose * own_image - image(placed.pieces[1].pose * p)).norm(), 0, 1e-9);
    }
    EXPECT_NEAR(placed.pieces[2].pose.linear().determinant(), 1, 1e-12);
}

TEST_F(PlaceToy, LeaningSinkingAndTurningDoWhatTheySay) {
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(18, 4)};
    const int middle = static_cast<int>(toy.pieces[0].rounds.size()) / 2 - 1;
    Join join{.piece = copy(1), .onto = copy(0), .at = {.round = middle}};
    toy.joins = {join};
    const Pose straight = place().pieces[1].pose;
    const auto far = frame_of_end(solved[1], JoinedEnd::start)->point;
    toy.joins[0].sink_mm = 3;
    EXPECT_NEAR((place().pieces[1].pose * far - straight * far).z(), -3, 0.2);
    toy.joins[0] = join;
    toy.joins[0].lean_degrees = 30;
    EXPECT_GT((place().pieces[1].pose * far).y(), (straight * far).y() + 5);
    toy.joins[0] = join;
    toy.joins[0].lean_right_degrees = 30;
    EXPECT_GT((place().pieces[1].pose * far).x(), (straight * far).x() + 5);
    toy.joins[0] = join;
    toy.joins[0].turn_degrees = 90;
    EXPECT_NEAR((place().pieces[1].pose * far - straight * far).norm(), 0, 1e-6);
}

TEST_F(PlaceToy, KeepsAJoinInItsGapWhenThePieceIsResized) {
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(18, 4)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 10, .stitches_right = 7}}};
    for (const double stretch : {0.01, 0.08}) {
        toy.pieces[0].area_stretch = stretch;
        const PlacedToy placed = place();
        const Vec3 edge = placed.pieces[1].pose * frame_of_end(solved[1], JoinedEnd::end)->point;
        const SurfacePlace found = solved[0].surface.nearest(edge);
        EXPECT_NEAR(found.along_mm, solved[0].surface.along_of_loop(11), 1e-3);
        EXPECT_NEAR(found.angle, 2 * pi * 7 / solved[0].stitches[10], 1e-3);
    }
}

TEST_F(PlaceToy, KeepsAJoinInItsGapWhateverBecomesOfEitherPiece) {
    toy.yarns.resize(2);
    const auto kept = [&](const char* what) {
        const PlacedToy placed = place();
        ASSERT_TRUE(placed.problems.empty()) << what;
        const Vec3 edge = placed.pieces[1].pose * frame_of_end(solved[1], JoinedEnd::end)->point;
        const SurfacePlace found = solved[0].surface.nearest(edge);
        EXPECT_NEAR(found.along_mm, solved[0].surface.along_of_loop(11), 1e-3) << what;
        EXPECT_NEAR(found.angle, 2 * pi * 7 / solved[0].stitches[10], 1e-3) << what;
    };
    const auto change = [&](std::size_t piece, const auto& edit) {
        Piece next = toy.pieces[piece];
        edit(next);
        toy.pieces[piece] = next;
    };
    toy.pieces = PieceList{test::ball_piece(48), test::cup_piece(18, 4)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 10, .stitches_right = 7}}};
    kept("as they were");
    change(1, [](Piece& cup) { cup.rounds.push_back(cup.rounds.back()); });
    kept("the cup taller");
    change(1, [](Piece& cup) { cup.area_stretch = firm_stuffing_stretch; });
    kept("the cup firmer");
    change(0, [](Piece& ball) { ball.area_stretch = light_stuffing_stretch; });
    kept("the ball softer");
    for (const std::size_t piece : {0U, 1U})
        change(piece, [](Piece& other) {
            for (Round& round : other.rounds) round.yarn = 1;
        });
    kept("both in another yarn");
    change(0, [](Piece& ball) {
        for (Round& round : ball.rounds) std::get<WorkedEvenly>(round.working).stitches += 6;
    });
    kept("the ball larger");
    toy.hook_mm = 6;
    kept("a thicker hook");
}

TEST_F(PlaceToy, APlaceThatIsNotThereIsNamedAndThePieceStandsByItself) {
    toy.pieces = PieceList{test::ball_piece(24), test::cup_piece(18, 4)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 400}}};
    const PlacedToy placed = place();
    ASSERT_EQ(placed.problems.size(), 1u);
    EXPECT_EQ(placed.problems[0].fault, JoinFault::no_such_place);
    EXPECT_FALSE(placed.pieces[1].join);
}

}  // namespace
}  // namespace roundwright
