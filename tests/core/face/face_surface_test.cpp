#include "core/face/face_surface.h"

#include <Eigen/Geometry>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "tests/core/face/known_shapes.h"

namespace roundwright {
namespace {

using std::numbers::pi;
using test::closed_ball;

// Great circle: cos d/R = sin a sin b + cos a cos b cos(turn) for latitudes a, b (spherical trigonometry,
// Bronshtein and Semendyayev).
double great_circle(double radius, double latitude_a, double latitude_b, double turn) {
    return radius * std::acos(std::sin(latitude_a) * std::sin(latitude_b) +
                              std::cos(latitude_a) * std::cos(latitude_b) * std::cos(turn));
}

TEST(FaceSurface, DistancesOnASphereAreGreatCircles) {
    constexpr double radius = 40;
    constexpr int rounds = 59;
    const FaceSurface surface(closed_ball(), test::sphere_shape(radius, rounds));
    const auto latitude = [](int loop) { return pi * loop / (rounds + 1) - pi / 2; };
    for (int a : {10, 20, 30}) {
        for (int b : {10, 25, 45}) {
            for (double turn : {0.1, 0.7, 1.6, 2.8}) {
                const double expected = great_circle(radius, latitude(a), latitude(b), turn);
                const double found = surface.distance_along_mm({surface.along_of_loop(a), -turn / 2},
                                                               {surface.along_of_loop(b), turn / 2});
                EXPECT_NEAR(found / expected, 1, 3e-4) << a << ' ' << b << ' ' << turn;
            }
        }
    }
}

// A cone unrolls into a sector: d^2 = s1^2 + s2^2 - 2 s1 s2 cos(turn sin(half angle)), while the sector's
// angle stays below pi.
TEST(FaceSurface, DistancesOnAConeAreThoseOfItsUnrolledSector) {
    constexpr double half_angle = pi / 6;
    const FaceSurface surface(Piece{}, test::cone_shape(80, half_angle, 40));
    for (int a : {15, 25, 35}) {
        for (int b : {15, 30}) {
            for (double turn : {0.2, 1.0, 2.5}) {
                const double s1 = 2.0 * a;
                const double s2 = 2.0 * b;
                const double expected =
                    std::sqrt(s1 * s1 + s2 * s2 - 2 * s1 * s2 * std::cos(turn * std::sin(half_angle)));
                const double found = surface.distance_along_mm({surface.along_of_loop(a), 0},
                                                               {surface.along_of_loop(b), turn});
                EXPECT_NEAR(found / expected, 1, 3e-4) << a << ' ' << b << ' ' << turn;
            }
        }
    }
}

TEST(FaceSurface, TheWayOverTheTopIsTakenWhereItIsShorter) {
    constexpr double radius = 40;
    const FaceSurface surface(closed_ball(), test::sphere_shape(radius, 59));
    const double found =
        surface.distance_along_mm({surface.along_of_loop(5), -pi / 2}, {surface.along_of_loop(5), pi / 2});
    EXPECT_NEAR(found, 2 * radius * pi * 5 / 60, 0.02);
}

TEST(FaceSurface, NormalsAndCurvaturesOfASphere) {
    constexpr double radius = 40;
    for (bool starts_at_top : {false, true}) {
        Piece piece = closed_ball();
        piece.starts_at_top = starts_at_top;
        piece.face_degrees = 30;
        const Shape shape = test::sphere_shape(radius, 59);
        const FaceSurface surface(piece, shape);
        const Vec3 centre(0, starts_at_top ? shape.height_mm - radius : radius, 0);
        for (int loop : {5, 20, 30, 50}) {
            const SurfacePoint at = surface.at({surface.along_of_loop(loop), 0.4});
            EXPECT_NEAR((at.point - centre).norm(), radius, 1e-9);
            EXPECT_LT((at.normal - (at.point - centre) / radius).norm(), 2e-3);
            EXPECT_NEAR(at.round_curvature * radius, 1, 5e-3);
            EXPECT_NEAR(at.meridian_curvature * radius, 1, 2e-2);
            EXPECT_NEAR(at.up.dot(at.normal), 0, 1e-12);
            EXPECT_GE(at.up.y(), 0);
            EXPECT_GT(at.up.cross(at.normal).dot(at.right), 0.999);
        }
    }
}

TEST(FaceSurface, NearestIsTheInverseOfAt) {
    Piece piece = closed_ball();
    piece.face_degrees = -50;
    const FaceSurface surface(piece, test::sphere_shape(30, 24));
    for (double along : {10.0, 33.0, 71.5}) {
        for (double angle : {-2.0, 0.0, 1.1}) {
            const SurfacePoint at = surface.at({along, angle});
            const SurfacePlace found = surface.nearest(at.point + 2 * at.normal);
            EXPECT_NEAR(found.along_mm, along, 1e-3);
            EXPECT_NEAR(found.angle, angle, 1e-12);
        }
    }
}

TEST(FaceSurface, AShapeThatIsNotThereTakesNothing) {
    const FaceSurface surface(closed_ball(), Shape{});
    EXPECT_TRUE(surface.empty());
    EXPECT_EQ(surface.distance_along_mm({0, 0}, {1, 1}), 0);
}

}  // namespace
}  // namespace roundwright
