#include "core/face/mesh_geodesic.h"

#include <Eigen/Geometry>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "core/face/face_surface.h"
#include "core/mesh/mean_surface.h"
#include "core/mesh/revolve.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/mesh/bent_tube.h"
#include "tests/core/shape/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

Vec3 on_sphere(double up, double angle, double radius = 40) {
    return radius * Vec3(std::cos(up) * std::sin(angle), std::sin(up), std::cos(up) * std::cos(angle));
}

/// Rings of points from (up, angle), each with its normal.
template <class At>
Mesh mesh_of(int rings, int around, const At& at) {
    MeanSurface surface;
    for (int ring = 0; ring <= rings; ++ring) {
        auto& loop = surface.loops.emplace_back();
        for (int k = 0; k < around; ++k)
            loop.push_back({at(static_cast<double>(ring) / rings, -2 * pi * k / around), Vec3::UnitY()});
    }
    return smooth_mesh(surface, 1);
}

Mesh sphere_mesh() {
    return mesh_of(64, 128, [](double up, double angle) {
        return up > 0 && up < 1 ? on_sphere(pi * (up - 0.5), angle) : Vec3(0, up > 0 ? 40 : -40, 0);
    });
}

TEST(MeshGeodesic, OnASphereItIsTheGreatCircleAlsoOverAPole) {
    const MeshGeodesics sphere(sphere_mesh());
    std::mt19937 random(5);
    std::uniform_real_distribution<double> up(-1.5, 1.5), angle(-pi, pi);
    for (int k = 0; k < 200; ++k) {
        const Vec3 a = on_sphere(up(random), angle(random)), b = on_sphere(up(random), angle(random));
        const double expected = 40 * std::atan2(a.cross(b).norm(), a.dot(b));
        EXPECT_NEAR(sphere.distance_mm(a, b), expected, 0.002 * expected + 0.02);
    }
    EXPECT_NEAR(sphere.distance_mm(on_sphere(1.3, 0), on_sphere(1.3, pi)), 40 * (pi - 2.6), 0.05);
}

// Unrolled, a cylinder is a plane, so the mesh is exact but for its chords.
TEST(MeshGeodesic, OnACylinderItIsTheStraightLineUnrolled) {
    const MeshGeodesics cylinder(mesh_of(50, 128, [](double up, double angle) {
        return Vec3(20 * std::sin(angle), 60 * up, 20 * std::cos(angle));
    }));
    std::mt19937 random(6);
    std::uniform_real_distribution<double> up(0, 60), angle(-pi, pi);
    for (int k = 0; k < 200; ++k) {
        const double turn = angle(random), low = up(random), high = up(random);
        const Vec3 a(0, low, 20), b(20 * std::sin(turn), high, 20 * std::cos(turn));
        EXPECT_NEAR(cylinder.distance_mm(a, b), std::hypot(20 * turn, high - low), 0.005 * 20 * pi)
            << "where the way round the other side is as long, either may be found";
    }
}

TEST(MeshGeodesic, OnABentTubeItIsShortestInside) {
    const BentTube::Size size;
    const BentTube tube(size);
    const MeshGeodesics mesh(smooth_mesh(mean_surface(tube, 128), 6));
    const double r = size.tube_radius_mm, bend = size.bend_radius_mm;
    const auto at = [&](double share, double out, double front) {
        const double turn = size.bend * share;
        return Vec3(bend * (std::cos(turn) - 1) + out * std::cos(turn), (bend + out) * std::sin(turn), front);
    };
    EXPECT_NEAR(mesh.distance_mm(at(0.1, -r, 0), at(0.9, -r, 0)), (bend - r) * 0.8 * size.bend, 0.05);
    EXPECT_NEAR(mesh.distance_mm(at(0.5, r, 0), at(0.5, -r, 0)), pi * r, 0.05);
    // Its ends are closed by flat fans: straight over them.
    EXPECT_NEAR(mesh.distance_mm(at(0, 0, r / 2), at(0, 0, -r / 2)), r, 0.05);
    // Outside along the bend is longer than the way that leans to the inside.
    const double outside = mesh.distance_mm(at(0.1, r, 0), at(0.9, r, 0));
    EXPECT_LT(outside, (bend + r) * 0.8 * size.bend + 0.02);
    EXPECT_GT(outside, (bend - r) * 0.8 * size.bend);
}

TEST(MeshGeodesic, IsAMetric) {
    const MeshGeodesics mesh(smooth_mesh(mean_surface(BentTube({}), 96), 4));
    std::mt19937 random(8);
    std::uniform_real_distribution<double> along(0, 10), around(0, 18);
    const auto any = [&] {
        const double edge = std::floor(along(random));
        return BentTube({}).on_edge(static_cast<std::size_t>(edge), around(random), 0, 0).place;
    };
    for (int k = 0; k < 60; ++k) {
        const Vec3 a = any(), b = any(), c = any();
        const double ab = mesh.distance_mm(a, b), bc = mesh.distance_mm(b, c), ac = mesh.distance_mm(a, c);
        EXPECT_NEAR(ab, mesh.distance_mm(b, a), 1e-3 * ab + 1e-6);
        EXPECT_GE(ab + bc, ac * (1 - 1e-3));
        EXPECT_GE(ab, (a - b).norm() * (1 - 1e-3));
        EXPECT_EQ(mesh.distance_mm(a, a), 0);
    }
}

TEST(MeshGeodesic, NothingHasNoWayAndPartsThatDoNotMeetHaveTheStraightOne) {
    EXPECT_EQ(MeshGeodesics({}).distance_mm({1, 2, 3}, {4, 5, 6}), 0);
    Mesh two;
    two.positions = {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 5, 1, 0, 5, 0, 1, 5};
    two.indices = {0, 1, 2, 3, 4, 5};
    EXPECT_EQ(MeshGeodesics(two).distance_mm({0, 0, 0}, {0, 0, 5}), 5);
}

// The closed form of round pieces is the fast path: held against the mesh. (Its meridian may swing beyond
// the loops at a sharp rim, so the pieces are such as toys have.)
TEST(MeshGeodesic, OfARandomRoundPieceIsTheClosedForm) {
    std::mt19937 random(41);
    int compared = 0;
    for (int k = 0; k < testing::random_cases(400); ++k) {
        Piece piece;
        piece.end = k % 2 == 0 ? End::drawn_closed : End::left_open;
        for (const int count : random_toy_counts(random))
            piece.rounds.emplace_back().working = WorkedEvenly{count};
        const StitchGraph graph = piece_graph(piece).graph;
        const Shape shape = solve_shape(shape_problem(piece, graph, {5, 5, 0, 0}));
        if (!shape.usable() || shape.flattened() || shape.termination != Termination::converged) continue;
        const FaceSurface face(piece, shape);
        const auto fabric = revolved_fabric(piece, graph, shape, {});
        ASSERT_TRUE(fabric);
        const MeshGeodesics mesh(smooth_mesh(mean_surface(*fabric, 128), 4));
        std::uniform_real_distribution<double> along(0, face.end_mm()), angle(-pi, pi), near(-15, 15);
        for (int pair = 0; pair < 4; ++pair) {
            const bool as_eyes = pair % 2 == 0;
            const auto beside = [&](double way) { return std::clamp(way, 15.0, face.end_mm() - 15); };
            SurfacePlace a{along(random), angle(random)}, b{along(random), angle(random)};
            if (as_eyes) {
                a.along_mm = beside(a.along_mm);
                b = {beside(a.along_mm + near(random)), a.angle + b.angle / 2};
            }
            const double closed = face.distance_along_mm(a, b);
            const double found = mesh.distance_mm(face.at(a).point, face.at(b).point);
            const double allowed = 0.01 * closed + 0.3;
            // Farther apart the way leads over more rims, where the two surfaces are not quite the same.
            EXPECT_LT(found, closed + (as_eyes ? 1.1 : 2) * allowed);
            // The closed form turns by equal angles, which makes ways past a pole up to a tenth too long.
            EXPECT_GT(found, closed - (as_eyes ? allowed : 0.12 * closed + 0.3))
                << "piece " << k << ": " << a.along_mm << ", " << a.angle << " to " << b.along_mm << ", "
                << b.angle << " of " << face.end_mm();
            ++compared;
        }
    }
    EXPECT_GT(compared, testing::random_cases(400) / 4);
}

}  // namespace
}  // namespace roundwright::test
