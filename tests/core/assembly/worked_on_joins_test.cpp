#include "core/assembly/worked_on_joins.h"

#include <gtest/gtest.h>

#include "core/assembly/join_tree.h"
#include "core/assembly/sewing_steps.h"
#include "core/language/pattern/read_pattern.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

Piece open_piece(const char* name, int loops, int make = 1) {
    return test::even_piece(name, 4, loops, End::left_open, make);
}

Piece body_on(int loops, int chains) {
    Piece body = test::even_piece("Body", 10, loops, End::drawn_closed);
    body.start = WorkedOn{.stitches = loops, .chains_between = chains};
    return body;
}

/// Names of the pieces that the last one begins on.
std::vector<std::string> begun_on(const Toy& toy) {
    std::vector<std::string> names;
    for (const PieceCopy& edge : worked_on_edges(toy, toy.pieces.size() - 1))
        names.push_back(toy.pieces[*toy.pieces.index_of(edge.piece)].name + std::to_string(edge.copy));
    return names;
}

using Names = std::vector<std::string>;

TEST(WorkedOnJoins, ABodyBeginsOnTheLegsBeforeItWhoseLoopsAddUp) {
    Toy toy;
    toy.pieces = PieceList{open_piece("Arm", 10, 2), open_piece("Fin", 12, 2), open_piece("Leg", 12, 2),
                           open_piece("Ear", 8, 2), body_on(30, 3)};
    const Toy joined = with_worked_on_joins(toy);
    EXPECT_EQ(begun_on(joined), (Names{"Leg0", "Leg1"}));
    EXPECT_EQ(joined.joins.size(), 2U);
    EXPECT_TRUE(join_tree(joined).problems.empty());
    EXPECT_EQ(with_worked_on_joins(joined), joined) << "what is joined stays";
}

TEST(WorkedOnJoins, LegsOfTheirOwnAndOneEdgeAloneAreFoundToo) {
    Toy legs;
    legs.pieces = PieceList{open_piece("Left leg", 12), open_piece("Right leg", 12), body_on(24, 0)};
    EXPECT_EQ(begun_on(with_worked_on_joins(legs)), (Names{"Left leg0", "Right leg0"}));
    Toy skirt;
    skirt.pieces = PieceList{open_piece("Hem", 24), body_on(24, 0)};
    const Toy joined = with_worked_on_joins(skirt);
    EXPECT_EQ(begun_on(joined), Names{"Hem0"});
    EXPECT_TRUE(join_tree(joined).problems.empty());
}

TEST(WorkedOnJoins, WhatDoesNotAddUpIsLeftAlone) {
    Toy toy;
    toy.pieces = PieceList{open_piece("Leg", 11, 2), body_on(24, 0)};
    EXPECT_TRUE(with_worked_on_joins(toy).joins.empty());
    toy.pieces = PieceList{open_piece("Leg", 12, 2)};
    EXPECT_EQ(with_worked_on_joins(toy), toy);
}

TEST(WorkedOnJoins, TwoBodiesDoNotShareTheirLegs) {
    Toy toy;
    toy.pieces =
        PieceList{open_piece("Leg", 12, 2), body_on(24, 0), open_piece("Foot", 12, 2), body_on(24, 0)};
    const Toy joined = with_worked_on_joins(toy);
    EXPECT_EQ(begun_on(joined), (Names{"Foot0", "Foot1"}));
    EXPECT_EQ(worked_on_edges(joined, 1).size(), 2U);
    EXPECT_TRUE(join_tree(joined).problems.empty());
}

TEST(WorkedOnJoins, TheLegsOfATextAreFound) {
    const ReadPattern read = read_pattern(
        "Legs (x2)\nR1: 8 sc in MR (8)\nR2: sc around (8)\nR3: sc around (8). Do not fasten off the second "
        "leg.\nR4: ch 2, sc in each st of the first leg (8), sc in 2 ch, sc in each st of the second leg "
        "(8), "
        "sc in the other side of the 2 ch (20)\nR5: sc around (20)\n");
    const Toy joined = with_worked_on_joins(toy_of(read));
    ASSERT_EQ(joined.pieces.size(), 2U);
    EXPECT_EQ(begun_on(joined), (Names{"Legs0", "Legs1"}));
}

}  // namespace
}  // namespace roundwright
