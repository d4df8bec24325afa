#include <gtest/gtest.h>
#include <random>

#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

// At most two stitches into each loop and one stitch over each two: common practice for evenly worked rounds.
TEST(CheckCounts, DoubleCanBeWorkedAndOneMoreCannot) {
    EXPECT_EQ(named(checks_of(toy_of({6, 12}), CheckCode::too_many_increases)), "");
    const auto checks = checks_of(toy_of({6, 13}), CheckCode::too_many_increases);
    ASSERT_EQ(named(checks), "too_many_increases round 2; ");
    EXPECT_EQ(checks[0].severity, Severity::error);
    EXPECT_EQ(checks[0].arguments, (std::vector<Argument>{13, 6, 12, Millimetres{5}}));
}

TEST(CheckCounts, HalfCanBeWorkedAndOneFewerCannot) {
    EXPECT_EQ(named(checks_of(toy_of({6, 3}), CheckCode::too_many_decreases)), "");
    EXPECT_EQ(named(checks_of(toy_of({7, 4}), CheckCode::too_many_decreases)), "");
    EXPECT_EQ(named(checks_of(toy_of({7, 3}), CheckCode::too_many_decreases)),
              "too_many_decreases round 2; ");
    const auto checks = checks_of(toy_of({12, 4}), CheckCode::too_many_decreases);
    ASSERT_EQ(named(checks), "too_many_decreases round 2; ");
    EXPECT_EQ(checks[0].arguments, (std::vector<Argument>{4, 12, 6, Millimetres{10}}));
}

TEST(CheckCounts, AnyCountGoesIntoARing) {
    Toy toy = toy_of({40});
    EXPECT_EQ(named(checks_of(toy, CheckCode::too_many_increases)), "");
    toy.pieces[0].start = ChainRing{4};
    EXPECT_EQ(named(checks_of(toy, CheckCode::too_many_increases)), "");
    toy.pieces[0].start = OpenTube{20};
    EXPECT_EQ(named(checks_of(toy, CheckCode::too_many_increases)), "");
    toy.pieces[0].start = OpenTube{19};
    EXPECT_EQ(named(checks_of(toy, CheckCode::too_many_increases)), "too_many_increases round 1; ");
}

TEST(CheckCounts, CuresAreTheNearestCountAndRoundsBetween) {
    const auto more = checks_of(toy_of({6, 20}), CheckCode::too_many_increases).at(0);
    ASSERT_EQ(more.cures.size(), 2);
    EXPECT_EQ(counts_of(more.cures[0].rounds), (std::vector<int>{12}));
    EXPECT_EQ(counts_of(more.cures[1].rounds), (std::vector<int>{11, 20}));
    EXPECT_EQ(more.cures[1].kind, CureKind::spread_increases);
    const auto fewer = checks_of(toy_of({30, 6}), CheckCode::too_many_decreases).at(0);
    EXPECT_EQ(counts_of(fewer.cures[0].rounds), (std::vector<int>{15}));
    EXPECT_EQ(counts_of(fewer.cures[1].rounds), (std::vector<int>{18, 11, 6}));
    EXPECT_EQ(fewer.cures[1].kind, CureKind::spread_decreases);
    // Past three rounds put in, the steps would be a piece of their own.
    EXPECT_EQ(checks_of(toy_of({6, 96}), CheckCode::too_many_increases).at(0).cures.size(), 2);
    EXPECT_EQ(checks_of(toy_of({6, 97}), CheckCode::too_many_increases).at(0).cures.size(), 1);
}

TEST(CheckCounts, EveryCureCanBeWorked) {
    std::mt19937 random(7);
    const auto count = [&random] { return std::uniform_int_distribution<int>(1, 60)(random); };
    int cures = 0;
    for (int i = 0; i < 1'000; ++i) {
        const Toy toy = toy_of({count(), count()});
        for (const Check& check : checks_of(toy)) {
            if (check.code != CheckCode::too_many_increases && check.code != CheckCode::too_many_decreases)
                continue;
            ASSERT_FALSE(check.cures.empty());
            for (const Cure& cure : check.cures) {
                const Toy mended = cured(toy, cure);
                ASSERT_EQ(named(checks_of(mended, check.code)), "")
                    << testing::PrintToString(counts_of(mended.pieces[0].rounds));
                ++cures;
            }
        }
    }
    EXPECT_GT(cures, 500);
}

}  // namespace
}  // namespace roundwright
