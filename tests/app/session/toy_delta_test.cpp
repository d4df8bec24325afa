#include "app/session/toy_delta.h"

#include <gtest/gtest.h>
#include <random>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

TEST(ToyDelta, IsEmptyBetweenEqualToys) {
    Toy before = toy_of({6, 12, 18});
    Toy after = before;
    EXPECT_TRUE(ToyDelta(before, after).empty());
    EXPECT_EQ(before, toy_of({6, 12, 18}));
}

TEST(ToyDelta, SaysWhichRoundsChanged) {
    Toy before = toy_of({6, 12, 18, 24});
    Toy after = toy_of({6, 12, 15, 24});
    const auto changes = ToyDelta(before, after).changes();
    EXPECT_EQ(changes.pieces, (Splice{0, 1, 1}));
    EXPECT_EQ(changes.rounds, (Splice{2, 1, 1}));
    EXPECT_FALSE(changes.piece_settings);
    EXPECT_FALSE(changes.materials);
    EXPECT_FALSE(changes.piece_list());
    EXPECT_TRUE(changes.touches_piece(0));
}

TEST(ToyDelta, TellsWordsFromMaterials) {
    Toy before = toy_of({6});
    Toy after = before;
    after.notes = "For the harbour fair.";
    EXPECT_TRUE(ToyDelta(before, after).changes().words);
    EXPECT_FALSE(ToyDelta(before, after).changes().materials);
    after = before;
    after.private_notes = "Try a smaller nose.";
    EXPECT_TRUE(ToyDelta(before, after).changes().words);
    EXPECT_FALSE(ToyDelta(before, after).changes().materials);
    after = before;
    after.text.assembly = "Sew the flippers on.";
    EXPECT_TRUE(ToyDelta(before, after).changes().words);
    EXPECT_FALSE(ToyDelta(before, after).changes().materials);
    after = before;
    after.hook_mm = 4;
    EXPECT_TRUE(ToyDelta(before, after).changes().materials);
    EXPECT_FALSE(ToyDelta(before, after).changes().words);
}

TEST(ToyDelta, TellsThePieceListFromOnePiece) {
    Toy before = toy_of({6});
    Toy after = before;
    after.pieces.push_back(piece_of({6, 12}, "Ear"));
    const auto changes = ToyDelta(before, after).changes();
    EXPECT_TRUE(changes.piece_list());
    EXPECT_EQ(changes.pieces, (Splice{1, 0, 1}));
}

Toy changed_at_random(Toy toy, std::mt19937& random) {
    const auto pick = [&](std::size_t below) { return static_cast<std::ptrdiff_t>(random() % below); };
    switch (pick(7)) {
        case 0:
            toy.title += "x";
            break;
        case 1:
            toy.hook_mm += 0.5;
            break;
        case 2:
            toy.pieces.insert(toy.pieces.begin() + pick(toy.pieces.size() + 1), piece_of({6, 9}, "Fin"));
            break;
        case 3:
            if (!toy.pieces.empty()) toy.pieces.erase(toy.pieces.begin() + pick(toy.pieces.size()));
            break;
        case 4:
            if (!toy.pieces.empty()) toy.pieces[static_cast<std::size_t>(pick(toy.pieces.size()))].make += 1;
            break;
        default: {
            if (toy.pieces.empty()) break;
            auto& rounds = toy.pieces[static_cast<std::size_t>(pick(toy.pieces.size()))].rounds;
            rounds.insert(rounds.begin() + pick(rounds.size() + 1), piece_of({7}).rounds.front());
            if (rounds.size() > 3) rounds.erase(rounds.begin() + pick(rounds.size()));
        }
    }
    return toy;
}

TEST(ToyDelta, AppliesAndRevertsAnyChange) {
    std::mt19937 random(20);
    Toy toy = toy_of({6, 12, 18});
    for (int step = 0; step < 2000; ++step) {
        Toy after = toy;
        for (int change = 0; change <= step % 3; ++change) after = changed_at_random(after, random);
        Toy before = toy;
        const ToyDelta delta(before, after);
        ASSERT_EQ(before, toy);
        Toy walked = toy;
        delta.apply(walked);
        ASSERT_EQ(walked, after);
        delta.revert(walked);
        ASSERT_EQ(walked, toy);
        toy = after;
        if (toy.pieces.size() > 6) toy = toy_of({6, 12, 18});
    }
}

}  // namespace
}  // namespace roundwright::app
