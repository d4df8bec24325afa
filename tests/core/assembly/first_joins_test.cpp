#include "core/assembly/first_joins.h"

#include <gtest/gtest.h>
#include <set>

#include "core/assembly/join_tree.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

Toy harbour_cat() {
    Toy toy;
    toy.pieces = PieceList{test::even_piece("Ear", 4, 12, End::sewn_straight, 2),
                           test::even_piece("Body", 24, 36, End::drawn_closed),
                           test::even_piece("Head", 16, 30),
                           test::even_piece("Arm", 10, 9, End::left_open, 2),
                           test::even_piece("Leg", 9, 12, End::left_open, 2),
                           test::even_piece("Tail", 14, 6, End::drawn_closed)};
    return toy;
}

std::vector<Join> joins_of(const Toy& toy, std::size_t piece) {
    std::vector<Join> found;
    for (const Join& join : toy.joins)
        if (join.piece.piece == toy.pieces.id(piece)) found.push_back(join);
    return found;
}

TEST(FirstJoins, AToyIsTogetherAtOnceWithoutProblems) {
    const Toy toy = put_together(harbour_cat());
    const JoinTree tree = join_tree(toy);
    EXPECT_TRUE(tree.problems.empty());
    int standing = 0;
    for (const JoinedCopy& copy : tree.copies) standing += copy.join ? 0 : 1;
    EXPECT_EQ(standing, 1);
    EXPECT_EQ(tree.copies.front().piece, 1u);
}

TEST(FirstJoins, TheFirstThatIsMadeOnceGoesOnTopAndPairsOnTheSides) {
    const Toy toy = put_together(harbour_cat());
    ASSERT_EQ(joins_of(toy, 2).size(), 1u);
    const Join head = joins_of(toy, 2)[0];
    EXPECT_TRUE(head.at.around);
    EXPECT_EQ(head.at.round, 23);
    EXPECT_EQ(head.seam, Seam::edge);
    ASSERT_EQ(joins_of(toy, 0).size(), 1u);
    const Join ears = joins_of(toy, 0)[0];
    EXPECT_TRUE(ears.pair);
    EXPECT_EQ(ears.seam, Seam::straight);
    EXPECT_EQ(ears.at.stitches_right, 9);
    const Join tail = joins_of(toy, 5)[0];
    EXPECT_EQ(tail.seam, Seam::closed);
    EXPECT_EQ(tail.end, JoinedEnd::start);
    EXPECT_EQ(tail.at.stitches_right, 18);
}

TEST(FirstJoins, OnAPieceWorkedFromItsTopTheTopIsItsStart) {
    Toy toy = harbour_cat();
    toy.pieces[1].starts_at_top = true;
    const Join head = first_joins(toy, 2).at(0);
    EXPECT_EQ(head.at.round, -1);
    EXPECT_TRUE(head.at.around);
}

TEST(FirstJoins, NoTwoAreInOnePlace) {
    Toy toy = harbour_cat();
    for (int i = 0; i < 30; ++i)
        toy.pieces.push_back(test::even_piece("Shell", 3, 6, End::left_open, 1 + i % 3));
    toy = put_together(toy);
    std::set<std::pair<int, double>> places;
    for (const Join& join : toy.joins) {
        EXPECT_TRUE(places.emplace(join.at.round, join.at.stitches_right).second)
            << join.at.round << " " << join.at.stitches_right;
    }
    EXPECT_TRUE(join_tree(toy).problems.empty());
}

TEST(FirstJoins, OnlyCopiesThatAreNotJoinedYetGetOne) {
    Toy toy = put_together(harbour_cat());
    EXPECT_TRUE(first_joins(toy, 0).empty());
    toy.pieces[0].make = 3;
    const std::vector<Join> third = first_joins(toy, 0);
    ASSERT_EQ(third.size(), 1u);
    EXPECT_EQ(third[0].piece.copy, 2);
    EXPECT_FALSE(third[0].pair);
}

TEST(FirstJoins, ABodyIsWorkedOnTheEdgesOfTwoLegs) {
    Toy toy;
    Piece body = test::even_piece("Body", 20, 30, End::drawn_closed);
    body.start = WorkedOn{.stitches = 30, .chains_between = 3};
    toy.pieces = PieceList{test::even_piece("Leg", 9, 12, End::left_open, 2), body};
    const std::vector<Join> made = put_together(toy).joins;
    ASSERT_EQ(made.size(), 2u);
    for (int i = 0; i < 2; ++i) {
        EXPECT_EQ(made[i].piece, (PieceCopy{toy.pieces.id(0), i}));
        EXPECT_EQ(made[i].onto, (PieceCopy{toy.pieces.id(1), 0}));
        EXPECT_EQ(made[i].seam, Seam::worked_on);
        EXPECT_EQ(made[i].end, JoinedEnd::end);
        EXPECT_EQ(made[i].at.round, -1);
    }
    EXPECT_EQ(made[0].at.stitches_right, -made[1].at.stitches_right);
}

TEST(FirstJoins, AHeadGoesOnFromTheOnlyOpenEdge) {
    Toy toy;
    Piece head = test::even_piece("Head", 12, 18, End::drawn_closed);
    head.start = WorkedOn{.stitches = 18};
    toy.pieces = PieceList{test::even_piece("Body", 20, 18), head};
    const std::vector<Join> made = put_together(toy).joins;
    ASSERT_EQ(made.size(), 1u);
    EXPECT_EQ(made[0].piece.piece, toy.pieces.id(1));
    EXPECT_EQ(made[0].end, JoinedEnd::start);
    EXPECT_EQ(made[0].seam, Seam::worked_on);
    EXPECT_EQ(made[0].at.round, 19);
    EXPECT_TRUE(made[0].at.around);
}

TEST(FirstJoins, OneAloneAndNoRoundsAreFine) {
    Toy toy;
    EXPECT_TRUE(first_joins(toy, 0).empty());
    EXPECT_TRUE(put_together(toy).joins.empty());
    toy.pieces = PieceList{Piece{}, Piece{}};
    EXPECT_TRUE(put_together(toy).joins.empty());
}

TEST(FirstJoins, ASecondCopyIsTheOtherOfAPair) {
    Toy toy;
    toy.pieces =
        PieceList{test::even_piece("Body", 24, 36, End::drawn_closed), test::even_piece("Arm", 10, 9)};
    toy.joins = {{.piece = {toy.pieces.id(1), 0},
                  .onto = {toy.pieces.id(0), 0},
                  .at = {.round = 12, .stitches_right = 9}}};
    const Toy two = made_times(toy, 1, 2);
    ASSERT_EQ(two.joins.size(), 1u);
    EXPECT_TRUE(two.joins[0].pair);
    const Toy three = made_times(two, 1, 3);
    EXPECT_EQ(three.joins.size(), 2u);
    EXPECT_EQ(made_times(three, 1, 1).joins, toy.joins);
    toy.joins.clear();
    EXPECT_TRUE(made_times(toy, 1, 2).joins.empty());
}

TEST(FirstJoins, APieceBegunOnEdgesCountsTheirStitches) {
    Toy toy;
    toy.pieces = PieceList{test::even_piece("Leg", 9, 12, End::left_open, 2),
                           test::even_piece("Body", 20, 36, End::drawn_closed)};
    toy = put_together(toy);
    const Toy begun = begun_on_edges(toy, 1, 3);
    EXPECT_EQ(std::as_const(begun).pieces[1].start, Start(WorkedOn{.stitches = 30, .chains_between = 3}));
    ASSERT_FALSE(begun.joins.empty());
    for (const Join& join : begun.joins) EXPECT_EQ(join.seam, Seam::worked_on);
    const Toy ring = begun_with(begun, 1, MagicRing{});
    EXPECT_TRUE(ring.joins.empty());
}

TEST(FirstJoins, APieceBegunOnNothingKeepsItsOwnCount) {
    Toy toy;
    toy.pieces = PieceList{test::even_piece("Body", 20, 36, End::drawn_closed)};
    EXPECT_EQ(begun_on_edges(toy, 0, 2).pieces[0].start,
              Start(WorkedOn{.stitches = 36, .chains_between = 2}));
}

}  // namespace
}  // namespace roundwright
