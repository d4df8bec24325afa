#include "core/mesh/ray_cast.h"

#include <Eigen/Geometry>
#include <cmath>
#include <cstdint>
#include <functional>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "core/mesh/revolve.h"
#include "core/mesh/vertex_normals.h"
#include "tests/core/mesh/example_pieces.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using Surface = std::function<Vec3(double, double)>;

/// A grid of cells x cells quads over a surface around one place.
Mesh patch_around(const Surface& surface, double u, double v, double half_side, int cells) {
    Mesh mesh;
    const auto row = static_cast<std::uint32_t>(cells + 1);
    for (int i = 0; i <= cells; ++i) {
        for (int j = 0; j <= cells; ++j) {
            const Vec3 p =
                surface(u + half_side * (2.0 * i / cells - 1), v + half_side * (2.0 * j / cells - 1));
            for (const double x : {p.x(), p.y(), p.z()}) mesh.positions.push_back(static_cast<float>(x));
        }
    }
    for (std::uint32_t i = 0; i + 1 < row; ++i)
        for (std::uint32_t j = 0; j + 1 < row; ++j)
            for (const std::uint32_t k : {i * row + j, (i + 1) * row + j, i * row + j + 1, (i + 1) * row + j,
                                          (i + 1) * row + j + 1, i * row + j + 1})
                mesh.indices.push_back(k);
    set_vertex_normals(mesh);
    return mesh;
}

/// Rays at random places of a surface, from outside at up to 45 degrees. The mesh is so fine around each
/// place that its faces leave the surface by less than 1e-7 of its size: (1e-3 rad)^2 / 8.
void expect_on_surface(const Surface& surface, const std::function<Vec3(double, double)>& normal,
                       const std::function<double(const Vec3&)>& relative_distance, double v_low,
                       double v_high) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> around(0, 2 * std::numbers::pi), along(v_low, v_high),
        one(-0.5, 0.5);
    for (int k = 0; k < 500; ++k) {
        const double u = around(random), v = along(random);
        const Vec3 place = surface(u, v);
        const Vec3 aim = (normal(u, v) + Vec3(one(random), one(random), one(random))).normalized();
        const RayCaster caster(patch_around(surface, u, v, 2e-3, 4));
        const auto hit = caster.first_hit({place + 2 * aim, -aim});
        ASSERT_TRUE(hit) << u << ' ' << v;
        EXPECT_NEAR(relative_distance(hit->point), 0, 1e-6) << u << ' ' << v;
        EXPECT_NEAR(hit->t, 2, 2e-6);
        EXPECT_NEAR(hit->normal.dot(normal(u, v)), 1, 1e-4);
    }
}

TEST(RayCast, MeetsASphere) {
    const double r = 3;
    const auto outward = [](double u, double v) {
        return Vec3(std::cos(v) * std::sin(u), std::sin(v), std::cos(v) * std::cos(u));
    };
    expect_on_surface([&](double u, double v) { return Vec3(r * outward(u, v)); }, outward,
                      [&](const Vec3& p) { return p.norm() / r - 1; }, -1.2, 1.2);
}

TEST(RayCast, MeetsACone) {
    const double half_angle = 0.7;
    const auto outward = [&](double u, double) {
        return Vec3(std::cos(half_angle) * std::sin(u), -std::sin(half_angle),
                    std::cos(half_angle) * std::cos(u));
    };
    expect_on_surface(
        [&](double u, double v) {
            return Vec3(v * std::tan(half_angle) * std::sin(u), v, v * std::tan(half_angle) * std::cos(u));
        },
        outward, [&](const Vec3& p) { return std::hypot(p.x(), p.z()) / (p.y() * std::tan(half_angle)) - 1; },
        1, 3);
}

TEST(RayCast, MeetsATorus) {
    const double big = 3, small = 1;
    const auto outward = [](double u, double v) {
        return Vec3(std::cos(v) * std::sin(u), std::sin(v), std::cos(v) * std::cos(u));
    };
    expect_on_surface(
        [&](double u, double v) {
            const double out = big + small * std::cos(v);
            return Vec3(out * std::sin(u), small * std::sin(v), out * std::cos(u));
        },
        outward, [&](const Vec3& p) { return std::hypot(std::hypot(p.x(), p.z()) - big, p.y()) / small - 1; },
        -3, 3);
}

TEST(RayCast, AgreesWithTryingEveryTriangle) {
    const auto example = test::sphere_piece(4);
    RevolveOptions options;
    options.most_triangles = 1'500;
    const auto surface = revolve(example.toy, example.piece(), example.graph, example.shape, {}, {}, options);
    const RayCaster caster(surface.mesh);
    const double size = example.shape.height_mm;
    std::mt19937 random(11);
    std::uniform_real_distribution<double> place(-1.2 * size, 1.2 * size), aim(-0.6 * size, 0.6 * size);
    int hits = 0;
    for (int k = 0; k < testing::random_cases(100'000); ++k) {
        const Vec3 middle(0, size / 2, 0);
        const Vec3 from = middle + Vec3(place(random), place(random), place(random));
        const Ray ray{from, middle + Vec3(aim(random), aim(random), aim(random)) - from};
        const auto fast = caster.first_hit(ray), slow = first_hit_by_trying_all(surface.mesh, ray);
        ASSERT_EQ(fast.has_value(), slow.has_value()) << k;
        if (!fast) continue;
        ++hits;
        ASSERT_EQ(fast->triangle, slow->triangle) << k;
        ASSERT_EQ(fast->t, slow->t) << k;
        ASSERT_EQ(fast->stitch, surface.mesh.stitch_of_triangle[fast->triangle]) << k;
    }
    EXPECT_GT(hits, testing::random_cases(20'000));
}

TEST(RayCast, NamesTheStitchItMeets) {
    const auto example = test::sphere_piece(5);
    const auto surface = revolve(example.toy, example.piece(), example.graph, example.shape, {}, {});
    const RayCaster caster(surface.mesh);
    for (std::size_t s = 0; s < surface.stitches.size(); ++s) {
        const auto& c = surface.stitches[s].corners;
        const Vec3 centre = (c[0] + c[1] + c[2] + c[3]) / 4;
        const auto hit =
            caster.first_hit({centre + 50 * surface.stitches[s].normal, -surface.stitches[s].normal});
        ASSERT_TRUE(hit);
        EXPECT_EQ(hit->stitch, static_cast<int>(s));
        EXPECT_TRUE(hit->from_outside);
        EXPECT_GT(hit->normal.dot(surface.stitches[s].normal), 0.3);
    }
}

TEST(RayCast, RaysAlongAnAxisAndThroughVerticesDoNotSlipThrough) {
    const auto example = test::sphere_piece(4);
    const auto surface = revolve(example.toy, example.piece(), example.graph, example.shape, {}, {});
    const RayCaster caster(surface.mesh);
    EXPECT_TRUE(caster.first_hit({Vec3(0, -50, 0), Vec3::UnitY()}));
    EXPECT_TRUE(caster.first_hit({Vec3(0, 200, 0), -Vec3::UnitY()}));
    const Vec3 inside(0, example.shape.height_mm / 2, 0);
    for (std::size_t v = 0; v < surface.mesh.positions.size(); v += 3) {
        const Vec3 p(surface.mesh.positions[v], surface.mesh.positions[v + 1], surface.mesh.positions[v + 2]);
        ASSERT_TRUE(caster.first_hit({inside, p - inside})) << v / 3;
    }
}

TEST(RayCast, NothingToMeetGivesNothing) {
    EXPECT_FALSE(RayCaster(Mesh{}).first_hit({Vec3::Zero(), Vec3::UnitX()}));
    const auto example = test::sphere_piece(2);
    const RayCaster caster(revolve(example.toy, example.piece(), example.graph, example.shape, {}, {}).mesh);
    EXPECT_FALSE(caster.first_hit({Vec3(500, 0, 0), Vec3::UnitX()}));
    EXPECT_FALSE(caster.first_hit({Vec3(0, 10, 0), Vec3::Zero()}));
}

}  // namespace
}  // namespace roundwright
