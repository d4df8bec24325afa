#include "core/assembly/seam_line.h"

#include <gtest/gtest.h>
#include <numbers>

#include "core/assembly/placed_surface.h"
#include "core/assembly/seam_measures.h"
#include "core/assembly/study_solved.h"
#include "core/study/study_surface.h"

namespace roundwright {
namespace {

using std::numbers::pi;

std::shared_ptr<const Piece> shared(Piece piece) { return std::make_shared<const Piece>(std::move(piece)); }

/// A piece that lies as these circles say.
SolvedPiece lying_as(const Piece& piece, std::vector<double> radius_mm, std::vector<double> z_mm) {
    Shape shape;
    shape.termination = Termination::converged;
    shape.radius_mm = std::move(radius_mm);
    shape.z_mm = std::move(z_mm);
    shape.course_stretch.assign(shape.radius_mm.size(), 0);
    shape.wale_stretch.assign(shape.radius_mm.size() - 1, 0);
    for (const double r : shape.radius_mm) shape.width_mm = std::max(shape.width_mm, 2 * r);
    shape.height_mm = shape.depth_mm = shape.z_mm.back();
    SolvedPiece solved{.id = PieceId::none,
                       .piece = shared(piece),
                       .surface = FaceSurface(piece, shape),
                       .measures = measures_of(ShapeProblem{}, shape),
                       .stitches = {},
                       .fabric_mm = 2,
                       .solid = {},
                       .stuffed = {},
                       .made_of = {}};
    for (std::size_t i = 1; i < shape.radius_mm.size(); ++i) solved.stitches.push_back(24);
    return solved;
}

/// A ball of radius R in so many rounds, from pole to pole.
SolvedPiece ball(double radius, int rounds = 60) {
    std::vector<double> r, z;
    for (int i = 0; i <= rounds; ++i) {
        const double angle = pi * i / rounds;
        r.push_back(i == rounds ? 0.01 : radius * std::sin(angle));
        z.push_back(radius * (1 - std::cos(angle)));
    }
    r.front() = 0;
    Piece piece;
    piece.rounds.resize(static_cast<std::size_t>(rounds));
    piece.end = End::drawn_closed;
    return lying_as(piece, r, z);
}

/// An open tube of radius a.
SolvedPiece tube(double radius, int rounds = 10) {
    Piece piece;
    piece.start = OpenTube{12};
    piece.rounds.resize(static_cast<std::size_t>(rounds));
    std::vector<double> r(static_cast<std::size_t>(rounds) + 1, radius), z;
    for (int i = 0; i <= rounds; ++i) z.push_back(4.0 * i);
    return lying_as(piece, r, z);
}

SeamLine line_of(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto) {
    return seam_line(join, piece, onto, *frame_of_end(piece, join.end), *frame_of_place(onto, join.at));
}

/// The profile of the ball is a spline through its loops.
constexpr double on_it_mm = 0.1;

TEST(SeamLine, AnEdgeSewnToABallLiesOnItAndKeepsItsLength) {
    const double radius = 30;
    const SolvedPiece onto = ball(radius);
    for (const double edge : {4.0, 9.0, 15.0, 24.0, 29.0}) {
        for (const int round : {1, 8, 14, 29, 50}) {
            const SolvedPiece piece = tube(edge);
            const SeamLine line =
                line_of({.piece = {}, .onto = {}, .at = {.round = round, .stitches_right = 3}}, piece, onto);
            ASSERT_EQ(line.points.size(), points_of_seam);
            EXPECT_NEAR(line.length_mm, 2 * pi * edge, 0.1) << edge << " " << round;
            const Vec3 middle(0, radius, 0);
            // On a ball it is a circle in a plane, as far from its middle all the way round.
            for (const SurfaceSpot& spot : line.points) {
                EXPECT_NEAR((spot.place - middle).norm(), radius, on_it_mm);
                EXPECT_NEAR((spot.place - line.middle()).norm(), edge, 0.1) << edge << " " << round;
                EXPECT_NEAR(spot.normal.dot((spot.place - middle).normalized()), 1, 1e-3);
            }
        }
    }
}

TEST(SeamLine, AboutAPoleItIsALoopOfThePiece) {
    const SolvedPiece onto = ball(30);
    for (const int round : {-1, 59}) {
        const SeamLine line = line_of({.piece = {}, .onto = {}, .at = {.round = round}}, tube(12), onto);
        ASSERT_EQ(line.form, SeamForm::circle);
        EXPECT_NEAR(line.length_mm, 2 * pi * 12, 0.1);
        for (const SurfaceSpot& spot : line.points)
            EXPECT_NEAR(spot.place.y(), line.points.front().place.y(), 1e-3);
    }
}

TEST(SeamLine, OfAnEdgeLongerThanAnyCircleIsTheLongest) {
    const SeamLine line = line_of({.piece = {}, .onto = {}, .at = {.round = 29}}, tube(40), ball(30));
    EXPECT_NEAR(line.length_mm, 2 * pi * 30, 0.2);
}

TEST(SeamLine, OnATubeThereIsNoTurnToEitherSide) {
    // Unrolled, a geodesic circle on a cylinder is a circle: its radius is the distance along.
    const SolvedPiece onto = tube(20, 30);
    const SolvedPiece piece = tube(8);
    const SeamLine line =
        line_of({.piece = {}, .onto = {}, .at = {.round = 15, .stitches_right = 2}}, piece, onto);
    const Vec3 at = frame_of_place(onto, {.round = 15, .stitches_right = 2})->point;
    const double zero = std::atan2(at.x(), at.z());
    double least = 1e9, most = 0;
    for (const SurfaceSpot& spot : line.points) {
        const double around = 20 * std::remainder(std::atan2(spot.place.x(), spot.place.z()) - zero, 2 * pi);
        const double distance = std::hypot(around, spot.place.y() - at.y());
        least = std::min(least, distance);
        most = std::max(most, distance);
        EXPECT_NEAR(std::hypot(spot.place.x(), spot.place.z()), 20, 1e-6);
    }
    EXPECT_NEAR(most, least, 0.02);
}

TEST(SeamLine, AroundAPieceItIsItsLoop) {
    const SolvedPiece onto = ball(30);
    const SeamLine line =
        line_of({.piece = {}, .onto = {}, .at = {.round = 45, .around = true}}, tube(15), onto);
    EXPECT_EQ(line.form, SeamForm::ring);
    EXPECT_NEAR(line.length_mm, 2 * pi * 30 * std::sin(pi * 46 / 60), 0.05);
}

TEST(SeamLine, AStraightSeamLiesStraightOnTheSurface) {
    const SolvedPiece onto = ball(30);
    Piece flat;
    flat.end = End::sewn_straight;
    SolvedPiece piece = tube(8);
    for (const double turn : {0.0, 40.0, 90.0}) {
        const SeamLine line = line_of(
            {.piece = {}, .onto = {}, .seam = Seam::straight, .at = {.round = 29}, .turn_degrees = turn},
            piece, onto);
        EXPECT_NEAR(line.length_mm, pi * 8, 0.05);
        // A great circle: in a plane with the middle of the ball.
        const Vec3 middle(0, 30, 0);
        const Vec3 across =
            (line.points[9].place - middle).cross(line.points[63].place - middle).normalized();
        for (const SurfaceSpot& spot : line.points)
            EXPECT_NEAR((spot.place - middle).dot(across), 0, 0.05) << turn;
    }
}

TEST(SeamLine, AClosedEndAndWhatHangsHaveNone) {
    const SolvedPiece onto = ball(30);
    EXPECT_TRUE(
        line_of({.piece = {}, .onto = {}, .end = JoinedEnd::end, .at = {.round = 29}}, ball(10, 12), onto)
            .empty());
    EXPECT_TRUE(
        line_of({.piece = {}, .onto = {}, .seam = Seam::hung, .at = {.round = 29}}, tube(5), onto).empty());
}

struct SewnToys : ::testing::Test {
    Piece round_piece(int most, End end) {
        Piece piece;
        for (int n = 6; n < most; n += 6)
            piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
        for (int i = 0; i < most / 6; ++i)
            piece.rounds.push_back({.working = WorkedEvenly{.stitches = most}, .note = {}});
        piece.end = end;
        if (end == End::left_open) return piece;
        for (int n = most - 6; n > 0; n -= 6)
            piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
        return piece;
    }
    AssembledToy together(const AssembledToy* before = nullptr) {
        std::vector<SolvedPiece> solved;
        std::vector<std::shared_ptr<const StitchSurface>> own;
        for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
            const PieceStudy study = study_shape(toy, i);
            solved.push_back(solved_piece(toy, i, study));
            own.push_back(std::make_shared<const StitchSurface>(study_surface(toy, i, study)));
        }
        return assemble(toy, solved, own, before);
    }
    PieceCopy copy(std::size_t piece, int number = 0) const { return {toy.pieces.id(piece), number}; }
    Toy toy;
};

TEST_F(SewnToys, TheEdgeOfThePlacedSurfaceLiesOnTheOtherAndTheFarEndStaysRigid) {
    toy.pieces = PieceList{round_piece(48, End::drawn_closed), round_piece(24, End::left_open)};
    toy.joins = {
        {.piece = copy(1), .onto = copy(0), .at = {.round = 9, .stitches_right = 5}, .lean_degrees = 20}};
    const AssembledToy made = together();
    ASSERT_TRUE(made.surfaces[1]);
    const auto edge = edge_points(made.solved[1], JoinedEnd::end);
    for (const Vec3& point : edge) {
        const Vec3 placed = made.forms[1].place(point);
        const SurfacePlace nearest = made.solved[0].surface.nearest(placed);
        EXPECT_NEAR((made.solved[0].surface.at(nearest).point - placed).norm(), 0, 0.1);
    }
    const Vec3 pole = frame_of_end(made.solved[1], JoinedEnd::start)->point;
    EXPECT_NEAR((made.forms[1].place(pole) - made.placed.pieces[1].pose * pole).norm(), 0, 0.05);
    const auto measures = seam_measures(toy, made.placed, made.solved, 1);
    ASSERT_TRUE(measures);
    EXPECT_NEAR(measures->stretch(), 0, 2e-3);
    EXPECT_EQ(measures->stitches, 24);
    EXPECT_LT(measures->lowest_round, 9);
    EXPECT_GT(measures->highest_round, 9);
    for (const float value : made.surfaces[1]->mesh.positions) ASSERT_TRUE(std::isfinite(value));
    for (std::size_t i = 0; i < made.surfaces[1]->mesh.normals.size(); i += 3) {
        const auto& n = made.surfaces[1]->mesh.normals;
        ASSERT_NEAR(std::hypot(n[i], n[i + 1], n[i + 2]), 1, 1e-5);
    }
}

TEST_F(SewnToys, OnATopThatIsAStartAnOpenEdgeStandsOnIt) {
    toy.pieces = PieceList{round_piece(36, End::drawn_closed), round_piece(18, End::left_open)};
    toy.pieces[0].starts_at_top = true;
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = -1}}};
    const AssembledToy made = together();
    const double top = made.solved[0].measures.height_mm;
    EXPECT_NEAR(frame_of_place(made.solved[0], toy.joins[0].at)->point.y(), top, 0.1);
    EXPECT_NEAR(made.placed.pieces[1].line->length_mm, sewn_edge(made.solved[1], JoinedEnd::end).stitches_mm,
                0.1);
    const Vec3 far = frame_of_end(made.solved[1], JoinedEnd::start)->point;
    EXPECT_GT((made.placed.pieces[1].pose * far).y(), top + 10);
    toy.joins[0].at = {.round = 3, .around = true};
    EXPECT_GT(frame_of_place(made.solved[0], toy.joins[0].at)->point.y(), top / 2);
}

// Two layers sewn along one line are open between them, which the fabric that they are sewn to closes.
TEST_F(SewnToys, AFlattenedEdgeGoesAsDeepAsItsFabricIsThick) {
    toy.pieces = PieceList{round_piece(48, End::drawn_closed), round_piece(18, End::left_open)};
    toy.pieces[1].end = End::sewn_straight;
    toy.pieces[1].area_stretch = 0;
    toy.joins = {{.piece = copy(1),
                  .onto = copy(0),
                  .seam = Seam::straight,
                  .at = {.round = 9, .stitches_right = 5},
                  .lean_degrees = -60}};
    const AssembledToy made = together();
    for (const Vec3& point : edge_points(made.solved[1], JoinedEnd::end)) {
        const Vec3 placed = made.forms[1].place(point);
        const SurfacePoint on = made.solved[0].surface.at(made.solved[0].surface.nearest(placed));
        EXPECT_NEAR((placed - on.point).dot(on.normal), -made.solved[1].fabric_mm, 0.1);
    }
}

TEST_F(SewnToys, ARingSaysByHowMuchItsStitchesAreGathered) {
    toy.pieces = PieceList{round_piece(48, End::drawn_closed), round_piece(42, End::left_open)};
    const int last = static_cast<int>(toy.pieces[0].rounds.size()) - 1;
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = last - 3, .around = true}}};
    const AssembledToy made = together();
    const auto measures = seam_measures(toy, made.placed, made.solved, 1);
    ASSERT_TRUE(measures);
    // 42 stitches on the loop of 24: gathered by about 3 in 7, less what that loop is stretched by.
    EXPECT_NEAR(measures->line_mm,
                made.solved[0].measures.loops[static_cast<std::size_t>(last - 2)].length_mm(), 0.1);
    EXPECT_LT(measures->stretch(), -0.3);
    EXPECT_GT(measures->stretch(), -0.5);
}

TEST_F(SewnToys, APairMirrorsItsBentEdgesExactly) {
    toy.pieces = PieceList{round_piece(48, End::drawn_closed), round_piece(18, End::left_open)};
    toy.pieces[0].face_degrees = 25;
    toy.pieces[1].face_degrees = -40;
    toy.pieces[1].make = 2;
    toy.joins = {{.piece = copy(1),
                  .onto = copy(0),
                  .pair = true,
                  .at = {.round = 6, .stitches_right = 5},
                  .turn_degrees = 30,
                  .lean_degrees = 20,
                  .sink_mm = 1}};
    const AssembledToy made = together();
    const auto mirror = [](double degrees) -> Eigen::Matrix3d {
        const double turn = degrees * pi / 180;
        const Vec3 right(std::cos(turn), 0, -std::sin(turn));
        return Eigen::Matrix3d::Identity() - 2 * right * right.transpose();
    };
    for (const Vec3& point : made.solved[1].solid->points) {
        const Vec3 image = mirror(25) * made.forms[1].place(point);
        EXPECT_NEAR((made.forms[2].place(Vec3(mirror(-40) * point)) - image).norm(), 0, 1e-9);
    }
}

TEST_F(SewnToys, TheBodyBeginsAroundItsLegs) {
    Piece leg = round_piece(18, End::left_open);
    leg.make = 2;
    Piece body = round_piece(42, End::drawn_closed);
    body.rounds.erase(body.rounds.begin(), body.rounds.begin() + 6);
    body.start = WorkedOn{.stitches = 42, .chains_between = 3};
    toy.pieces = PieceList{body, leg};
    toy.joins = {
        {.piece = copy(1), .onto = copy(0), .pair = true, .seam = Seam::worked_on, .at = {.round = -1}}};
    const AssembledToy made = together();
    ASSERT_TRUE(made.placed.problems.empty());
    const double edge = sewn_edge(made.solved[1], JoinedEnd::end).radius_mm;
    const Vec3 right = made.placed.pieces[1].pose * sewn_edge(made.solved[1], JoinedEnd::end).middle;
    const Vec3 left = made.placed.pieces[2].pose * sewn_edge(made.solved[1], JoinedEnd::end).middle;
    EXPECT_GT(right.x() - left.x(), 2 * edge);
    EXPECT_NEAR(right.x(), -left.x(), 1e-9);
    EXPECT_NEAR(right.y(), left.y(), 1e-9);
    // Every point of the body's first loop lies on one of the two edges, or on the chains between them.
    for (const Vec3& point : edge_points(made.solved[0], JoinedEnd::start)) {
        const Vec3 placed = made.forms[0].place(point);
        const double on_right = std::abs((placed - right).norm() - edge);
        const double on_left = std::abs((placed - left).norm() - edge);
        const bool between = std::abs(placed.x()) < right.x() - edge + 1e-6 && std::abs(placed.z()) < 1e-6;
        EXPECT_TRUE(between || std::min(on_right, on_left) < 0.2);
    }
}

TEST_F(SewnToys, OnlyWhatChangedIsPlacedAgain) {
    toy.pieces = PieceList{round_piece(48, End::drawn_closed), round_piece(18, End::left_open),
                           round_piece(24, End::left_open)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 6, .stitches_right = 5}},
                 {.piece = copy(2), .onto = copy(0), .at = {.round = 12, .stitches_right = 1}}};
    std::vector<PieceStudy> studies;
    std::vector<std::shared_ptr<const StitchSurface>> own;
    const auto solved = [&] {
        std::vector<SolvedPiece> all;
        for (std::size_t i = 0; i < studies.size(); ++i) all.push_back(solved_piece(toy, i, studies[i]));
        return all;
    };
    for (std::size_t i = 0; i < 3; ++i) {
        studies.push_back(study_shape(toy, i));
        own.push_back(std::make_shared<const StitchSurface>(study_surface(toy, i, studies[i])));
    }
    const AssembledToy first = assemble(toy, solved(), own);
    EXPECT_EQ(first.placed_again, 3u);
    const auto lines = seam_lines_found();
    const AssembledToy same = assemble(toy, solved(), own, &first);
    EXPECT_EQ(same.placed_again, 0u);
    EXPECT_EQ(same.surfaces, first.surfaces);
    toy.joins[1].lean_degrees = 10;
    const AssembledToy leant = assemble(toy, solved(), own, &same);
    EXPECT_EQ(leant.placed_again, 1u);
    EXPECT_EQ(seam_lines_found(), lines);
    toy.pieces[2].rounds.pop_back();
    studies[2] = study_shape(toy, 2);
    own[2] = std::make_shared<const StitchSurface>(study_surface(toy, 2, studies[2]));
    const AssembledToy shorter = assemble(toy, solved(), own, &leant);
    EXPECT_EQ(shorter.placed_again, 1u);
    EXPECT_EQ(shorter.surfaces[0], first.surfaces[0]);
    EXPECT_EQ(seam_lines_found(), lines + 1);
}

}  // namespace
}  // namespace roundwright
