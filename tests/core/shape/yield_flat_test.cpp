#include "core/shape/yield_flat.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <numeric>
#include <random>
#include <string>

#include "core/gauge/flat_limits.h"
#include "core/shape/fabric_thickness.h"
#include "core/shape/lie.h"
#include "core/shape/lies_limp.h"
#include "core/shape/reads_as_flat.h"
#include "core/shape/solve_shape.h"
#include "core/shape/wave_length.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

using std::numbers::pi;

ShapeProblem open_piece(const std::vector<int>& counts, double h = width_mm, double w = width_mm) {
    return piece_of(counts, unstuffed_stretch, MeridianEnd::open, w, h);
}

Shape settled(const ShapeProblem& problem, const Shape* warm = nullptr) {
    const Shape shape = solve_shape(problem, {}, warm);
    EXPECT_EQ(shape.termination, Termination::converged);
    return shape;
}

double sum_of_heights(const ShapeProblem& problem) {
    return std::accumulate(problem.rest_height_mm.begin(), problem.rest_height_mm.end(), 0.0);
}

std::vector<int> with_more(std::vector<int> counts, int rounds, int more) {
    for (int i = 0; i < rounds; ++i) counts.push_back(counts.back() + more);
    return counts;
}

bool any(const std::vector<RoundLie>& lies, Lie lie) {
    return std::ranges::any_of(lies, [&](const RoundLie& round) { return round.lie == lie; });
}

void expect_flat(const ShapeProblem& problem, const std::string& name) {
    const Shape shape = settled(problem);
    const auto lies = lie_of_rounds(problem, shape);
    EXPECT_LT(shape.height_mm, 1e-9) << name;
    EXPECT_NEAR(shape.radius_mm.back(), sum_of_heights(problem), 1e-6) << name;
    EXPECT_TRUE(std::ranges::all_of(lies, [](const RoundLie& r) { return r.lie == Lie::lies_flat; })) << name;
}

// "Lily round rug": 55 rounds of six more, 12 stitches and 12 rounds in 100 mm, flat, about 940 mm across.
TEST(YieldFlat, ARugOfFiftyFiveRoundsLiesFlat) {
    const ShapeProblem rug = open_piece(disc_counts(6, 55), 100.0 / 12, 100.0 / 12);
    expect_flat(rug, "rug");
    EXPECT_NEAR(settled(rug).width_mm, 940, 0.03 * 940);
}

// "Pocket-Size Planet gauge circle": five rounds of six more, 50.8 mm across, so h = 5.08 mm; coasters of six
// a round lie flat by common practice, in all hands but the extreme ones.
TEST(YieldFlat, CoastersLieFlat) {
    for (const double ratio : {0.91, 0.955, 1.0, 1.047, 1.1, 1.15})
        expect_flat(open_piece(disc_counts(6, 5), 5.08, 5.08 / ratio), std::to_string(ratio));
}

// Common practice, at h = w: six singles lie flat, and so do eight half doubles (1.5 high) and twelve doubles
// (2 high); seven and eight singles ruffle, five cup.
TEST(YieldFlat, LimitsHoldToCommonPractice) {
    expect_flat(open_piece(disc_counts(6, 12)), "six singles");
    expect_flat(open_piece(disc_counts(8, 12), 1.5 * width_mm), "eight half doubles");
    expect_flat(open_piece(disc_counts(12, 12), 2 * width_mm), "twelve doubles");
    for (const int ruffled : {7, 8}) {
        const ShapeProblem disc = open_piece(disc_counts(ruffled, 12));
        const Shape shape = settled(disc);
        EXPECT_EQ(lie_of_rounds(disc, shape).back().lie, Lie::ruffles) << ruffled;
        EXPECT_LT(shape.height_mm, 1e-3) << ruffled;
        EXPECT_NEAR(shape.radius_mm.back(), sum_of_heights(disc), 0.01 * shape.radius_mm.back());
    }
    const ShapeProblem five = open_piece(disc_counts(5, 12));
    EXPECT_TRUE(std::ranges::all_of(lie_of_rounds(five, settled(five)),
                                    [](const RoundLie& r) { return r.lie == Lie::cups; }));
}

// Half angle asin(k / 2 pi) at h = w: what cups keeps the form that its counts make.
TEST(YieldFlat, AConeOfFewStaysACone) {
    for (const int k : {2, 3, 4, 5}) {
        const ShapeProblem cone = open_piece(disc_counts(k, 9));
        EXPECT_TRUE(yielded_flat(cone).problem == cone) << k;
        const Shape shape = settled(cone);
        EXPECT_NEAR(shape.height_mm, 9 * width_mm * std::cos(std::asin(k / (2 * pi))), 1e-3) << k;
    }
}

// "Ghost / pumpkin egg cozy": a base of five rounds of six more, and 15 even rounds of 30, 63.5 mm wide and
// 101.6 mm tall, so that a stitch is 6.65 mm wide in rounds, and a round about 6.8 mm high.
TEST(YieldFlat, ACupKeepsItsWall) {
    for (const double h : {6.35, 6.65, 6.8}) {
        const ShapeProblem cup = open_piece(with_more(disc_counts(6, 5), 15, 0), h, 6.65);
        const Shape shape = settled(cup);
        EXPECT_NEAR(shape.width_mm, 63.5, 0.02 * 63.5) << h;
        EXPECT_NEAR(shape.height_mm, 15 * h, 0.02 * 15 * h);
        for (std::size_t i = 8; i < shape.z_mm.size(); ++i)
            EXPECT_NEAR(shape.z_mm[i] - shape.z_mm[i - 1], h, 0.01 * h) << h << ", round " << i;
        const auto lies = lie_of_rounds(cup, shape);
        for (std::size_t round = 0; round < 5; ++round)
            EXPECT_EQ(lies[round].lie, Lie::lies_flat) << h << ", round " << round + 1;
    }
}

// The same cup as a toy stands by itself; a leg of twenty even rounds on three flat ones lies limp.
TEST(YieldFlat, ACupOnAFlatBaseStandsAndALegLiesLimp) {
    EXPECT_FALSE(lies_limp(open_piece(with_more(disc_counts(6, 5), 15, 0))));
    EXPECT_TRUE(lies_limp(open_piece(with_more(disc_counts(6, 5), 25, 0))));
    EXPECT_TRUE(lies_limp(open_piece(with_more(disc_counts(6, 3), 20, 0))));
    EXPECT_TRUE(lies_limp(open_piece(with_more(disc_counts(6, 5), 15, -1))));
}

// A wide base would still be within the limits of pulling where its wall begins: it must not eat into it.
TEST(YieldFlat, AWideBaseEndsWhereItsWallBegins) {
    for (const int rounds : {5, 20, 55})
        for (const double ratio : {0.93, 1.0, 1.1}) {
            const double h = ratio * width_mm;
            const ShapeProblem tray = open_piece(with_more(disc_counts(6, rounds), 6, 0), h);
            const Shape shape = settled(tray);
            EXPECT_NEAR(shape.height_mm, 6 * h, 1.2 * h) << rounds << " rounds, " << ratio;
        }
}

// Nothing jumps where the gauge crosses a limit: halving a small step of it halves what it changes, or, where
// a flat disc begins to rise, takes its root.
TEST(YieldFlat, TheShapeIsContinuousInTheGauge) {
    const std::vector<std::vector<int>> pieces{disc_counts(6, 12),
                                               disc_counts(7, 12),
                                               disc_counts(5, 12),
                                               with_more(disc_counts(6, 8), 6, 0),
                                               with_more(disc_counts(6, 6), 6, 4),
                                               with_more(disc_counts(6, 6), 6, 8),
                                               {36, 36, 48, 48, 60, 60, 72, 72},
                                               {8, 16, 24, 32, 40, 48, 45},
                                               {6, 12, 18, 24, 30, 36, 30, 22, 30, 36, 42},
                                               {6, 12, 18, 24, 24, 24, 30, 36, 42}};
    const auto size_at = [](const std::vector<int>& counts, double ratio) {
        const Shape shape = settled(open_piece(counts, ratio * width_mm));
        return std::pair(shape.width_mm, shape.height_mm);
    };
    for (const auto& counts : pieces) {
        const double size = size_at(counts, 1).first;
        for (double ratio = 0.8; ratio < 1.3; ratio += 0.01) {
            // The place of the largest change, found by halving.
            double low = ratio;
            double high = ratio + 0.01;
            for (int i = 0; i < 24; ++i) {
                const double middle = (low + high) / 2;
                const auto [wl, hl] = size_at(counts, low);
                const auto [wm, hm] = size_at(counts, middle);
                const auto [wh, hh] = size_at(counts, high);
                const bool below =
                    std::abs(wm - wl) + std::abs(hm - hl) > std::abs(wh - wm) + std::abs(hh - hm);
                (below ? high : low) = middle;
            }
            const auto [wl, hl] = size_at(counts, low);
            const auto [wh, hh] = size_at(counts, high);
            EXPECT_NEAR(wl, wh, 0.002 * size) << counts.back() << " at " << low;
            EXPECT_NEAR(hl, hh, 0.002 * size) << counts.back() << " at " << low;
        }
    }
}

// What gathers above a base pulls it out of its plane.
TEST(YieldFlat, ABaseThatIsDrawnInDoesNotStayFlat) {
    const ShapeProblem bag = open_piece({6, 12, 18, 24, 30, 36, 42, 48, 24, 24});
    const Shape shape = settled(bag);
    for (std::size_t i = 1; i < shape.z_mm.size(); ++i) EXPECT_NEAR(shape.wale_stretch[i - 1], 0, 0.1) << i;
}

// A hat: its crown and its brim lie flat, its side stands.
TEST(YieldFlat, ABrimLiesFlatAroundItsHat) {
    const ShapeProblem hat = open_piece({6, 12, 18, 24, 30, 30, 30, 30, 36, 42, 48});
    const Shape shape = settled(hat);
    const auto lies = lie_of_rounds(hat, shape);
    EXPECT_NEAR(shape.z_mm[8], 3 * width_mm, 0.1 * width_mm);
    for (std::size_t i = 9; i <= 11; ++i) {
        EXPECT_NEAR(shape.z_mm[i], shape.z_mm[8], 1e-9);
        EXPECT_EQ(lies[i - 1].lie, Lie::lies_flat) << i;
    }
}

// One disc and its double: what is joined edge on edge lies as wide as one alone.
TEST(YieldFlat, TwoJoinedDiscsAreAsWideAsOne) {
    std::vector<int> both = disc_counts(6, 8);
    for (int count = 42; count >= 6; count -= 6) both.push_back(count);
    ShapeProblem joined = piece_of(both, unstuffed_stretch, MeridianEnd::drawn_closed);
    lay_unstuffed(joined, Joining::spiral);
    ASSERT_TRUE(joined.on_its_face);
    EXPECT_NEAR(settled(joined).width_mm, settled(open_piece(disc_counts(6, 8))).width_mm, 1e-9);
}

// A ring worked inwards from its edge is the ring worked outwards, turned over.
TEST(YieldFlat, ARingWorkedInwardsLiesAsOutwards) {
    ShapeProblem outwards = open_piece({24, 30, 36, 42, 48});
    outwards.first = MeridianEnd::open;
    outwards.rest_loop_mm.front() = 18 * width_mm;
    ShapeProblem inwards = outwards;
    std::ranges::reverse(inwards.rest_loop_mm);
    const Shape out = settled(outwards);
    const Shape in = settled(inwards);
    EXPECT_LT(out.height_mm, 1e-9);
    EXPECT_LT(in.height_mm, 1e-9);
    EXPECT_NEAR(out.width_mm, in.width_mm, 1e-9);
    EXPECT_NEAR(out.width_mm, 2 * (18 * width_mm / (2 * pi) + 5 * width_mm), 1e-9);
}

TEST(YieldFlat, AnOvalsEquivalentDiscLiesFlat) {
    ShapeProblem oval = open_piece({26, 32, 38, 44});
    oval.first = MeridianEnd::drawn_closed;
    oval.rest_loop_mm.front() = 20 * width_mm;
    oval.first_fan_height_mm = oval.rest_loop_mm.front() / (2 * pi);
    const Shape shape = settled(oval);
    EXPECT_LT(shape.height_mm, 1e-9);
    EXPECT_NEAR(shape.width_mm, 2 * (oval.first_fan_height_mm + 4 * width_mm), 1e-9);
}

TEST(YieldFlat, StuffedPiecesDoNotYield) {
    const ShapeProblem stuffed = piece_of(ball_counts(6), medium_stuffing_stretch, MeridianEnd::drawn_closed);
    const Shape shape = settled(stuffed);
    EXPECT_GT(shape.height_mm / shape.width_mm, 0.9);
}

// Stretches are told from the fabric as it was worked: 2 pi / 6 - 1 around, and none upwards.
TEST(YieldFlat, SaysHowFarTheLoopsArePulled) {
    const Shape disc = settled(open_piece(disc_counts(6, 9)));
    for (std::size_t i = 1; i <= 9; ++i) {
        EXPECT_NEAR(disc.course_stretch[i], pi / 3 - 1, 1e-9);
        EXPECT_NEAR(disc.wale_stretch[i - 1], 0, 1e-9);
    }
}

TEST(YieldFlat, DoesNotDependOnTheShapeBefore) {
    const ShapeProblem flat = open_piece(disc_counts(6, 9));
    const ShapeProblem five = open_piece(disc_counts(5, 9));
    const Shape cone = settled(five);
    const Shape disc = settled(flat);
    EXPECT_EQ(settled(flat, &cone).radius_mm, disc.radius_mm);
    EXPECT_NEAR(settled(five, &disc).height_mm, cone.height_mm, 1e-5);
}

/// A disc near the limits: 4 to 10 more a round, the same or changing, in every round or in every second or
/// third; singles, half doubles and doubles; from a ring, or around a hole of a chain; h / w from 0.8
/// to 1.25.
ShapeProblem random_disc(std::mt19937& random) {
    const auto up_to = [&](unsigned most) { return static_cast<int>(random() % (most + 1)); };
    const double h = width_mm * (0.8 + 0.001 * up_to(450));
    const int tall = up_to(9) < 7 ? 2 : 3 + up_to(1);
    const bool has_hole = up_to(2) == 0;
    const int together = up_to(9) < 7 ? 1 : 2 + up_to(1);
    int more = (4 + up_to(6)) * tall / 2;
    std::vector<int> counts;
    int count = has_hole ? 3 + up_to(20) : 0;
    ShapeProblem disc = open_piece({}, h);
    if (has_hole) {
        disc.first = MeridianEnd::open;
        disc.rest_loop_mm.front() = count * width_mm;
    }
    const int rounds = 1 + up_to(59);
    for (int i = 0; i < rounds; ++i) {
        if (up_to(20) == 0) more = std::max(1, more - 2 + up_to(4));
        if (i % together == 0) count += together * more;
        disc.rest_loop_mm.push_back(count * width_mm);
        disc.rest_height_mm.push_back(h * tall / 2);
    }
    return disc;
}

std::string described(const ShapeProblem& problem, const std::vector<RoundLie>& lies) {
    std::string text = "h " + std::to_string(problem.rest_height_mm.front() / width_mm) + ":";
    for (std::size_t i = 0; i < problem.rest_loop_mm.size(); ++i) {
        text += ' ' + std::to_string(std::lround(problem.rest_loop_mm[i] / width_mm));
        if (i > 0) text += "fcecgr"[static_cast<int>(lies[i - 1].lie)];
    }
    return text;
}

/// The waves of the verdict are as long as the loop, once it is pushed together.
void expect_waves(const ShapeProblem& disc, const Shape& shape, const std::vector<RoundLie>& lies) {
    for (std::size_t i = 1; i <= lies.size(); ++i) {
        const RoundLie& lie = lies[i - 1];
        ASSERT_EQ(lie.waves > 0, lie.lie == Lie::ruffles);
        if (lie.waves == 0) continue;
        const double circle = 2 * pi * shape.radius_mm[i];
        const double length = circle * wave_length_ratio(lie.wave_height_mm / 2 / (circle / lie.waves));
        ASSERT_GT(lie.wave_height_mm, 0);
        ASSERT_NEAR(length, disc.rest_loop_mm[i] - pushed_together_mm(disc, i), 1e-6 * length);
        ASSERT_NEAR(lie.spare_length_mm, length - circle, 1e-6 * length);
    }
}

TEST(YieldFlat, VerdictShapeAndOutlineAgreeOnRandomDiscs) {
    int flat = 0;
    int cups = 0;
    int ruffles = 0;
    for (unsigned number = 0; number < 300; ++number) {
        std::mt19937 random(number);
        const ShapeProblem disc = random_disc(random);
        const Shape shape = settled(disc);
        const auto lies = lie_of_rounds(disc, shape);
        const std::string name = std::to_string(number) + ", " + described(disc, lies);
        const bool reads_flat = reads_as_flat(disc, shape.width_mm, shape.height_mm);
        const bool rises = any(lies, Lie::cups) || (any(lies, Lie::even) && !reads_flat);
        ASSERT_EQ(reads_flat, !rises) << name << ", " << shape.height_mm << " mm high";
        expect_waves(disc, shape, lies);
        if (!rises) {
            const double exact = any(lies, Lie::ruffles) ? 0.02 * shape.width_mm : fabric_thickness_mm(disc);
            double sum = shape.radius_mm.front();
            for (std::size_t i = 1; i < shape.radius_mm.size(); ++i) {
                sum += disc.rest_height_mm[i - 1];
                ASSERT_NEAR(shape.radius_mm[i], sum, exact) << name << ", round " << i;
            }
        }
        flat += !rises && !any(lies, Lie::ruffles);
        cups += any(lies, Lie::cups);
        ruffles += any(lies, Lie::ruffles);
    }
    EXPECT_GT(flat, 30);
    EXPECT_GT(cups, 30);
    EXPECT_GT(ruffles, 30);
}

// The limits that a gauge circle tells are those of the shape.
TEST(YieldFlat, FlatRatiosAreWhereTheVerdictTurns) {
    const FlatRatios flat = flat_ratios(6);
    const auto last_lie = [](double ratio) {
        const ShapeProblem disc = open_piece(disc_counts(6, 30), ratio * width_mm);
        return lie_of_rounds(disc, settled(disc)).back().lie;
    };
    EXPECT_EQ(last_lie(flat.least * 1.001), Lie::lies_flat);
    EXPECT_EQ(last_lie(flat.least * 0.999), Lie::ruffles);
    EXPECT_EQ(last_lie(flat.most * 0.999), Lie::lies_flat);
    EXPECT_EQ(last_lie(flat.most * 1.001), Lie::cups);
}

}  // namespace
}  // namespace roundwright::test
