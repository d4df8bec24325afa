#include <gtest/gtest.h>
#include <random>
#include <thread>

#include "core/rounds/piece_graph.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

Piece ball() {
    Piece piece;
    for (const int count : {6, 12, 18, 24, 24, 18, 12, 6})
        piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    return piece;
}

TEST(SharedGraph, IsDerivedOnceForAllWhoAsk) {
    const SharedGraph shared(std::make_shared<const Piece>(ball()));
    const auto before = graphs_derived();
    std::vector<std::thread> askers;
    for (int i = 0; i < 4; ++i) askers.emplace_back([&shared] { (void)shared.get(); });
    for (std::thread& asker : askers) asker.join();
    EXPECT_EQ(shared.get().graph, piece_graph(ball()).graph);
    EXPECT_EQ(graphs_derived() - before, 2u) << "the other is the one it is compared with";
}

TEST(SharedGraph, IsNotDerivedForNobody) {
    const auto before = graphs_derived();
    const SharedGraph shared(std::make_shared<const Piece>(ball()));
    EXPECT_EQ(graphs_derived(), before);
}

TEST(SameStitches, MarksNotesAndTheFaceDoNotCount) {
    const Piece piece = ball();
    Piece other = piece;
    other.name = "Fin";
    other.features.resize(1);
    other.worked.rounds = 3;
    other.rounds[2].note = "Rest a while.";
    other.rounds[2].lies_flat = true;
    EXPECT_TRUE(same_stitches(piece, other));
    for (const auto& change : {+[](Piece& changed) { changed.start = OpenTube{6}; },
                               +[](Piece& changed) { changed.rounds[3].yarn = 1; },
                               +[](Piece& changed) { changed.rounds[3].working = AsWritten{"inc around"}; },
                               +[](Piece& changed) { changed.rounds.pop_back(); }}) {
        Piece changed = piece;
        change(changed);
        EXPECT_FALSE(same_stitches(piece, changed));
    }
}

/// Counts as they come, some of them not workable, and words that come out or do not.
Piece piece_at_random(std::mt19937& random) {
    const std::vector<std::string> words{
        "inc around",           "[sc, inc] x 6", "sc 4, dec", "2 hdc, ch 3, sk 2, sc",
        "sc in each st around", "not a round"};
    Piece piece;
    if (random() % 3 == 0) piece.start = OvalChain{static_cast<int>(random() % 8) + 2};
    for (int i = static_cast<int>(random() % 9) + 1; i > 0; --i) {
        WorkedEvenly even{static_cast<int>(random() % 30) + 1};
        if (random() % 2 == 0) even.spacing = Spacing::staggered;
        if (random() % 4 == 0) even.kind = StitchKind::double_crochet;
        Round round{even, random() % 3, false, ""};
        if (random() % 3 == 0) round.working = AsWritten{words[random() % words.size()]};
        piece.rounds.push_back(round);
    }
    return piece;
}

TEST(RoundBelow, OfTheGraphIsThatOfTheRoundsWorkedThrough) {
    std::mt19937 random(8);
    for (int i = 0; i < testing::random_cases(3'000); ++i) {
        const Piece piece = piece_at_random(random);
        const StitchGraph graph = piece_graph(piece).graph;
        for (std::size_t round = 0; round <= piece.rounds.size(); ++round) {
            const RoundSetting expected = cell_setting(piece, round, Terms::us);
            const RoundSetting known = cell_setting(piece, graph, round, Terms::us);
            ASSERT_EQ(known.work.loops_below, expected.work.loops_below);
            ASSERT_EQ(known.work.into_ring, expected.work.into_ring);
            ASSERT_EQ(known.work.oval_chains, expected.work.oval_chains);
            ASSERT_EQ(known.work.most_stitches, expected.work.most_stitches);
            ASSERT_EQ(known.even, expected.even);
            YarnTable yarns;
            const Round there = round < piece.rounds.size() ? piece.rounds[round] : Round{};
            for (const char* words : {"[sc, inc] x 6", "sc in each st around", "inc, sc 3"}) {
                const ReadCell whole = read_cell(piece, round, words, Terms::us, yarns);
                const ReadCell quick =
                    read_cell(there, RoundBelow::before(piece, graph, round), words, Terms::us, yarns);
                ASSERT_EQ(quick.round, whole.round) << words;
                ASSERT_EQ(quick.reading.made, whole.reading.made) << words;
            }
        }
    }
}

TEST(RoundBelow, WhereNoRoomIsLeftTheGraphSaysSo) {
    Piece piece;
    for (const int count : {100'000, 100'000, 7, 150'000, 9}) {
        WorkedEvenly even{count};
        even.spacing = Spacing::staggered;
        piece.rounds.push_back({even, 0, false, ""});
    }
    const StitchGraph graph = piece_graph(piece).graph;
    for (std::size_t round = 0; round <= piece.rounds.size(); ++round)
        EXPECT_EQ(cell_setting(piece, graph, round, Terms::us).work.most_stitches,
                  cell_setting(piece, round, Terms::us).work.most_stitches);
}

}  // namespace
}  // namespace roundwright
