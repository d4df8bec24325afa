#include "core/toy/join_edits.h"

#include <gtest/gtest.h>

#include "core/base/limits.h"

namespace roundwright {
namespace {

Round even(int stitches) { return {.working = WorkedEvenly{.stitches = stitches}, .note = {}}; }

/// A body of ten rounds with a pair of ears between rounds 5 and 6 and a tail at its last edge.
struct JoinEdits : ::testing::Test {
    JoinEdits() {
        Piece body;
        for (int i = 0; i < 10; ++i) body.rounds.push_back(even(30));
        body.features = {{.kind = FeatureKind::safety_eye, .name = {}, .round = 4}};
        Piece ear;
        ear.make = 2;
        toy.pieces = PieceList{body, ear, Piece{}};
        toy.joins = {
            {.piece = copy(1), .onto = copy(0), .pair = true, .at = {.round = 4, .stitches_right = 6}},
            {.piece = copy(2), .onto = copy(0), .at = {.round = 9}}};
    }
    PieceCopy copy(std::size_t piece, int number = 0) const { return {toy.pieces.id(piece), number}; }
    Toy edited(const RoundsEdit& edit) const { return edit_rounds(toy, 0, edit).value; }
    Toy toy;
};

TEST_F(JoinEdits, AJoinIsAddedChangedAndRemoved) {
    const Join join{.piece = copy(2), .onto = copy(1, 1), .at = {.round = 2}};
    const Toy added = add_join(toy, join).value;
    ASSERT_EQ(added.joins.size(), 3u);
    EXPECT_EQ(added.joins[2], join);
    Join turned = toy.joins[0];
    turned.turn_degrees = 20;
    EXPECT_EQ(change_join(toy, 0, turned).joins[0], turned);
    EXPECT_EQ(remove_join(toy, 0).joins, (std::vector<Join>{toy.joins[1]}));
    EXPECT_EQ(remove_join(toy, 9), toy);
    EXPECT_EQ(change_join(toy, 9, turned), toy);
}

TEST_F(JoinEdits, ChangingAJoinKeepsWhatItsFileHolds) {
    toy.joins[0].kept = KeptKeys(R"({"glue":true})");
    EXPECT_EQ(change_join(toy, 0, toy.joins[1]).joins[0].kept, toy.joins[0].kept);
}

TEST_F(JoinEdits, MoreThanAToyMayHoldAreRefused) {
    toy.joins.resize(max_joins, toy.joins[0]);
    const auto edited = add_join(toy, toy.joins[0]);
    EXPECT_EQ(edited.refusal, EditRefusal::too_many_joins);
    EXPECT_EQ(edited.value, toy);
}

TEST_F(JoinEdits, RoundsPutInBelowAGapTakeTheJoinAlongAsTheyDoFeatures) {
    const std::vector<Round> two{even(30), even(30)};
    const Toy below = edited([&](const Piece& piece) { return insert_rounds(piece, 2, two); });
    EXPECT_EQ(below.joins[0].at.round, 6);
    EXPECT_EQ(below.joins[0].at.stitches_right, 6);
    EXPECT_EQ(below.pieces[0].features.size(), 1u);
    EXPECT_EQ(below.pieces[0].features[0].round, 6);
    const Toy above = edited([&](const Piece& piece) { return insert_rounds(piece, 5, two); });
    EXPECT_EQ(above.joins[0].at.round, 4);
    const Toy fewer = edited([](const Piece& piece) {
        return Edited<Piece>{remove_rounds(piece, std::vector{0, 1})};
    });
    EXPECT_EQ(fewer.joins[0].at.round, 2);
}

TEST_F(JoinEdits, WhatIsAtTheLastEdgeStaysThere) {
    const Toy longer = edited([](const Piece& piece) {
        return insert_rounds(piece, 10, std::vector{even(24), even(18)});
    });
    EXPECT_EQ(longer.joins[1].at.round, 11);
    EXPECT_EQ(longer.joins[0].at.round, 4);
    const Toy shorter = edited([](const Piece& piece) {
        return Edited<Piece>{remove_rounds(piece, std::vector{7, 8, 9})};
    });
    EXPECT_EQ(shorter.joins[1].at.round, 6);
}

TEST_F(JoinEdits, WhatIsAtTheStartStaysThere) {
    toy.joins[0].at.round = -1;
    const Toy longer =
        edited([](const Piece& piece) { return insert_rounds(piece, 0, std::vector{even(6)}); });
    EXPECT_EQ(longer.joins[0].at.round, -1);
}

TEST_F(JoinEdits, ARefusedEditLeavesTheToyAsItWas) {
    const auto refused = edit_rounds(toy, 0, [](const Piece& piece) {
        return set_counts(piece, std::vector{0}, static_cast<int>(max_stitches_per_piece) + 1);
    });
    EXPECT_EQ(refused.refusal, EditRefusal::too_many_stitches);
    EXPECT_EQ(refused.value, toy);
}

TEST_F(JoinEdits, FewerCopiesTakeTheirJoinsAway) {
    toy.pieces[1].make = 4;
    toy.joins.push_back({.piece = copy(1, 2), .onto = copy(0), .pair = true, .at = {.round = 7}});
    toy.joins.push_back({.piece = copy(2), .onto = copy(1, 3), .at = {}});
    const Toy three = set_made(toy, 1, 3);
    ASSERT_EQ(three.joins.size(), 3u);
    EXPECT_TRUE(three.joins[0].pair);
    EXPECT_FALSE(three.joins[2].pair);
    const Toy one = set_made(toy, 1, 0);
    EXPECT_EQ(std::as_const(one).pieces[1].make, 1);
    ASSERT_EQ(one.joins.size(), 2u);
    EXPECT_FALSE(one.joins[0].pair);
}

TEST_F(JoinEdits, ARemovedPieceTakesItsJoinsAwayAndWhatWasOnItStands) {
    const Toy left = remove_piece(toy, 0);
    EXPECT_TRUE(left.joins.empty());
    EXPECT_EQ(left.pieces.size(), 2u);
    EXPECT_EQ(remove_piece(toy, 1).joins.size(), 1u);
}

TEST_F(JoinEdits, NamesWhatIsJoinedOntoAPiece) {
    EXPECT_EQ(pieces_joined_onto(toy, 0), (std::vector<std::size_t>{1, 2}));
    EXPECT_TRUE(pieces_joined_onto(toy, 1).empty());
}

}  // namespace
}  // namespace roundwright
