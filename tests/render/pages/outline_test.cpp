#include "render/pages/outline.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/meridian_outline.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::meridian_outline;
using testing::piece_of;

struct Outlined {
    Toy toy;
    PieceStudy study;
    PieceOutline outline;

    explicit Outlined(Toy of, OutlineView view = OutlineView::front)
        : toy(std::move(of)), study(study_piece(toy, 0)), outline(toy.pieces[0], study, view) {}
    [[nodiscard]] const Shape& shape() const { return study.revolved(); }
};

Toy toy_of(const std::vector<int>& counts, End end, double stretch = medium_stuffing_stretch) {
    Toy toy = ball(1);
    toy.pieces[0] = piece_of("Piece", counts, end);
    toy.pieces[0].area_stretch = stretch;
    return toy;
}

std::vector<QPointF> points_along(const QPainterPath& path, int many) {
    std::vector<QPointF> points;
    for (int k = 0; k < many; ++k) points.push_back(path.pointAtPercent(static_cast<double>(k) / many));
    return points;
}

double distance(const QPointF& at, const QPointF& from, const QPointF& to) {
    const QPointF way = to - from;
    const double squared = QPointF::dotProduct(way, way);
    const double share =
        squared > 0 ? std::clamp(QPointF::dotProduct(at - from, way) / squared, 0.0, 1.0) : 0;
    const QPointF off = at - from - share * way;
    return std::hypot(off.x(), off.y());
}

/// The furthest that points of one path lie from the other.
double furthest(const QPainterPath& one, const QPainterPath& other) {
    const auto line = points_along(other, 2'000);
    double most = 0;
    for (const QPointF& at : points_along(one, 400)) {
        double nearest = 1e9;
        for (std::size_t k = 0; k < line.size(); ++k)
            nearest = std::min(nearest, distance(at, line[k], line[(k + 1) % line.size()]));
        most = std::max(most, nearest);
    }
    return most;
}

// The mesh's outline is the meridian's, for what is round: here by its closed form.
TEST(Outline, OfARoundPieceIsItsMeridians) {
    std::vector<Toy> toys = {ball(3), ball(6), ball(12), ball(20)};
    toys.push_back(toy_of({6, 12, 18, 24, 24, 18, 12, 12, 18, 24, 30, 30, 24, 12, 6}, End::drawn_closed));
    toys.push_back(toy_of({6, 12, 18, 18, 18, 18, 18, 18, 18}, End::left_open));
    toys.push_back(toy_of({6, 9, 12, 15, 18, 21, 24, 27, 30}, End::left_open, unstuffed_stretch));
    for (Toy toy : toys) {
        for (const bool at_top : {false, true}) {
            toy.pieces[0].starts_at_top = at_top;
            toy.pieces[0].face_degrees = at_top ? 25 : 0;
            const Outlined piece(toy);
            if (piece.shape().flattened()) continue;
            const QPainterPath expected = meridian_outline(piece.shape(), at_top);
            EXPECT_LT(furthest(piece.outline.path(), expected), 0.1) << toy.pieces[0].rounds.size();
            EXPECT_LT(furthest(expected, piece.outline.path()), 0.1) << toy.pieces[0].rounds.size();
        }
    }
}

TEST(Outline, NeverLeavesTheSolvedShape) {
    for (const int n : {3, 4, 7, 12}) {
        for (const bool upside_down : {false, true}) {
            Toy toy = ball(n);
            toy.pieces[0].starts_at_top = upside_down;
            const Outlined piece(toy);
            const QRectF bounds = piece.outline.bounds();
            EXPECT_NEAR(bounds.width(), piece.shape().width_mm, 1e-3);
            EXPECT_NEAR(bounds.height(), piece.shape().height_mm, 1e-3);
            EXPECT_NEAR(bounds.bottom(), 0, 1e-3);
            EXPECT_NEAR(bounds.left(), -bounds.right(), 1e-3);
            const QRectF drawn = piece.outline.path().boundingRect();
            EXPECT_TRUE(bounds.adjusted(-0.01, -0.01, 0.01, 0.01).contains(drawn));
            EXPECT_TRUE(drawn.adjusted(-0.03, -0.03, 0.03, 0.03).contains(bounds));
        }
    }
}

TEST(Outline, OfASewnEndIsAsWideAsItsSeam) {
    for (const double stretch : {unstuffed_stretch, medium_stuffing_stretch}) {
        const Outlined ear(toy_of({6, 12, 18, 24, 24, 24, 24, 24}, End::sewn_straight, stretch));
        ASSERT_TRUE(ear.shape().flattened());
        const QRectF bounds = ear.outline.path().boundingRect();
        EXPECT_NEAR(bounds.width(), ear.shape().width_mm, 0.2);
        EXPECT_NEAR(bounds.height(), ear.shape().height_mm, 0.1);
        EXPECT_NEAR(bounds.bottom(), 0, 0.1);
        const QPolygonF seam = ear.outline.loop_line(8);
        EXPECT_NEAR(seam.boundingRect().width(), 2 * ear.shape().sections.back().half_width_mm, 1e-6);
        EXPECT_NEAR(seam.boundingRect().height(), 0, 1e-6);
    }
}

// A bag's walls are straight; its outline must not swing around the corners of its folds.
TEST(Outline, OfALimpBagIsConvex) {
    const Outlined bag(toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6}, End::drawn_closed,
                              unstuffed_stretch));
    ASSERT_TRUE(bag.shape().flattened());
    const auto points = points_along(bag.outline.path(), 240);
    double left = 0, right = 0;
    for (std::size_t k = 0; k < points.size(); ++k) {
        const QPointF in = points[(k + 1) % points.size()] - points[k];
        const QPointF on = points[(k + 2) % points.size()] - points[(k + 1) % points.size()];
        const double turn = std::atan2(in.x() * on.y() - in.y() * on.x(), QPointF::dotProduct(in, on));
        (turn > 0 ? left : right) += std::abs(turn);
    }
    EXPECT_LT(std::min(left, right), 0.25) << "radians turned the wrong way";
    EXPECT_NEAR(std::max(left, right) - std::min(left, right), 2 * std::numbers::pi, 1e-6);
}

TEST(Outline, LoopsCrossTheMiddleAtTheirHeightAndReachAsFarAsTheyAreWide) {
    for (const bool at_top : {false, true}) {
        Toy toy = ball(6);
        toy.pieces[0].starts_at_top = at_top;
        const Outlined piece(toy);
        const Shape& shape = piece.shape();
        ASSERT_EQ(piece.outline.loops(), shape.radius_mm.size());
        for (std::size_t loop = 1; loop < piece.outline.loops(); ++loop) {
            const double height = at_top ? shape.height_mm - shape.z_mm[loop] : shape.z_mm[loop];
            EXPECT_NEAR(piece.outline.middle_of_loop(loop), -height, 1e-6);
            EXPECT_NEAR(piece.outline.reach_of_loop(loop), shape.radius_mm[loop], 1e-6);
            EXPECT_NEAR(piece.outline.loop_line(loop).boundingRect().width(), 2 * shape.radius_mm[loop],
                        1e-6);
        }
    }
}

TEST(Outline, FromAboveOfWhatLiesFlatIsItsEdge) {
    const Outlined base(toy_of({6, 12, 19, 25, 31, 38, 44, 50}, End::left_open, unstuffed_stretch),
                        OutlineView::above);
    const double radius = base.shape().width_mm / 2;
    for (const QPointF& at : points_along(base.outline.path(), 200))
        EXPECT_NEAR(std::hypot(at.x(), at.y()), radius, 0.1);
    EXPECT_TRUE(base.outline.loop_line(5).isClosed());
}

TEST(Outline, APieceWithoutRoundsHasNone) {
    const Outlined nothing(toy_of({}, End::left_open));
    EXPECT_TRUE(nothing.outline.path().isEmpty());
    EXPECT_EQ(nothing.outline.loops(), 0U);
}

}  // namespace
}  // namespace roundwright::render
