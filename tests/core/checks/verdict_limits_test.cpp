// Where each verdict of the fabric and of the features turns over, found by bisection on one number of the
// piece, against the place that plain geometry gives for its limit. Every limit thus has a piece on either
// side of it that differs by nothing else.

#include <algorithm>
#include <cmath>
#include <functional>
#include <gtest/gtest.h>
#include <numbers>

#include "core/face/feature_fit.h"
#include "core/shape/fabric_limits.h"
#include "core/shape/fabric_signs.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using std::numbers::pi;
using namespace test;

constexpr double width_mm = 5;

/// Where a verdict that is not given at `without` and is at `with` turns over.
double turning_point(double without, double with, const std::function<bool(double)>& given) {
    EXPECT_FALSE(given(without));
    EXPECT_TRUE(given(with));
    for (int i = 0; i < 40; ++i) {
        const double middle = (without + with) / 2;
        (given(middle) ? with : without) = middle;
    }
    return with;
}

std::function<bool(double)> at_round_height(Toy toy, CheckCode code) {
    return [toy = std::move(toy), code](double height_mm) mutable {
        toy.gauge = GivenGauge{{width_mm, height_mm, 0, 0}};
        return !checks_of(toy, code).empty();
    };
}

std::function<bool(double)> at_stretch(Toy toy, CheckCode code) {
    return [toy = std::move(toy), code](double area_stretch) mutable {
        toy.pieces[0].area_stretch = area_stretch;
        return !checks_of(toy, code).empty();
    };
}

// Twelve rounds of six more: the edge is 72 stitches long, and a flat table has room for 12 rounds of 2 pi h.
// Too long by 5 % at h = 0.95 * 72 w / (24 pi) = 4.536 mm, had the fabric no elasticity.
TEST(VerdictLimits, RufflesAboveAShareOfTheLoop) {
    const double limit = turning_point(5, 4, at_round_height(toy_of(disc(6, 12)), CheckCode::ruffles));
    EXPECT_NEAR(limit, (1 - ruffles_above_share) * 72 * width_mm / (24 * pi), 0.03);
}

// k more a round make a cone that rises by h sqrt(1 - g^2), g = k w / (2 pi h): the limit is where that is
// 0.56 h.
TEST(VerdictLimits, CupsAboveARise) {
    for (const int increases : {5, 6}) {
        Toy toy = toy_of(disc(increases, 8));
        toy.pieces[0].rounds[4].lies_flat = true;
        const double limit = turning_point(4.5, 7, at_round_height(toy, CheckCode::cups_though_flat));
        const double growth = std::sqrt(1 - flat_up_to_rise * flat_up_to_rise);
        EXPECT_NEAR(limit, increases * width_mm / (2 * pi * growth), 0.001) << increases;
    }
}

// Eight fewer a round are a growth of -8 w / (2 pi h), which is -1.3 at h = 4.897 mm.
TEST(VerdictLimits, GathersBelowAGrowth) {
    std::vector<int> counts = ball(8);
    counts.resize(16);
    for (int count = 40; count > 8; count -= 8) counts.push_back(count);
    const double limit = turning_point(5.2, 4.5, at_round_height(stuffed_toy_of(counts), CheckCode::gathers));
    EXPECT_NEAR(limit, -8 * width_mm / (2 * pi * gathers_below_growth), 1e-6);
}

TEST(VerdictLimits, GapsAboveAStretch) {
    Toy toy = stuffed_toy_of(ball(6));
    toy.pieces[0].area_stretch = turning_point(0.04, 0.4, at_stretch(toy, CheckCode::gaps));
    const Shape shape = study_piece(toy, 0).revolved();
    const double most = std::max(*std::ranges::max_element(shape.course_stretch),
                                 *std::ranges::max_element(shape.wale_stretch));
    EXPECT_NEAR(most, gaps_above_stretch, 1e-6);
}

// Rounds 10 to 12 (from 1) of 18 stitches are the neck.
TEST(VerdictLimits, ANeckWidensAboveAStretch) {
    Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 24, 18, 18, 18, 24, 30, 30, 30, 24, 18, 12, 6});
    toy.pieces[0].area_stretch = turning_point(0.001, 0.12, at_stretch(toy, CheckCode::widening_neck));
    const Shape shape = study_piece(toy, 0).revolved();
    EXPECT_NEAR(*std::max_element(shape.course_stretch.begin() + 9, shape.course_stretch.begin() + 12),
                neck_widens_above_stretch, 1e-6);
}

/// Signs of a wall of 12 relaxed rounds, 5 mm high, that is straight and even up to loop 6, and from there on
/// leans inwards by `degrees` and has loops that grow by `growth` times 2 pi h a round. (What the loops would
/// do to the solved shape is left away, so that each shows by itself.)
std::vector<FabricSign> signs_of_a_turn(double degrees, double growth) {
    constexpr int turn = 6;
    constexpr double radius_mm = 150;
    ShapeProblem problem;
    Shape shape;
    problem.stitch_width_mm = width_mm;
    problem.rest_height_mm.assign(12, width_mm);
    shape.course_stretch.assign(13, 0);
    shape.wale_stretch.assign(12, 0);
    for (int i = 0; i < 13; ++i) {
        const double beyond = std::max(0, i - turn) * width_mm;
        problem.rest_loop_mm.push_back(2 * pi * (radius_mm + beyond * growth));
        shape.radius_mm.push_back(radius_mm - beyond * std::sin(degrees * pi / 180));
        shape.z_mm.push_back(std::min(i, turn) * width_mm + beyond * std::cos(degrees * pi / 180));
    }
    return fabric_signs(problem, shape);
}

/// The edge is that of the sixth round, and alone.
void expect_edge(const std::vector<FabricSign>& signs, FabricSignKind kind) {
    ASSERT_EQ(signs.size(), 1u);
    EXPECT_EQ(signs[0].kind, kind);
    EXPECT_EQ(signs[0].round, 5);
}

TEST(VerdictLimits, AnEdgeShowsAboveATurn) {
    for (const auto& [sign, kind] :
         {std::pair{1, FabricSignKind::ridge}, std::pair{-1, FabricSignKind::crease}}) {
        const double limit = turning_point(
            5, 60, [sign = sign](double degrees) { return !signs_of_a_turn(sign * degrees, 0).empty(); });
        EXPECT_NEAR(limit, edge_above_turn_degrees, 1e-6);
        expect_edge(signs_of_a_turn(sign * (limit + 1), 0), kind);
    }
}

TEST(VerdictLimits, AnEdgeShowsAboveAChangeOfGrowth) {
    for (const auto& [sign, kind] :
         {std::pair{1, FabricSignKind::crease}, std::pair{-1, FabricSignKind::ridge}}) {
        const double limit = turning_point(
            0.5, 2, [sign = sign](double growth) { return !signs_of_a_turn(0, sign * growth).empty(); });
        EXPECT_NEAR(limit, edge_above_growth_change, 1e-6);
        expect_edge(signs_of_a_turn(0, sign * (limit + 0.1)), kind);
    }
}

/// An unstuffed tube of 60 stitches, low enough to stand by itself: a straight cylinder of radius 47.75 mm,
/// with one feature on round 5.
Toy tube_with(const Feature& feature) {
    Toy toy = toy_of(std::vector<int>(9, 60));
    toy.pieces[0].start = OpenTube{60};
    toy.pieces[0].features.push_back(feature);
    return toy;
}

constexpr double tube_radius_mm = 60 * width_mm / (2 * pi);

Feature eyes(double mm) {
    Feature eyes;
    eyes.round = 4;
    eyes.width_mm = eyes.height_mm = mm;
    eyes.washer_mm = mm;
    eyes.stitches_apart = 8;
    return eyes;
}

// A flat disc of diameter d on a cylinder of radius R: the rim is d^2 / (8 R) off.
TEST(VerdictLimits, AWasherRocksAboveAGap) {
    const double limit = turning_point(10, 40, [](double mm) {
        Feature eye = eyes(8);
        eye.pair = false;
        eye.washer_mm = mm;
        return !checks_of(tube_with(eye), CheckCode::washer_rocks).empty();
    });
    EXPECT_NEAR(limit, std::sqrt(8 * most_washer_gap_mm * tube_radius_mm), 0.05);
}

// Two eyes eight of sixty stitches apart: their centres are a chord of 48 degrees apart.
TEST(VerdictLimits, APairTouchesWhereItsDiameterIsTheChord) {
    const double chord_mm = 2 * tube_radius_mm * std::sin(pi * 8 / 60);
    EXPECT_NEAR(turning_point(10, 60,
                              [](double mm) {
                                  return !checks_of(tube_with(eyes(mm)), CheckCode::features_touch).empty();
                              }),
                chord_mm, 0.01);
    EXPECT_NEAR(turning_point(10, 60,
                              [](double mm) {
                                  Feature small = eyes(6);
                                  small.washer_mm = mm;
                                  return !checks_of(tube_with(small), CheckCode::features_touch).empty();
                              }),
                chord_mm, 0.01)
        << "washers";
}

// The tube is as wide at every round.
TEST(VerdictLimits, AFeatureIsTooLargeAboveAShareOfTheWidth) {
    const double limit = turning_point(10, 80, [](double mm) {
        Feature patch = eyes(mm);
        patch.kind = FeatureKind::felt_disc;
        patch.pair = false;
        patch.washer_mm = 0;
        return !checks_of(tube_with(patch), CheckCode::feature_too_large).empty();
    });
    EXPECT_NEAR(limit, most_share_of_loop * 2 * tube_radius_mm, 0.05);
}

}  // namespace
}  // namespace roundwright
