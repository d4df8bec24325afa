#include "render/illustration/silhouette.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "render/drawing/smooth_path.h"
#include "tests/render/drawing/drawing_pieces.h"

namespace roundwright::render {
namespace {

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
        const auto found = silhouette(piece.surface, {0, 0});
        EXPECT_NEAR(found.size_mm.width(), piece.shape.width_mm, 0.2);
        EXPECT_NEAR(found.size_mm.height(), piece.shape.height_mm, 0.2);
        const QRectF drawn = found.path.boundingRect();
        EXPECT_NEAR(drawn.width(), found.size_mm.width(), 0.1);
        EXPECT_NEAR(drawn.height(), found.size_mm.height(), 0.1);
        EXPECT_NEAR(drawn.left(), 0, 0.1);
        EXPECT_NEAR(drawn.top(), 0, 0.1);
        EXPECT_NEAR(area(found.path) / section_area(piece.shape), 1, 0.015);
        EXPECT_LT(found.path.elementCount(), 1'500);
    }
}

TEST(SilhouettePath, FromAboveIsACircleWhoseClosedTopIsFilled) {
    const auto ball = test::drawing_ball();
    const auto found = silhouette(ball.surface, {0, 90});
    EXPECT_EQ(found.path.toSubpathPolygons().size(), 1);
    const double radius = ball.shape.width_mm / 2;
    EXPECT_NEAR(area(found.path) / (std::numbers::pi * radius * radius), 1, 0.01);
}

TEST(SilhouettePath, ATubeFromAboveKeepsItsHole) {
    const auto tube = test::drawing_piece({12, 24, 36}, OpenTube{12}, End::left_open, 0);
    EXPECT_EQ(silhouette(tube.surface, {0, 90}).path.toSubpathPolygons().size(), 2);
}

TEST(SmoothPath, AShortStepBesideALongOneDoesNotMakeItSwing) {
    const QPainterPath path =
        smooth_path(QPolygonF({{0, 0}, {0.1, 0.04}, {20, 0.04}, {20, -20}, {0, -20}}), true);
    EXPECT_NEAR(path.boundingRect().height(), 20.04, 0.05);
    EXPECT_NEAR(path.boundingRect().width(), 20, 0.05);
}

TEST(SilhouettePath, NothingHasNoOutline) { EXPECT_TRUE(silhouette({}, {0, 0}).path.isEmpty()); }

}  // namespace
}  // namespace roundwright::render
