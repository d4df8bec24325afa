#include <gtest/gtest.h>
#include <random>

#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

bool fabric(const Check& check) {
    return check.code == CheckCode::ruffles || check.code == CheckCode::gathers;
}

std::vector<Check> fabric_checks(const Toy& toy) {
    std::vector<Check> checks = checks_of(toy);
    std::erase_if(checks, [](const Check& check) { return !fabric(check); });
    return checks;
}

double mm(const Argument& argument) { return std::get<Millimetres>(argument).value; }

// Six single crochets a round lie flat, a ball of n up, n even, n down is smooth (common practice): nothing
// to say.
TEST(CheckFabric, SixIncreaseDiscAndOrdinaryBallHaveNothingToMend) {
    for (int n = 4; n <= 20; ++n) EXPECT_EQ(named(checks_of(stuffed_toy_of(ball(n)))), "") << "ball of " << n;
    for (int rounds = 1; rounds <= 20; ++rounds) {
        EXPECT_EQ(named(fabric_checks(toy_of(disc(6, rounds)))), "") << "disc of " << rounds;
    }
}

// Eight single crochets a round ruffle (common practice); seven have 7 / (2 pi) = 1.11 times the length of a
// flat disc.
TEST(CheckFabric, SevenAndEightIncreasesRuffle) {
    for (const int increases : {7, 8}) {
        const auto checks = fabric_checks(toy_of(disc(increases, 6)));
        ASSERT_EQ(named(checks), "ruffles round 6; ") << increases;
        const auto& arguments = checks[0].arguments;
        ASSERT_EQ(arguments.size(), 5);
        EXPECT_EQ(std::get<int>(arguments[0]), increases);
        EXPECT_NEAR(std::get<double>(arguments[1]), 6.2832, 1e-4);  // 2 pi h / w
        EXPECT_GT(std::get<int>(arguments[2]), 1);
        EXPECT_GT(mm(arguments[3]), 1);
        // N w - 2 pi r, flat, but for the twentieth that can be pushed together
        EXPECT_NEAR(mm(arguments[4]), 30 * (0.95 * increases - 6.2832), 0.01);
    }
}

// On each side of the limit: six increases with h / w = 0.92 (4 % too long) lie flat by common practice, with
// 0.86 they have 11 % too much, as seven have at h = w.
TEST(CheckFabric, TheRatioOfHeightToWidthDecidesToo) {
    Toy toy = toy_of(disc(6, 8));
    toy.gauge = GivenGauge{{5, 4.6, 0, 0}};
    EXPECT_EQ(named(fabric_checks(toy)), "");
    toy.gauge = GivenGauge{{5, 4.3, 0, 0}};
    EXPECT_EQ(named(fabric_checks(toy)), "ruffles round 8; ");
}

TEST(CheckFabric, RuffleIsCuredByMoreRoundsOrFewerStitches) {
    const auto check = fabric_checks(toy_of({6, 12, 18, 24, 30, 60})).at(0);
    ASSERT_EQ(check.cures.size(), 2);
    EXPECT_EQ(check.cures[0].kind, CureKind::spread_increases);
    EXPECT_EQ(counts_of(check.cures[0].rounds), (std::vector<int>{36, 42, 48, 54, 60}));
    EXPECT_EQ(counts_of(check.cures[1].rounds), (std::vector<int>{36}));
}

// Common practice: 6 single, 8 half double and 12 double crochets a round lie flat. A disc that grows by more
// is cured by its start, with what comes after the disc in the same proportion.
TEST(CheckFabric, ADiscThatRufflesIsStartedWithFewer) {
    const std::tuple<StitchKind, int, int> cases[] = {{StitchKind::single_crochet, 8, 6},
                                                      {StitchKind::half_double_crochet, 12, 8},
                                                      {StitchKind::double_crochet, 16, 12}};
    for (const auto& [kind, many, flat] : cases) {
        std::vector<int> counts = disc(many, 8);
        counts.push_back(8 * many);
        Toy toy = toy_of(counts);
        for (Round& round : toy.pieces[0].rounds) std::get<WorkedEvenly>(round.working).kind = kind;
        const auto checks = fabric_checks(toy);
        ASSERT_FALSE(checks.empty()) << many;
        const Cure& cure = checks[0].cures.at(0);
        EXPECT_EQ(cure.kind, CureKind::change_start_count);
        std::vector<int> started = disc(flat, 8);
        started.push_back(8 * flat);
        EXPECT_EQ(counts_of(cure.rounds), started);
        EXPECT_EQ(named(fabric_checks(cured(toy, cure))), "") << many;
    }
}

TEST(CheckFabric, TheStartIsLeftAloneWhereItDoesNotRunThrough) {
    const auto checks = fabric_checks(toy_of({8, 16, 24, 32, 40, 48, 45}));
    ASSERT_FALSE(checks.empty());
    for (const Cure& cure : checks[0].cures) EXPECT_LT(cure.replaced, 7);
}

// On each side of the limit: a round that loses 8 of 6.28 (growth -1.27) closes, one that loses 9 (-1.43)
// gathers.
TEST(CheckFabric, EightDecreasesCloseAndNineGather) {
    for (const auto& [decreases, said] : {std::pair{8, 0u}, std::pair{9, 1u}}) {
        std::vector<int> counts = ball(8);
        counts.resize(16);
        for (int count = 48 - decreases; count > decreases; count -= decreases) counts.push_back(count);
        EXPECT_EQ(checks_of(stuffed_toy_of(counts), CheckCode::gathers).size(), said) << decreases;
    }
}

// A neck drawn from 30 to 15 at once loses 15 stitches where 6.3 lie flat.
TEST(CheckFabric, NeckGathers) {
    const Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 15, 15, 20, 24, 24, 18, 12, 6});
    const auto checks = checks_of(toy, CheckCode::gathers);
    ASSERT_EQ(named(checks), "gathers round 8; ");
    EXPECT_EQ(std::get<int>(checks[0].arguments.at(0)), 15);
    EXPECT_GT(mm(checks[0].arguments.at(1)), 10);
    ASSERT_FALSE(checks[0].cures.empty());
    EXPECT_EQ(counts_of(checks[0].cures[0].rounds), (std::vector<int>{25, 20, 15}));
    EXPECT_EQ(named(checks_of(cured(toy, checks[0].cures[0]), CheckCode::gathers)), "");
}

TEST(CheckFabric, SixDecreasesDoNotGather) {
    const Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 24, 24, 24, 24, 18, 12, 6});
    EXPECT_EQ(named(checks_of(toy, CheckCode::gathers)), "");
}

TEST(CheckFabric, CountThatCannotBeWorkedIsNotAlsoCalledGathered) {
    const Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 36, 36, 36, 6});
    EXPECT_EQ(named(checks_of(toy)), "too_many_decreases round 9; ");
}

/// An ordinary piece with one round at fault: a start of six increases, even rounds, then more or fewer
/// stitches at once than lie flat, then even rounds.
std::vector<int> piece_with_a_fault(std::mt19937& random) {
    const auto between = [&random](int least, int most) {
        return std::uniform_int_distribution<int>(least, most)(random);
    };
    std::vector<int> counts = disc(6, between(3, 9));
    counts.insert(counts.end(), static_cast<std::size_t>(between(0, 8)), counts.back());
    const int below = counts.back();
    const int fault =
        between(0, 1) == 0 ? between(below + 8, 2 * below) : between((below + 1) / 2, below - 8);
    counts.insert(counts.end(), static_cast<std::size_t>(between(1, 8)), fault);
    return counts;
}

TEST(CheckFabric, FirstCureLeavesNothingToMend) {
    std::mt19937 random(29);
    int cures = 0;
    for (int i = 0; i < 400; ++i) {
        const std::vector<int> counts = piece_with_a_fault(random);
        const Toy toy = i % 2 == 0 ? toy_of(counts) : stuffed_toy_of(counts);
        for (const Check& check : fabric_checks(toy)) {
            ASSERT_FALSE(check.cures.empty()) << testing::PrintToString(counts);
            const Toy mended = cured(toy, check.cures.front());
            ASSERT_EQ(named(checks_of(mended, check.code)), "")
                << testing::PrintToString(counts)
                << testing::PrintToString(counts_of(mended.pieces[0].rounds));
            ++cures;
        }
    }
    EXPECT_GT(cures, 200);
}

}  // namespace
}  // namespace roundwright
