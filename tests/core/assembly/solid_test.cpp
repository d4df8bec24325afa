#include "core/assembly/solid.h"

#include <gtest/gtest.h>
#include <numbers>

#include "core/assembly/study_solved.h"
#include "tests/core/assembly/handbook_solids.h"

namespace roundwright {
namespace {

using std::numbers::pi;

/// Of a solid made of flat faces, within so much of the true one.
constexpr double fine = 1e-3;

void expect_volume(const Solid& solid, double mm3, const Vec3& centre) {
    const VolumeMeasure found = measure_volume(solid);
    EXPECT_NEAR(found.volume_mm3 / mm3, 1, 2 * fine);
    EXPECT_NEAR((found.centre - centre).norm(), 0, 5 * fine);
}

// Volumes and centres of mass: I. N. Bronshtein, K. A. Semendyayev, Handbook of Mathematics, "Solids"; the
// torus by Pappus's theorem.
TEST(SolidMeasures, AreThoseOfHandbookSolids) {
    expect_volume(test::ball(3, Vec3(1, 2, 3)), 4.0 / 3 * pi * 27, Vec3(1, 2, 3));
    expect_volume(test::cone(2, 5), pi * 4 * 5 / 3, Vec3(0, 5.0 / 4, 0));
    // A cap of height h of a ball of radius R: pi h^2 (3 R - h) / 3, its centre 3 (2 R - h)^2 / (4 (3 R - h))
    // from the middle of the ball.
    expect_volume(test::cap(5, 2), 54.454272662223, Vec3(0, 3 * 64 / (4.0 * 13) - 3, 0));
    expect_volume(test::torus(3, 1), 2 * pi * 3 * pi, Vec3::Zero());
    expect_volume(test::box({1, 1, 1}, {2, 3, 4}), 6, Vec3(1.5, 2, 2.5));
}

TEST(SolidMeasures, KeepTheirDigitsFarFromTheOrigin) {
    const VolumeMeasure found = measure_volume(test::box({1e6, 1e6, 1e6}, {1e6 + 1, 1e6 + 1, 1e6 + 1}));
    EXPECT_NEAR(found.volume_mm3, 1, 1e-6);
    EXPECT_NEAR((found.centre - Vec3::Constant(1e6 + 0.5)).norm(), 0, 1e-6);
}

TEST(SolidMeasures, TheFabricOfASolidLeavesOutWhatClosesIt) {
    Solid open = test::box({0, 0, 0}, {1, 1, 1});
    EXPECT_NEAR(measure_area(open).area_mm2, 6, 1e-12);
    open.fabric = open.triangles.size() - 2;
    EXPECT_NEAR(measure_area(open).area_mm2, 5, 1e-12);
    EXPECT_NEAR((measure_area(open).centre - Vec3(0.4, 0.5, 0.5)).norm(), 0, 1e-12);
}

// The lens of two balls: pi (4 R + d) (2 R - d)^2 / 12 for equal radii R whose middles are d apart (E. W.
// Weisstein, Sphere-Sphere Intersection, MathWorld).
TEST(OverlapVolume, OfTwoBallsIsTheirLens) {
    for (const double apart : {0.5, 1.0, 3.0, 5.0, 5.8}) {
        const double lens = pi * (12 + apart) * (6 - apart) * (6 - apart) / 12;
        for (const Vec3& way : {Vec3(1, 0, 0), Vec3(0, 0, 1), Vec3(0.6, 0.8, 0)}) {
            const double found = overlap_volume_mm3(test::ball(3), test::ball(3, apart * way), 128);
            // The balls have flat faces, which takes most from a thin lens.
            EXPECT_NEAR(found, lens, 5e-3 * lens + 2e-3) << apart;
        }
    }
}

TEST(OverlapVolume, OfABallWithinAnotherIsItsOwnAndOfTwoApartIsNone) {
    EXPECT_NEAR(overlap_volume_mm3(test::ball(5), test::ball(1, Vec3(1, 1, 1)), 128) / (4.0 / 3 * pi), 1,
                5e-3);
    EXPECT_EQ(overlap_volume_mm3(test::ball(1), test::ball(1, Vec3(0, 2.01, 0))), 0);
    EXPECT_EQ(overlap_volume_mm3(test::ball(1), Solid{}), 0);
}

TEST(OverlapVolume, CountsNoLineTwiceWhereTrianglesMeetOnIt) {
    // The grid's lines run through corners and edges of both boxes.
    const Solid a = test::box({0, 0, 0}, {4, 4, 4});
    for (const int across : {1, 2, 3, 4, 7, 8})
        EXPECT_NEAR(overlap_volume_mm3(a, test::box({1, 1, 1}, {3, 3, 3}), across), 8, 1e-5) << across;
}

TEST(SolidOfAPiece, HasThePiecesVolumeAndSize) {
    Toy toy;
    Piece piece;
    for (int n = 6; n <= 36; n += 6)
        piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
    for (int i = 0; i < 6; ++i) piece.rounds.push_back({.working = WorkedEvenly{.stitches = 36}, .note = {}});
    for (int n = 30; n > 0; n -= 6)
        piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
    for (const End end : {End::left_open, End::drawn_closed, End::sewn_straight}) {
        piece.end = end;
        toy.pieces = PieceList{piece};
        const SolvedPiece solved = solved_piece(toy, 0, study_shape(toy, 0));
        ASSERT_TRUE(solved.solid);
        EXPECT_NEAR(measure_volume(*solved.solid).volume_mm3 / solved.measures.volume_mm3, 1, 0.005);
        EXPECT_EQ(solved.stuffed, solved.solid);
    }
    toy.pieces[0].stuffed_rounds = RoundSpan{0, 5};
    const SolvedPiece part = solved_piece(toy, 0, study_shape(toy, 0));
    EXPECT_LT(measure_volume(*part.stuffed).volume_mm3, 0.5 * measure_volume(*part.solid).volume_mm3);
}

}  // namespace
}  // namespace roundwright
