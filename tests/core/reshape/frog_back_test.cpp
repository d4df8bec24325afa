#include "core/reshape/frog_back.h"

#include <gtest/gtest.h>
#include <random>

#include "core/materials/yarn_use.h"
#include "core/rounds/piece_graph.h"
#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::ball_piece;
using testing::piece_of;

FrogBack back_between(const Piece& old, const Piece& made, const WorkedSoFar& worked) {
    return frog_back(old, piece_graph(old).graph, made, piece_graph(made).graph, worked);
}

TEST(FrogBack, ASmallerBallKeepsTheRoundsBothHave) {
    // 11 rounds worked: 6, 12, 18, 24, 30, 36 and five of 36; both have 6, 12, 18, 24.
    const FrogBack back = back_between(ball_piece(6), ball_piece(4), {11, 0, {}});
    EXPECT_EQ(back.keep_rounds, 4);
    EXPECT_EQ(back.undo_rounds, 7);
    EXPECT_EQ(back.undo_stitches, 30 + 6 * 36);
}

TEST(FrogBack, ARoundBegunStaysIfItGoesOnTheSame) {
    Piece longer = piece_of({6, 12, 18, 18, 12});
    Piece shorter = piece_of({6, 12, 18, 12, 6});
    const FrogBack same = back_between(longer, shorter, {2, 9, {}});
    EXPECT_EQ(same.keep_rounds, 2);
    EXPECT_EQ(same.keep_stitches, 9);
    EXPECT_EQ(same.undo_rounds, 0);
    const FrogBack other = back_between(longer, shorter, {3, 2, {}});
    EXPECT_EQ(other.keep_rounds, 3);
    EXPECT_EQ(other.keep_stitches, 0);
    EXPECT_EQ(other.undo_rounds, 1);
    EXPECT_EQ(other.undo_stitches, 2);
}

TEST(FrogBack, AnotherStartKeepsNothing) {
    Piece tube = piece_of({12, 12, 12}, End::left_open);
    tube.start = OpenTube{12};
    Piece wide = tube;
    wide.start = OpenTube{13};
    const FrogBack back = back_between(tube, wide, {2, 0, {}});
    EXPECT_EQ(back.keep_rounds, 0);
    EXPECT_EQ(back.undo_rounds, 2);
}

TEST(FrogBack, AnotherColourIsAnotherRound) {
    Piece striped = ball_piece(4);
    striped.rounds[3].yarn = 1;
    EXPECT_EQ(back_between(ball_piece(4), striped, {8, 0, {}}).keep_rounds, 3);
}

TEST(FrogBack, ProgressPastThePieceCountsUpToItsEnd) {
    const FrogBack back = back_between(piece_of({6, 12}), piece_of({6, 12}), {9, 7, {}});
    EXPECT_EQ(back.keep_rounds, 2);
    EXPECT_EQ(back.undo_stitches, 0);
    const WorkedSoFar whole = usable_progress({1, 12, {}}, piece_graph(piece_of({6, 12})).graph);
    EXPECT_EQ(whole.rounds, 2);
    EXPECT_EQ(whole.stitches, 0);
}

TEST(FrogBack, YarnComesFreeByStitchAndByYarn) {
    Piece old = piece_of({6, 12, 12});
    old.rounds[2].yarn = 1;
    Toy toy;
    toy.yarns.resize(2);
    toy.making.yarn_per_ten_stitches_mm = 300;
    const StitchGraph graph = piece_graph(old).graph;
    WorkedSoFar worked{2, 5, {}};
    FrogBack back = back_between(old, piece_of({6, 9, 12}), worked);
    measure_yarn(back, old, graph, worked, toy, {5, 5, 0, 0});
    ASSERT_EQ(back.undo_yarn_mm.size(), 2u);
    EXPECT_NEAR(back.undo_yarn_mm[0].likely, 12 * 30, 1e-9);  // an increase is two single crochets
    EXPECT_NEAR(back.undo_yarn_mm[1].likely, 5 * 30, 1e-9);
    EXPECT_NEAR(back.yarn_mm().likely, 17 * 30, 1e-9);
}

TEST(FrogBack, TimesOfTheRoundsKeptAreKept) {
    const WorkedSoFar worked{3, 4, {10, 20, 30, 7}};
    FrogBack back;
    back.keep_rounds = 2;
    EXPECT_EQ(progress_kept(worked, back), (WorkedSoFar{2, 0, {10, 20}}));
}

// The worked stitches one after another, each with all that makes it that stitch.
struct OneStitch {
    int round;
    GraphStitch made;
    int first_below;
    int loops_below;
    bool operator==(const OneStitch&) const = default;
};

std::vector<OneStitch> in_order(const StitchGraph& graph) {
    std::vector<OneStitch> all;
    for (int r = 0; r < static_cast<int>(graph.rounds.size()); ++r)
        for (const GraphStitch& made : graph.rounds[r].stitches)
            all.push_back({r, made, graph.rounds[r].first_below, graph.rounds[r].loops_below});
    return all;
}

// Compares stitch after stitch and then goes back to where a round ends, or to the hook.
int kept_stitches_by_hand(const Piece& old, const Piece& made, int worked) {
    const auto a = in_order(piece_graph(old).graph);
    const auto b = in_order(piece_graph(made).graph);
    if (old.start != made.start) return 0;
    int same = 0;
    while (same < worked && same < static_cast<int>(b.size()) && a[same] == b[same]) ++same;
    if (same == 0) return 0;
    if (same == worked) {  // all of it; but a whole round must be the whole round there too
        const bool ends_round = same == static_cast<int>(a.size()) || a[same].round != a[same - 1].round;
        const bool ends_there = same == static_cast<int>(b.size()) || b[same].round != b[same - 1].round;
        if (!ends_round || ends_there) return same;
    }
    if (same == static_cast<int>(b.size()) && same < static_cast<int>(a.size()) &&
        a[same].round != a[same - 1].round)
        return same;
    while (same > 0) {
        const bool a_ends = same < static_cast<int>(a.size()) && a[same].round != a[same - 1].round;
        const bool b_ends = same == static_cast<int>(b.size()) || b[same].round != b[same - 1].round;
        if (a_ends && b_ends) return same;
        --same;
    }
    return 0;
}

Piece changed_somewhere(const Piece& piece, std::mt19937& random) {
    Piece changed = piece;
    const auto at = std::uniform_int_distribution<std::size_t>(0, piece.rounds.size() - 1)(random);
    auto& even = std::get<WorkedEvenly>(changed.rounds[at].working);
    switch (std::uniform_int_distribution<int>(0, 6)(random)) {
        case 0:
            even.stitches += 1;
            break;
        case 1:
            even.kind = StitchKind::double_crochet;
            break;
        case 2:
            even.part = LoopPart::back;
            break;
        case 3:
            even.spacing = Spacing::staggered;
            break;
        case 4:
            changed.rounds[at].yarn += 1;
            break;
        case 5:
            changed.rounds.erase(changed.rounds.begin() + static_cast<std::ptrdiff_t>(at));
            break;
        default:
            break;
    }
    return changed;
}

TEST(FrogBack, EqualsAComparisonStitchByStitch) {
    std::mt19937 random(41);
    for (int i = 0; i < testing::random_cases(10'000); ++i) {
        const Piece old = testing::random_piece(random);
        const Piece made = i % 4 == 0 ? testing::random_piece(random) : changed_somewhere(old, random);
        const StitchGraph graph = piece_graph(old).graph;
        const int rounds =
            std::uniform_int_distribution<int>(0, static_cast<int>(old.rounds.size()) - 1)(random);
        const int size = static_cast<int>(graph.rounds[rounds].stitches.size());
        const int stitches = std::uniform_int_distribution<int>(0, size - 1)(random);
        const FrogBack back = back_between(old, made, {rounds, stitches, {}});
        int worked = stitches;
        int kept = back.keep_stitches;
        for (int r = 0; r < rounds; ++r) worked += static_cast<int>(graph.rounds[r].stitches.size());
        for (int r = 0; r < back.keep_rounds; ++r) kept += static_cast<int>(graph.rounds[r].stitches.size());
        ASSERT_EQ(kept, kept_stitches_by_hand(old, made, worked)) << "case " << i;
        ASSERT_EQ(back.undo_stitches, worked - kept);
    }
}

}  // namespace
}  // namespace roundwright
