#include "app/assembly/toy_units.h"

#include <gtest/gtest.h>

#include "app/assembly/join_edits.h"
#include "core/assembly/first_joins.h"
#include "core/assembly/join_tree.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Toy pup() {
    Toy toy = toy_of({6, 12, 18, 24, 30, 30, 30, 30, 24, 18, 12, 6});
    toy.pieces.push_back(piece_of({6, 12, 18, 18, 18, 12, 6}, "Muzzle"));
    toy.pieces.push_back(piece_of({6, 9, 9}, "Flipper"));
    toy.pieces[2].make = 4;
    return toy;
}

PieceCopy copy(const Toy& toy, std::size_t piece, int number = 0) { return {toy.pieces.id(piece), number}; }

TEST(ToyUnits, AreEveryCopyAndEveryJoinOnce) {
    Toy toy = pup();
    Join pair;
    pair.piece = copy(toy, 2, 1);
    pair.onto = copy(toy, 0);
    pair.pair = true;
    toy.joins = {pair};
    const auto units = units_of(toy);
    ASSERT_EQ(units.size(), 5u);
    EXPECT_EQ(units[2].copies, (std::vector{copy(toy, 2, 0)}));
    EXPECT_EQ(units[3].copies, (std::vector{copy(toy, 2, 1), copy(toy, 2, 2)}));
    EXPECT_EQ(units[3].join, std::optional<std::size_t>(0));
    EXPECT_EQ(units[4].copies, (std::vector{copy(toy, 2, 3)}));
    EXPECT_FALSE(units[4].join);
}

TEST(ToyUnits, ListAJoinWhosePieceIsGoneAtTheEnd) {
    Toy toy = pup();
    Join lost;
    lost.piece = {static_cast<PieceId>(99), 0};
    lost.onto = copy(toy, 0);
    toy.joins = {lost};
    const auto units = units_of(toy);
    ASSERT_EQ(units.size(), 7u);
    EXPECT_FALSE(units.back().piece);
    EXPECT_EQ(units.back().join, std::optional<std::size_t>(0));
}

TEST(FirstPlaces, PutEveryPieceOnWithoutACircleAndNoTwoInOnePlace) {
    const Toy toy = roundwright::put_together(pup());
    const auto tree = join_tree(toy);
    EXPECT_TRUE(tree.problems.empty());
    std::size_t standing = 0;
    for (const auto& each : tree.copies) standing += each.join ? 0 : 1;
    EXPECT_EQ(standing, 1u);
    for (std::size_t a = 0; a < toy.joins.size(); ++a)
        for (std::size_t b = 0; b < a; ++b)
            EXPECT_FALSE(toy.joins[a].onto == toy.joins[b].onto && toy.joins[a].at == toy.joins[b].at);
    EXPECT_EQ(roundwright::put_together(toy), toy);
}

TEST(JoinEdits, SewingInACircleIsNotOffered) {
    Toy toy = pup();
    Join first, second;
    first.piece = copy(toy, 1);
    first.onto = copy(toy, 0);
    second.piece = copy(toy, 2);
    second.onto = copy(toy, 1);
    toy.joins = {first, second};
    EXPECT_TRUE(is_sewn_to(toy, copy(toy, 2), copy(toy, 0)));
    EXPECT_FALSE(is_sewn_to(toy, copy(toy, 0), copy(toy, 2)));
    // One that stands in a file is not followed for ever.
    Join back;
    back.piece = copy(toy, 0);
    back.onto = copy(toy, 2);
    toy.joins.push_back(back);
    EXPECT_TRUE(is_sewn_to(toy, copy(toy, 0), copy(toy, 1)));
}

TEST(JoinEdits, AreOneStepEachAndUndone) {
    DocumentSession session;
    session.start(pup());
    JoinEdits edits(session);
    const Toy before = session.toy();
    ASSERT_TRUE(edits.sew(units_of(session.toy())[1], copy(session.toy(), 0)));
    ASSERT_EQ(session.toy().joins.size(), 1u);
    EXPECT_EQ(session.undo_stack().undoText(), QStringLiteral("Sew Muzzle to Head"));
    ASSERT_TRUE(edits.change(0, QStringLiteral("Move"), [](Join& join) { join.at = {4, 0, false}; }));
    ASSERT_TRUE(edits.nudge(0, 1, 2));
    ASSERT_TRUE(edits.nudge(0, 0, 1));
    EXPECT_EQ(session.undo_stack().count(), 3);  // both nudges are one
    EXPECT_EQ(session.toy().joins[0].at.stitches_right, 3);
    ASSERT_TRUE(edits.turn(0, 190));
    EXPECT_EQ(session.toy().joins[0].turn_degrees, -170);
    ASSERT_TRUE(edits.lean(0, 200, -5));
    EXPECT_EQ(session.toy().joins[0].lean_degrees, 90);
    EXPECT_EQ(session.toy().joins[0].lean_right_degrees, -5);
    ASSERT_TRUE(edits.set_pair(0, true));
    EXPECT_EQ(std::as_const(session.toy()).pieces[1].make, 2);
    while (session.undo_stack().canUndo()) session.undo_stack().undo();
    EXPECT_EQ(session.toy(), before);
}

}  // namespace
}  // namespace roundwright::app
