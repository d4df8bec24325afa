#include "app/reshape/outline_placement.h"

#include <cmath>
#include <gtest/gtest.h>

namespace roundwright::app {
namespace {

const Silhouette cone{{Vec2(0, 0), Vec2(10, 20), Vec2(20, 40)}};

TEST(OutlinePlacement, HasRoomForEveryOutlineAndKeepsTheirProportions) {
    const Silhouette taller{{Vec2(0, -10), Vec2(5, 60)}};
    const auto here = OutlinePlacement::of({400, 300}, false, {&cone, nullptr, &taller});
    for (const Silhouette* outline : {&cone, &taller}) {
        EXPECT_TRUE(QRectF(0, 0, 400, 300).contains(here.both_sides(*outline).boundingRect()));
    }
    const QPointF across = here.at(Vec2(20, 0)) - here.at(Vec2(0, 0));
    const QPointF up = here.at(Vec2(0, 20)) - here.at(Vec2(0, 0));
    EXPECT_NEAR(across.x(), -up.y(), 1e-9);
}

QPointF way(const QPainterPath& path, int from, int to) {
    return QPointF(path.elementAt(to)) - QPointF(path.elementAt(from));
}

double turn_degrees(const QPointF& in, const QPointF& out) {
    const double cross = in.x() * out.y() - in.y() * out.x();
    return std::abs(std::atan2(cross, QPointF::dotProduct(in, out))) * 180 / 3.14159265358979;
}

// The polygon through the loops turned by 60 degrees at a loop, and its base was a point.
TEST(OutlinePlacement, AnOutlineIsASmoothCurveThroughItsLoopsAndRoundAtItsPoles) {
    const Silhouette closed{{Vec2(0, 0), Vec2(12, 3), Vec2(20, 12), Vec2(20, 24), Vec2(11, 33), Vec2(0, 36)}};
    Silhouette open = closed;
    open.points.pop_back();
    for (const Silhouette& outline : {closed, open}) {
        const auto here = OutlinePlacement::of({400, 300}, false, {&outline});
        const QPainterPath path = here.both_sides(outline);
        const std::size_t sides = 2 * outline.points.size() - (outline.points.size() == 6 ? 2 : 1);
        std::size_t met = 0;
        for (int k = 0; k < path.elementCount(); ++k) {
            for (const Vec2& p : outline.points) {
                for (const double side : {1.0, -1.0}) {
                    if (side < 0 && p.x() <= 0) continue;
                    const QPointF off = QPointF(path.elementAt(k)) - here.at(Vec2(side * p.x(), p.y()));
                    met += off.manhattanLength() < 1e-6;
                }
            }
        }
        EXPECT_GE(met, sides);
        for (int k = 3; k + 3 < path.elementCount(); k += 3) {
            if (path.elementAt(k + 1).type != QPainterPath::CurveToElement) continue;
            EXPECT_LT(turn_degrees(way(path, k - 1, k), way(path, k, k + 1)), 1) << "at element " << k;
        }
        const QPainterPath side = here.one_side(outline);
        EXPECT_NEAR(way(side, 0, 1).y(), 0, 1e-6) << "level over the pole";
        EXPECT_EQ(side.elementCount(), static_cast<int>(3 * outline.points.size() - 2));
    }
}

TEST(OutlinePlacement, APieceThatStartsAtItsTopHangsDown) {
    const auto up = OutlinePlacement::of({400, 300}, false, {&cone});
    const auto down = OutlinePlacement::of({400, 300}, true, {&cone});
    EXPECT_GT(up.at(cone.points[0]).y(), up.at(cone.points[2]).y());
    EXPECT_LT(down.at(cone.points[0]).y(), down.at(cone.points[2]).y());
}

TEST(OutlinePlacement, AWayOnTheWidgetIsAWayOfTheOutlineOnEitherSide) {
    const auto here = OutlinePlacement::of({400, 300}, false, {&cone});
    for (const double side : {1.0, -1.0}) {
        const QPointF from = here.at(Vec2(side * 10, 20));
        const Vec2 way = here.way(from, here.at(Vec2(side * 13, 25)));
        EXPECT_NEAR(way.x(), 3, 1e-9);
        EXPECT_NEAR(way.y(), 5, 1e-9);
    }
}

TEST(OutlinePlacement, APressTakesThePointNextToItOnEitherSide) {
    const auto here = OutlinePlacement::of({400, 300}, false, {&cone});
    EXPECT_EQ(here.point_near(here.at(Vec2(10, 20)) + QPointF(6, -6), cone), 1);
    EXPECT_EQ(here.point_near(here.at(Vec2(-20, 40)) + QPointF(3, 3), cone), 2);
    EXPECT_EQ(here.point_near({1, 1}, cone), -1);
}

TEST(OutlinePlacement, NothingToPlaceIsPlacedSomewhere) {
    const auto here = OutlinePlacement::of({0, 0}, false, {});
    EXPECT_GT(here.pixels_per_mm, 0);
    EXPECT_TRUE(std::isfinite(here.axis.y()));
}

TEST(OutlinePlacement, MiddlesMeet) {
    const Silhouette raised = middles_met(cone, Silhouette{{Vec2(0, 100), Vec2(1, 110)}});
    EXPECT_EQ(raised.points[0], Vec2(0, 85));
    EXPECT_EQ(raised.points[2], Vec2(20, 125));
    EXPECT_TRUE(middles_met({}, cone).points.empty());
}

}  // namespace
}  // namespace roundwright::app
