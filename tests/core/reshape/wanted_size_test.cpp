#include "core/reshape/wanted_size.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/reshape/reshape_code.h"
#include "core/reshape/resize.h"
#include "core/reshape/size.h"
#include "tests/core/reshape/random_piece.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::piece_of;

const Gauge four_mm{4, 4, 0, 0};

// Half a round or 2 %: 2 mm up to 100 mm at rounds of 4 mm.
TEST(SizeTolerance, IsHalfARoundOrTwoPerCent) {
    EXPECT_EQ(size_tolerance_mm(10, four_mm), 2);
    EXPECT_EQ(size_tolerance_mm(100, four_mm), 2);
    EXPECT_EQ(size_tolerance_mm(150, four_mm), 3);
}

TEST(SizeMiss, IsTheLargestOfWidthHeightAndTheirRatio) {
    EXPECT_EQ(size_miss({50, 50}, {50, 50}, four_mm), 0);
    // Wider by 1: half of what the width may miss, and the height is off its ratio by as much.
    EXPECT_NEAR(size_miss({51, 50}, {50, 50}, four_mm), 0.5, 1e-12);
    EXPECT_NEAR(size_miss({50, 53}, {50, 50}, four_mm), 1.5, 1e-12);
    // Wider by 1 and lower by 1: each within half, but together the ratio is off by 2.
    EXPECT_NEAR(size_miss({51, 49}, {50, 50}, four_mm), 1, 1e-12);
    // Twice as high as wide: a round wider changes the height by twice as much.
    EXPECT_NEAR(size_miss({52, 100}, {50, 100}, four_mm), 1, 1e-12);
    EXPECT_NEAR(half_rounds_off({52, 100}, {50, 103}, four_mm), 1.5, 1e-12);
    EXPECT_NEAR(half_rounds_off({47, 100}, {50, 99}, four_mm), 1.5, 1e-12);
}

TEST(Verdict, SaysWhichOfBothWasMissed) {
    EXPECT_EQ(verdict({52, 48}, {50, 50}, four_mm), ReshapeCode::met);
    EXPECT_EQ(verdict({52.01, 48}, {50, 50}, four_mm), ReshapeCode::width_not_met);
    EXPECT_EQ(verdict({52, 47.99}, {50, 50}, four_mm), ReshapeCode::height_not_met);
    EXPECT_EQ(verdict({47.9, 52.1}, {50, 50}, four_mm), ReshapeCode::size_not_met);
}

TEST(IsSame, ButForRounding) {
    EXPECT_TRUE(is_same({50, 40}, {50 * (1 + 9e-10), 40}));
    EXPECT_FALSE(is_same({50, 40}, {50 * (1 + 2e-9), 40}));
    EXPECT_TRUE(is_same({50, 0}, {50, 4e-8}));
    EXPECT_FALSE(is_same({50, 40}, {50, 40 + 1e-7}));
}

TEST(HeightRatio, OfAFlatPieceIsThatOfItsWidth) {
    EXPECT_EQ(height_ratio({80, 30}, {40, 10}), 3);
    EXPECT_EQ(height_ratio({80, 30}, {40, 0.4}), 2);
    EXPECT_EQ(height_ratio({80, 30}, {40, 0.41}), 30 / 0.41);
}

class WantedSizeOfABall : public ::testing::Test {
  protected:
    PieceForm ball = piece_form(ball_piece(4), four_mm);
    double w = ball.size().width_mm;
    double h = ball.size().height_mm;

    [[nodiscard]] WantedSize of(const std::function<void(Target&)>& say) const {
        Target target;
        say(target);
        return wanted_size(ball, target);
    }
};

TEST_F(WantedSizeOfABall, KeepsItsProportionsUnlessBothAreSaid) {
    const auto near = [](const Size& a, const Size& b) {
        EXPECT_NEAR(a.width_mm, b.width_mm, 1e-9);
        EXPECT_NEAR(a.height_mm, b.height_mm, 1e-9);
    };
    near(of([](Target& t) { t.scale = 1.5; }).size, {1.5 * w, 1.5 * h});
    near(of([&](Target& t) { t.width_mm = 2 * w; }).size, {2 * w, 2 * h});
    near(of([&](Target& t) { t.height_mm = h / 2; }).size, {w / 2, h / 2});
    near(of([&](Target& t) { t.circumference_mm = std::numbers::pi * 3 * w; }).size, {3 * w, 3 * h});
    const WantedSize both = of([&](Target& t) {
        t.width_mm = w;
        t.height_mm = 2 * h;
    });
    near(both.size, {w, 2 * h});
    EXPECT_FALSE(both.in_proportion);
    EXPECT_TRUE(of([&](Target& t) {
                    t.width_mm = 3 * w;
                    t.height_mm = 3 * h;
                }).in_proportion);
    near(of([](Target& t) { t.gauge = Gauge{6, 6, 0, 0}; }).size, {w, h});
    const WantedSize drawn = of([](Target& t) {
        t.silhouette = Silhouette{{Vec2(0, 0), Vec2(20, 0), Vec2(20, 33)}};
    });
    near(drawn.size, {40, 33});
}

TEST_F(WantedSizeOfABall, SaysWhatIsWrong) {
    const auto code = [&](const std::function<void(Target&)>& say) { return of(say).code; };
    EXPECT_EQ(code([](Target&) {}), ReshapeCode::nothing_wanted);
    for (const double bad : {0.0, -1.0, std::nan(""), HUGE_VAL}) {
        EXPECT_EQ(code([=](Target& t) { t.width_mm = bad; }), ReshapeCode::unusable_target) << bad;
        EXPECT_EQ(code([=](Target& t) { t.height_mm = bad; }), ReshapeCode::unusable_target) << bad;
        EXPECT_EQ(code([=](Target& t) { t.circumference_mm = bad; }), ReshapeCode::unusable_target) << bad;
        EXPECT_EQ(code([=](Target& t) { t.scale = bad; }), ReshapeCode::unusable_target) << bad;
        EXPECT_EQ(code([=](Target& t) {
                      t.gauge = Gauge{bad, 5, 0, 0};
                  }),
                  ReshapeCode::unusable_target)
            << bad;
        EXPECT_EQ(code([=](Target& t) {
                      t.gauge = Gauge{5, bad, 0, 0};
                  }),
                  ReshapeCode::unusable_target)
            << bad;
    }
    EXPECT_EQ(code([](Target& t) { t.silhouette = Silhouette{}; }), ReshapeCode::unusable_target);
    EXPECT_EQ(code([](Target& t) { t.scale = t.width_mm = 2; }), ReshapeCode::conflicting_target);
    EXPECT_EQ(code([](Target& t) { t.scale = t.height_mm = 2; }), ReshapeCode::conflicting_target);
    EXPECT_EQ(code([](Target& t) { t.scale = t.circumference_mm = 2; }), ReshapeCode::conflicting_target);
    EXPECT_EQ(code([](Target& t) { t.width_mm = t.circumference_mm = 2; }), ReshapeCode::conflicting_target);
    EXPECT_EQ(code([](Target& t) { t.height_mm = t.circumference_mm = 2; }), ReshapeCode::met);
}

/// A tape lies around both layers of a piece that lies flat.
TEST(WantedSizeOfALimpTube, GoesTwiceAcross) {
    Piece tube = piece_of({16, 16, 16, 16, 16, 16, 16, 16}, End::left_open);
    tube.start = OpenTube{16};
    tube.area_stretch = 0;
    const PieceForm form = piece_form(tube, four_mm);
    ASSERT_TRUE(form.problem.limp);
    Target target;
    target.circumference_mm = 100;
    EXPECT_NEAR(wanted_size(form, target).size.width_mm, 50, 1e-9);
}

/// Smaller than two stitches and a half around, or half a round long; more rounds or stitches than a piece
/// may have.
TEST(ReshapeTask, HasItsLimits) {
    const PieceForm tube = [] {
        Piece piece = piece_of(std::vector<int>(20, 30), End::left_open);
        piece.start = OpenTube{30};
        return piece_form(piece, {4, 4, 0, 0});
    }();
    const auto code = [&](double around, double along) {
        Target target;
        target.width_mm = around * tube.size().width_mm;
        target.height_mm = along * tube.size().height_mm;
        return reshape_task(tube, target, {}).code;
    };
    EXPECT_EQ(code(2.51 / 30, 1), ReshapeCode::met);
    EXPECT_EQ(code(2.49 / 30, 1), ReshapeCode::too_small);
    EXPECT_EQ(code(1, 0.51 / 20), ReshapeCode::met);
    EXPECT_EQ(code(1, 0.49 / 20), ReshapeCode::too_small);
    EXPECT_EQ(code(1, 99.9), ReshapeCode::met);
    EXPECT_EQ(code(1, 100.1), ReshapeCode::too_large);
    // 95 in 100 of 200,000 stitches in 20 rounds.
    EXPECT_EQ(code(9'499 / 30.0, 1), ReshapeCode::met);
    EXPECT_EQ(code(9'501 / 30.0, 1), ReshapeCode::too_large);
}

TEST(ReshapeCode, EveryOneHasItsName) {
    const char* names[] = {"met",          "unchanged",      "width_not_met",      "height_not_met",
                           "size_not_met", "nothing_wanted", "conflicting_target", "unusable_target",
                           "too_small",    "too_large",      "unusable_piece",     "not_of_revolution", "cancelled"};
    for (int code = 0; code < 13; ++code) {
        EXPECT_EQ(reshape_code_name(static_cast<ReshapeCode>(code)), names[code]);
        EXPECT_EQ(has_piece(static_cast<ReshapeCode>(code)), code <= 4) << names[code];
    }
    EXPECT_EQ(reshape_code_name(static_cast<ReshapeCode>(99)), "");
}

}  // namespace
}  // namespace roundwright
