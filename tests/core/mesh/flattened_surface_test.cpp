#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <optional>
#include <random>

#include "core/face/face_surface.h"
#include "core/face/mesh_geodesic.h"
#include "core/mesh/mean_surface.h"
#include "core/mesh/ray_cast.h"
#include "core/mesh/revolve.h"
#include "core/study/study_surface.h"
#include "tests/core/checks/checked_piece.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/core/shape/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

struct Case {
    std::vector<int> counts;
    End end;
    Start start = MagicRing{};
    double stretch = unstuffed_stretch;
    bool at_top = false;
};

const std::vector<int> ear{6, 12, 18, 24, 24, 24, 24, 24};
const std::vector<int> fin{4, 8, 12, 16, 20, 24, 28};
const std::vector<int> head{6, 12, 18, 24, 30, 30, 30, 30, 30, 24, 18, 12, 6};
const Case cases[] = {{ear, End::sewn_straight},
                      {ear, End::sewn_straight, MagicRing{}, medium_stuffing_stretch},
                      {ear, End::left_open},
                      {ear, End::sewn_straight, MagicRing{}, unstuffed_stretch, true},
                      {fin, End::sewn_straight},
                      {fin, End::sewn_straight, MagicRing{}, light_stuffing_stretch, true},
                      {head, End::drawn_closed},
                      {{20, 20, 20, 20, 20, 20, 20}, End::left_open, OpenTube{20}},
                      {{20, 20, 20, 20, 20, 20, 20}, End::sewn_straight, OpenTube{20}},
                      {{20, 20, 20, 20, 20, 20, 20, 20}, End::sewn_straight, OvalChain{10}},
                      {{20, 20, 20, 20, 20, 20, 20, 20}, End::left_open, OvalChain{10}}};

Toy toy_of_case(const Case& c) {
    Toy toy = toy_of(c.counts);
    Piece& piece = toy.pieces.front();
    piece.end = c.end;
    piece.start = c.start;
    piece.area_stretch = c.stretch;
    piece.starts_at_top = c.at_top;
    return toy;
}

Vec3 vertex(const Mesh& mesh, std::uint32_t i) {
    return {mesh.positions[3u * i], mesh.positions[3u * i + 1], mesh.positions[3u * i + 2]};
}

/// Where a line from the front to the back meets the mesh, by depth, and whether it goes in there.
std::vector<std::pair<double, bool>> crossings(const Mesh& mesh, double x, double y) {
    std::vector<std::pair<double, bool>> found;
    for (std::size_t t = 0; t < mesh.triangle_count(); ++t) {
        const Vec3 a = vertex(mesh, mesh.indices[3 * t]);
        const Vec3 b = vertex(mesh, mesh.indices[3 * t + 1]);
        const Vec3 c = vertex(mesh, mesh.indices[3 * t + 2]);
        const double whole = (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
        if (whole == 0) continue;
        const double u = ((x - a.x()) * (c.y() - a.y()) - (y - a.y()) * (c.x() - a.x())) / whole;
        const double v = ((b.x() - a.x()) * (y - a.y()) - (b.y() - a.y()) * (x - a.x())) / whole;
        if (u < 0 || v < 0 || u + v > 1) continue;
        found.emplace_back(-(a.z() + u * (b.z() - a.z()) + v * (c.z() - a.z())), whole > 0);
    }
    std::ranges::sort(found);
    // What only grazes the relief of a fold.
    constexpr double graze_mm = 0.05;
    for (std::size_t i = 1; i < found.size();)
        if (found[i].first - found[i - 1].first < graze_mm && found[i].second != found[i - 1].second)
            found.erase(found.begin() + static_cast<std::ptrdiff_t>(i) - 1,
                        found.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        else
            ++i;
    return found;
}

/// In and out by turns, from the front: no layer lies beyond the one behind it.
void expect_layers_in_order(const Mesh& mesh, const Shape& shape, unsigned seed, const std::string& name) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> across(-shape.width_mm / 2, shape.width_mm / 2);
    std::uniform_real_distribution<double> up(0, shape.height_mm);
    for (int k = 0; k < 40; ++k) {
        const auto found = crossings(mesh, across(random), up(random));
        ASSERT_EQ(found.size() % 2, 0u) << name;
        std::string depths;
        for (const auto& [depth, in] : found) depths += (in ? " in " : " out ") + std::to_string(depth);
        for (std::size_t i = 0; i < found.size(); ++i)
            ASSERT_EQ(found[i].second, i % 2 == 0) << name << ", line " << k << ":" << depths;
    }
}

void expect_sound(const Toy& toy, const std::string& name, unsigned seed) {
    const PieceStudy study = study_piece(toy, 0);
    ASSERT_TRUE(study.measures().usable()) << name;
    RevolveOptions options;
    options.most_triangles = 12'000;
    const StitchSurface surface = study_surface(toy, 0, study, options);
    const MeshMeasures mesh = measure(surface.mesh);
    EXPECT_TRUE(mesh.finite) << name;
    EXPECT_TRUE(mesh.unit_normals) << name;
    EXPECT_EQ(mesh.odd_edges, 0u) << name;
    EXPECT_GT(mesh.volume_mm3, 0) << name;
    const Piece& piece = toy.pieces.front();
    const bool hole_below = std::holds_alternative<OpenTube>(piece.start);
    EXPECT_EQ(mesh.euler_characteristic, hole_below && piece.end == End::left_open ? 0 : 2) << name;
    if (study.problem().limp) expect_layers_in_order(surface.mesh, study.revolved(), seed, name);
    if (!study.measures().flattened) return;
    float low = 1e9F, high = -1e9F, side = 0, front = 0;
    for (std::size_t v = 0; v < surface.mesh.positions.size(); v += 3) {
        side = std::max(side, std::abs(surface.mesh.positions[v]));
        low = std::min(low, surface.mesh.positions[v + 1]);
        high = std::max(high, surface.mesh.positions[v + 1]);
        front = std::max(front, std::abs(surface.mesh.positions[v + 2]));
    }
    constexpr double relief_mm = 2.5;
    EXPECT_NEAR(2 * side, study.measures().width_mm, 2 * relief_mm) << name;
    EXPECT_NEAR(high - low, study.measures().height_mm, 2 * relief_mm) << name;
    EXPECT_NEAR(low, 0, relief_mm) << name;
    EXPECT_NEAR(2 * front, study.measures().depth_mm, 2 * relief_mm) << name;
}

TEST(FlattenedSurface, IsClosedOutwardAndInLayers) {
    for (std::size_t k = 0; k < std::size(cases); ++k)
        expect_sound(toy_of_case(cases[k]), "case " + std::to_string(k), static_cast<unsigned>(k));
}

TEST(FlattenedSurface, OfRandomToysIsClosedOutwardAndInLayers) {
    for (int number = 1; number <= testing::random_cases(1'000); ++number) {
        std::mt19937 random(static_cast<unsigned>(number));
        Case c{random_toy_counts(random), End::drawn_closed};
        c.end = static_cast<End>(random() % 3);
        if (c.end != End::drawn_closed) c.counts.resize(std::max<std::size_t>(3, 2 * c.counts.size() / 3));
        c.at_top = random() % 3 == 0;
        expect_sound(toy_of_case(c), "toy " + std::to_string(number), static_cast<unsigned>(number));
        if (HasFatalFailure()) return;
    }
}

// A closed flattened piece holds what its shape says.
TEST(FlattenedSurface, HoldsTheVolumeOfItsShape) {
    for (const Case& c : cases) {
        if (c.end == End::left_open || std::holds_alternative<OpenTube>(c.start)) continue;
        const Toy toy = toy_of_case(c);
        const PieceStudy study = study_piece(toy, 0);
        RevolveOptions smooth;
        smooth.relief = Relief::none;
        const MeshMeasures mesh = measure(study_surface(toy, 0, study, smooth).mesh);
        EXPECT_NEAR(mesh.volume_mm3, study.measures().volume_mm3, 0.1 * study.measures().volume_mm3);
    }
}

// A click on the fabric finds the place that features are laid at, on the front and on the back.
TEST(FlattenedSurface, IsTheSurfaceThatFeaturesAreLaidOn) {
    for (const Case& c : cases) {
        Toy toy = toy_of_case(c);
        toy.pieces.front().face_degrees = 20;
        const PieceStudy study = study_piece(toy, 0);
        const FaceSurface face(toy.pieces.front(), study.revolved());
        for (const double along : {0.2, 0.45, 0.7, 0.9}) {
            for (const double angle : {-2.8, -1.0, -0.2, 0.3, 1.1, 2.6}) {
                const SurfacePlace place{along * face.end_mm(), angle};
                const SurfacePoint at = face.at(place);
                EXPECT_NEAR(at.normal.norm(), 1, 1e-9);
                EXPECT_NEAR(at.up.dot(at.normal), 0, 1e-9);
                EXPECT_NEAR(at.right.dot(at.up), 0, 1e-9);
                const SurfacePoint again = face.at(face.nearest(at.point));
                EXPECT_LT((again.point - at.point).norm(), 0.1);
                EXPECT_GT(again.normal.dot(at.normal), 0.9);
            }
        }
        EXPECT_NEAR(face.width_mm(), study.measures().width_mm, 1e-9);
    }
}

// Within a layer the straight line is what the mesh gives too; from front to back the way goes over a fold,
// and no further than all around.
TEST(FlattenedSurface, DistancesWithinALayerAreStraightAndLeadOverAFoldToTheOther) {
    for (const Case& c : cases) {
        const Toy toy = toy_of_case(c);
        const PieceStudy study = study_piece(toy, 0);
        const Piece& piece = toy.pieces.front();
        const FaceSurface face(piece, study.revolved());
        const auto fabric = revolved_fabric(piece, study.graph().graph, study.revolved(), {});
        ASSERT_TRUE(fabric);
        const MeshGeodesics mesh(smooth_mesh(mean_surface(*fabric, 96), 2));
        for (const double along : {0.3, 0.5, 0.8}) {
            const SurfacePlace left{along * face.end_mm(), -0.7}, right{along * face.end_mm(), 0.7};
            const SurfacePoint a = face.at(left), b = face.at(right);
            if (a.normal.z() < 0.999 || b.normal.z() < 0.999) continue;
            EXPECT_NEAR(face.distance_along_mm(left, right), mesh.distance_mm(a.point, b.point),
                        0.01 * (a.point - b.point).norm() + 0.1);
            const SurfacePlace behind{left.along_mm, pi - 0.2};
            const double over = face.distance_along_mm(left, behind);
            EXPECT_GT(over, (a.point - face.at(behind).point).norm());
            EXPECT_LT(over, 2 * pi * face.at(left).radius_mm);
            EXPECT_NEAR(over, face.distance_along_mm(behind, left), 0.01 * over);
        }
    }
}

}  // namespace
}  // namespace roundwright::test
