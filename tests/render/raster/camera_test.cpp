#include "render/raster/camera.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "tests/render/scene/example_surfaces.h"

namespace roundwright::render {
namespace {

std::vector<float> random_cloud(unsigned seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<float> place(-40, 60);
    std::vector<float> cloud(300);
    for (float& v : cloud) v = place(random);
    return cloud;
}

struct Extent {
    double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
};

Extent extent_on_screen(const Camera& camera, const std::vector<float>& cloud) {
    Extent e;
    for (std::size_t i = 0; i < cloud.size(); i += 3) {
        const Vec3 p = camera.project(Vec3(cloud[i], cloud[i + 1], cloud[i + 2]));
        e.left = std::min(e.left, p.x());
        e.right = std::max(e.right, p.x());
        e.top = std::min(e.top, p.y());
        e.bottom = std::max(e.bottom, p.y());
    }
    return e;
}

TEST(Camera, AxesAreRightHandedAndUnitAtEveryAngle) {
    Camera camera;
    for (int i = 0; i < 200; ++i) {
        camera.turn(37, i % 2 ? 13 : -11);
        const ViewAxes a = camera.axes();
        EXPECT_NEAR(a.right.norm(), 1, 1e-12);
        EXPECT_NEAR(a.up.norm(), 1, 1e-12);
        EXPECT_NEAR((a.right.cross(a.up) - a.back).norm(), 0, 1e-12);
        EXPECT_NEAR(a.right.y(), 0, 1e-12) << "the horizon stays level";
    }
}

TEST(Camera, PitchStopsBeforeThePoles) {
    Camera camera;
    camera.turn(0, 500);
    EXPECT_DOUBLE_EQ(camera.pitch_degrees(), 89);
    camera.turn(0, -500);
    EXPECT_DOUBLE_EQ(camera.pitch_degrees(), -89);
    camera.look_from(ViewDirection::top);
    EXPECT_DOUBLE_EQ(camera.pitch_degrees(), 90);
    camera.turn(0, 1);
    EXPECT_DOUBLE_EQ(camera.pitch_degrees(), 89);
}

TEST(Camera, NamedViewsLookAlongTheAxes) {
    struct Case {
        ViewDirection from;
        Vec3 back;
        Vec3 right;
    };
    const Case cases[] = {{ViewDirection::front, Vec3::UnitZ(), Vec3::UnitX()},
                          {ViewDirection::side, Vec3::UnitX(), -Vec3::UnitZ()},
                          {ViewDirection::back, -Vec3::UnitZ(), -Vec3::UnitX()},
                          {ViewDirection::top, Vec3::UnitY(), Vec3::UnitX()},
                          {ViewDirection::bottom, -Vec3::UnitY(), Vec3::UnitX()}};
    for (const Case& c : cases) {
        Camera camera;
        camera.look_from(c.from);
        EXPECT_NEAR((camera.axes().back - c.back).norm(), 0, 1e-12);
        EXPECT_NEAR((camera.axes().right - c.right).norm(), 0, 1e-12);
    }
}

// The wheel's law, distance *= 0.999^delta, with delta in eighths of a degree.
TEST(Camera, WheelScalesTheDistance) {
    Camera camera;
    const double before = camera.distance();
    camera.zoom_by_wheel(120);
    EXPECT_NEAR(camera.distance(), before * std::pow(0.999, 120), 1e-9);
    camera.zoom_by_wheel(-120);
    EXPECT_NEAR(camera.distance(), before, 1e-9);
}

TEST(Camera, ZoomStaysWithinSightOfThePiece) {
    Camera camera;
    const auto cloud = random_cloud(3);
    camera.fit({cloud});
    for (int i = 0; i < 500; ++i) camera.zoom(2);
    EXPECT_GT(camera.distance(), 0);
    EXPECT_GT(camera.near_plane(), 0);
    EXPECT_GT(camera.far_plane(), camera.near_plane());
    for (int i = 0; i < 500; ++i) camera.zoom(0.5);
    EXPECT_LT(camera.distance(), 1e5);
    const double kept = camera.distance();
    camera.zoom(0);
    camera.zoom(-1);
    camera.zoom(std::nan(""));
    EXPECT_DOUBLE_EQ(camera.distance(), kept);
}

// Exact: in the tighter direction the picture is 1 / margin of the viewport, and it is centred in both.
TEST(Camera, FitTouchesTheMarginExactly) {
    for (unsigned seed = 1; seed < 40; ++seed) {
        const auto cloud = random_cloud(seed);
        Camera camera;
        camera.set_viewport(seed % 2 ? 900 : 400, 600);
        camera.turn(seed * 31.0, seed * 7.0 - 100);
        camera.fit({cloud}, 1.25);
        const Extent e = extent_on_screen(camera, cloud);
        const double share = std::max((e.right - e.left) / camera.viewport_width(),
                                      (e.bottom - e.top) / camera.viewport_height());
        EXPECT_TRUE(camera.shows_all({cloud}));
        // The margin widens the pyramid about its axis, so the tighter extent reaches it to rounding.
        EXPECT_NEAR(share, 1 / 1.25, 1e-6);
        const bool wide = (e.right - e.left) / camera.viewport_width() > share - 1e-9;
        const double middle =
            wide ? e.left + e.right - camera.viewport_width() : e.top + e.bottom - camera.viewport_height();
        EXPECT_NEAR(middle, 0, 1e-4);
        camera.zoom(1.3);
        EXPECT_FALSE(camera.shows_all({cloud}));
    }
}

// A sphere of radius R seen from distance D spans the half angle asin(R / D); elementary geometry.
TEST(Camera, FitOfASphereIsTheTangentCone) {
    const auto mesh = test::sphere_mesh(Vec3(3, 20, -5), 30, 256, {200, 200, 200});
    Camera camera;
    camera.set_viewport(500, 500);
    camera.fit({mesh.positions}, 1);
    const double half_angle = Camera::field_of_view_degrees / 2 * 3.14159265358979 / 180;
    EXPECT_NEAR(camera.distance(), 30 / std::sin(half_angle), 0.02);
    EXPECT_NEAR((camera.pivot() - Vec3(3, 20, -5)).norm(), 0, 1e-4);
}

TEST(Camera, NothingIsCutOffByNearAndFar) {
    const auto cloud = random_cloud(9);
    Camera camera;
    camera.set_viewport(640, 480);
    camera.fit({cloud});
    for (std::size_t i = 0; i < cloud.size(); i += 3) {
        const double depth = camera.project(Vec3(cloud[i], cloud[i + 1], cloud[i + 2])).z();
        EXPECT_GT(depth, camera.near_plane());
        EXPECT_LT(depth, camera.far_plane());
    }
}

TEST(Camera, RayPassesThroughWhatIsProjectedThere) {
    Camera camera;
    camera.set_viewport(713, 391);
    const auto cloud = random_cloud(5);
    camera.fit({cloud});
    camera.pan(40, -25);
    camera.zoom(1.7);
    for (std::size_t i = 0; i < cloud.size(); i += 3) {
        const Vec3 point(cloud[i], cloud[i + 1], cloud[i + 2]);
        const Vec3 seen = camera.project(point);
        const Ray ray = camera.ray(seen.x(), seen.y());
        EXPECT_NEAR((point - ray.origin).cross(ray.direction).norm(), 0, 1e-7);
    }
}

TEST(Camera, PanMovesThePivotByThatManyPixels) {
    Camera camera;
    camera.set_viewport(800, 600);
    const Vec3 before = camera.project(camera.pivot());
    camera.pan(30, 12);
    const Vec3 after = camera.project(camera.pivot());
    EXPECT_NEAR(after.x() - before.x(), 30, 1e-9);
    EXPECT_NEAR(after.y() - before.y(), 12, 1e-9);
}

TEST(Camera, PixelsPerMillimetreAreThoseOfProjection) {
    Camera camera;
    camera.set_viewport(800, 600);
    camera.zoom(1.4);
    const ViewAxes a = camera.axes();
    const Vec3 one = camera.project(camera.pivot() + a.right), zero = camera.project(camera.pivot());
    EXPECT_NEAR(one.x() - zero.x(), camera.pixels_per_mm(), 1e-9);
}

TEST(Camera, NothingToShowChangesNothing) {
    Camera camera;
    const double distance = camera.distance();
    camera.fit({});
    camera.fit({PointCloud{}});
    camera.set_content({});
    EXPECT_DOUBLE_EQ(camera.distance(), distance);
    camera.set_viewport(0, -3);
    EXPECT_DOUBLE_EQ(camera.viewport_height(), 1);
    EXPECT_TRUE(std::isfinite(camera.ray(0, 0).direction.norm()));
}

}  // namespace
}  // namespace roundwright::render
