#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/shape/fabric/solve_fabric.h"
#include "tests/support/fabric_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

/// Rounds that grow, keep or shrink as they like, never beyond doubling or halving.
std::vector<int> random_counts(std::mt19937& random) {
    const auto between = [&](int low, int high) { return std::uniform_int_distribution(low, high)(random); };
    std::vector<int> counts{between(4, 9)};
    for (int rounds = between(2, 25); rounds > 0; --rounds) {
        const int before = counts.back();
        const int change = between(-8, 9);
        counts.push_back(
            std::clamp(before + change, std::max(4, (before + 1) / 2), std::min(60, 2 * before)));
    }
    return counts;
}

FabricPieceOptions random_options(std::mt19937& random) {
    const auto chance = [&](double p) { return std::bernoulli_distribution(p)(random); };
    const auto within = [&](double low, double high) {
        return std::uniform_real_distribution(low, high)(random);
    };
    FabricPieceOptions options;
    options.stitch_width_mm = within(2, 10);
    options.round_height_mm = options.stitch_width_mm * within(0.8, 1.25);
    options.area_stretch = chance(0.2) ? 0 : within(0.005, 0.12);
    options.staggered = chance(0.7);
    options.drawn_closed = chance(0.7);
    return options;
}

// Stacked, staggered, open, drawn closed, stuffed or not: each settles, in numbers.
TEST(RandomFabric, Settles) {
    const int cases = roundwright::testing::random_cases(300);
    int settled = 0;
    for (int k = 0; k < cases; ++k) {
        std::mt19937 random(static_cast<unsigned>(k));
        const std::vector<int> counts = random_counts(random);
        const FabricPieceOptions options = random_options(random);
        const FabricPiece piece = round_piece(counts, options);
        const FabricShape shape = solve_fabric(piece.problem, piece.start);
        SCOPED_TRACE(k);
        ASSERT_TRUE(shape.usable());
        for (const Vec3& node : shape.nodes) ASSERT_TRUE(node.allFinite());
        if (shape.termination == Termination::converged) {
            ++settled;
            EXPECT_LE(shape.residual, 1e-3);
            EXPECT_GE(shape.area_stretch, 0.998 * options.area_stretch);
        } else {
            EXPECT_TRUE(shape.termination == Termination::iteration_limit ||
                        shape.termination == Termination::line_search_failed);
        }
    }
    // Of the first 900 sixteen do not, and say so: most are drawn closed over 24 to 56 loops, which fold.
    EXPECT_GE(settled, cases - std::max(1, cases / 40));
}

}  // namespace
}  // namespace roundwright::test
