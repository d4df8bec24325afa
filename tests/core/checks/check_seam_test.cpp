#include <gtest/gtest.h>

#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

Toy sewn(const std::vector<int>& counts) {
    Toy toy = toy_of(counts);
    toy.pieces[0].end = End::sewn_straight;
    return toy;
}

// Both layers are sewn together stitch by stitch (common practice), so they should have the same number.
TEST(CheckSeam, AnOddLastRoundLeavesAStitchOver) {
    const Toy toy = sewn({6, 12, 15, 15, 15, 15, 15});
    const auto checks = checks_of(toy, CheckCode::odd_seam);
    ASSERT_EQ(checks.size(), 1u);
    EXPECT_EQ(checks[0].round, 6);
    EXPECT_EQ(checks[0].severity, Severity::note);
    EXPECT_EQ(std::get<int>(checks[0].arguments.at(0)), 15);
    ASSERT_EQ(checks[0].cures.size(), 1u);
    const Toy mended = cured(toy, checks[0].cures[0]);
    EXPECT_EQ(counts_of(mended.pieces[0].rounds).back(), 16);
    EXPECT_TRUE(checks_of(mended, CheckCode::odd_seam).empty());
}

TEST(CheckSeam, AClosingRoundIsMendedByOneStitchFewer) {
    const auto checks = checks_of(sewn({6, 12, 18, 18, 18, 18, 13}), CheckCode::odd_seam);
    ASSERT_EQ(checks.size(), 1u);
    ASSERT_EQ(checks[0].cures.size(), 1u);
    EXPECT_EQ(counts_of(checks[0].cures[0].rounds), (std::vector{12}));
}

TEST(CheckSeam, AnEvenOneAndOtherEndsAreFine) {
    EXPECT_TRUE(checks_of(sewn({6, 12, 18, 18, 18, 18}), CheckCode::odd_seam).empty());
    EXPECT_TRUE(checks_of(toy_of({6, 12, 15, 15, 15}), CheckCode::odd_seam).empty());
    EXPECT_TRUE(checks_of(sewn({}), CheckCode::odd_seam).empty());
}

TEST(CheckSeam, RowsHaveNothingToFlatten) {
    Toy toy = sewn({12, 12, 12});
    toy.pieces[0].joining = Joining::rows;
    EXPECT_EQ(checks_of(toy, CheckCode::rows_not_flattened).size(), 1u);
    EXPECT_TRUE(checks_of(toy, CheckCode::odd_seam).empty());
}

// Edges and corners of stuffed fabric do not show on a piece that lies flat, and what stitches do still
// counts.
TEST(CheckSeam, AFlatEarHasNothingElseToMend) {
    EXPECT_EQ(named(checks_of(sewn({6, 12, 18, 24, 24, 24, 24, 24}))), "");
    const auto checks = checks_of(sewn({6, 12, 18, 24, 64, 64, 64, 64}));
    EXPECT_NE(named(checks), "");
}

}  // namespace
}  // namespace roundwright
