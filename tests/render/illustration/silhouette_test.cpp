#include "render/illustration/silhouette.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/mesh/mean_surface.h"
#include "core/mesh/revolve.h"
#include "render/drawing/smooth_path.h"
#include "tests/render/drawing/drawing_pieces.h"

namespace roundwright::render {
namespace {

Mesh skin_of(const test::DrawingPiece& piece) {
    return smooth_mesh(mean_surface(*revolved_fabric(piece.toy.pieces[0], piece.graph, piece.shape, {}), 128),
                       6);
}

Mesh fine_ball(const Vec3& centre, double radius_mm) {
    MeanSurface surface;
    for (int edge = 0; edge <= 40; ++edge) {
        auto& loop = surface.loops.emplace_back();
        const double up = std::numbers::pi * (edge / 40.0 - 0.5);
        for (int k = 0; k < 128; ++k) {
            const double angle = -2 * std::numbers::pi * k / 128;
            const Vec3 out(std::cos(up) * std::sin(angle), std::sin(up), std::cos(up) * std::cos(angle));
            loop.push_back({centre + radius_mm * out, out});
        }
    }
    return smooth_mesh(surface, 4);
}

/// Area by the polygon of a path, holes taken off.
double area(const QPainterPath& path) {
    double sum = 0;
    for (const auto& polygon : path.toSubpathPolygons()) {
        double twice = 0;
        for (qsizetype k = 0; k + 1 < polygon.size(); ++k)
            twice += polygon[k].x() * polygon[k + 1].y() - polygon[k].y() * polygon[k + 1].x();
        sum += twice / 2;
    }
    return std::abs(sum);
}

/// The cut of a solid of revolution through its axis: trapezia between the loops.
double section_area(const Shape& shape) {
    double sum = 0;
    for (std::size_t i = 1; i < shape.radius_mm.size(); ++i)
        sum += (shape.radius_mm[i] + shape.radius_mm[i - 1]) * (shape.z_mm[i] - shape.z_mm[i - 1]);
    return sum;
}

TEST(SilhouettePath, HasTheSolvedSizeFromTheFront) {
    for (const auto& piece : {test::drawing_ball(), test::drawing_bowl(),
                              test::drawing_piece({6, 12, 18, 24, 30, 30, 30, 24, 18, 18, 18, 12, 6},
                                                  MagicRing{}, End::drawn_closed, 0.04),
                              test::drawing_piece({12, 12, 12, 12}, OpenTube{12}, End::left_open, 0.04)}) {
        const auto found = silhouette(skin_of(piece), {0, 0});
        EXPECT_NEAR(found.bounds_mm.width(), piece.shape.width_mm, 0.02);
        EXPECT_NEAR(found.bounds_mm.height(), piece.shape.height_mm, 0.02);
        EXPECT_NEAR(found.bounds_mm.bottom(), 0, 0.02);
        const QRectF drawn = found.path.boundingRect();
        EXPECT_NEAR(drawn.left(), found.bounds_mm.left(), 0.03);
        EXPECT_NEAR(drawn.right(), found.bounds_mm.right(), 0.03);
        EXPECT_NEAR(drawn.top(), found.bounds_mm.top(), 0.03);
        EXPECT_NEAR(drawn.bottom(), found.bounds_mm.bottom(), 0.03);
        EXPECT_NEAR(area(found.path) / section_area(piece.shape), 1, 0.02);
        EXPECT_LT(found.path.elementCount(), 1'500);
    }
}

TEST(SilhouettePath, FromAboveIsACircleWhoseClosedTopIsFilled) {
    const auto ball = test::drawing_ball();
    const auto found = silhouette(skin_of(ball), {0, 90});
    EXPECT_EQ(found.path.toSubpathPolygons().size(), 1);
    const double radius = ball.shape.width_mm / 2;
    EXPECT_NEAR(area(found.path) / (std::numbers::pi * radius * radius), 1, 0.01);
}

TEST(SilhouettePath, ATubeFromAboveKeepsItsHole) {
    const auto tube = test::drawing_piece({12, 24, 36}, OpenTube{12}, End::left_open, 0);
    EXPECT_EQ(silhouette(skin_of(tube), {0, 90}).path.toSubpathPolygons().size(), 2);
}

TEST(SmoothPath, AShortStepBesideALongOneDoesNotMakeItSwing) {
    const QPainterPath path =
        smooth_path(QPolygonF({{0, 0}, {0.1, 0.04}, {20, 0.04}, {20, -20}, {0, -20}}), true);
    EXPECT_NEAR(path.boundingRect().height(), 20.04, 0.05);
    EXPECT_NEAR(path.boundingRect().width(), 20, 0.05);
}

// Every point of the path lies on the circle, and they do not come out as steps of the cells they were
// found in.
TEST(SilhouettePath, ABallIsSeenAsASmoothCircle) {
    for (const DrawingView view : {DrawingView{0, 0}, DrawingView{33, 20}, DrawingView{10, 90}}) {
        const auto found = silhouette(fine_ball({3, 40, -2}, 20), view);
        const QPointF middle = found.bounds_mm.center();
        double turn = 0;
        for (int k = 0; k < 1'000; ++k) {
            const QPointF way = found.path.pointAtPercent(k / 1000.0) - middle;
            EXPECT_NEAR(std::hypot(way.x(), way.y()), 20, 0.02);
            const double bend =
                found.path.angleAtPercent((k + 1) / 1000.0 - 1e-9) - found.path.angleAtPercent(k / 1000.0);
            turn = std::max(turn, std::abs(std::remainder(bend, 360)));
        }
        EXPECT_LT(turn, 3) << "degrees on a thousandth of the way";
    }
}

TEST(SilhouettePath, CornersStaySharp) {
    const auto tube = test::drawing_piece({24, 24, 24, 24}, OpenTube{24}, End::left_open, 0);
    const auto found = silhouette(skin_of(tube), {0, 0});
    for (const QPointF& corner : {found.bounds_mm.topLeft(), found.bounds_mm.topRight(),
                                  found.bounds_mm.bottomLeft(), found.bounds_mm.bottomRight()}) {
        double nearest = 1e9;
        for (int k = 0; k < found.path.elementCount(); ++k) {
            const QPointF way = QPointF(found.path.elementAt(k)) - corner;
            nearest = std::min(nearest, std::hypot(way.x(), way.y()));
        }
        EXPECT_LT(nearest, 0.01);
    }
}

TEST(SilhouettePath, NothingHasNoOutline) { EXPECT_TRUE(silhouette({}, {0, 0}).path.isEmpty()); }

}  // namespace
}  // namespace roundwright::render
