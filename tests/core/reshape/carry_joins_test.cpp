#include "core/reshape/carry_joins.h"

#include <gtest/gtest.h>

#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

struct CarryJoins : ::testing::Test {
    CarryJoins() {
        toy.pieces = PieceList{test::even_piece("", 20, 30), test::even_piece("", 4, 9)};
        for (const int round : {-1, 9, 19})
            toy.joins.push_back({.piece = {toy.pieces.id(1), 0},
                                 .onto = {toy.pieces.id(0), 0},
                                 .at = {.round = round, .stitches_right = 5}});
    }
    Toy toy;
};

TEST_F(CarryJoins, ALargerPieceKeepsThemAtTheSameHeightAndAngle) {
    const Toy larger = with_piece_remade(toy, 0, test::even_piece("", 30, 48));
    EXPECT_EQ(larger.joins[0].at.round, -1);
    EXPECT_EQ(larger.joins[1].at.round, 14);
    EXPECT_EQ(larger.joins[1].at.stitches_right, 8);
    EXPECT_EQ(larger.joins[2].at.round, 29);
    EXPECT_EQ(std::as_const(larger).pieces[0].rounds.size(), 30u);
}

TEST_F(CarryJoins, RoundsThatAreWorkedAlreadyKeepTheirs) {
    Piece made = toy.pieces[0];
    for (std::size_t i = 12; i < 20; ++i) made.rounds[i].working = WorkedEvenly{.stitches = 24};
    made.rounds.resize(15);
    EXPECT_EQ(with_piece_remade(toy, 0, made).joins[1].at.round, 9);
}

TEST_F(CarryJoins, BegunAtItsOtherEndTheyStayWhereTheyAre) {
    toy.joins[1].at.round = 4;
    Piece made = toy.pieces[0];
    made.starts_at_top = true;
    const Toy turned = with_piece_remade(toy, 0, made);
    EXPECT_EQ(turned.joins[0].at.round, 19);
    EXPECT_EQ(turned.joins[1].at.round, 14);
    EXPECT_EQ(turned.joins[2].at.round, -1);
    toy.joins = {{.piece = {toy.pieces.id(0), 0}, .onto = {toy.pieces.id(1), 0}, .at = {.round = 1}}};
    EXPECT_EQ(with_piece_remade(toy, 0, made).joins[0].end, JoinedEnd::start);
}

TEST_F(CarryJoins, NothingAndOneRoundAreFine) {
    EXPECT_EQ(with_piece_remade(toy, 0, Piece{}).joins, toy.joins);
    EXPECT_EQ(with_piece_remade(toy, 7, Piece{}), toy);
    const Toy one = with_piece_remade(toy, 0, test::even_piece("", 1, 12));
    EXPECT_EQ(one.joins[1].at.round, 0);
    EXPECT_EQ(one.joins[2].at.round, 0);
}

}  // namespace
}  // namespace roundwright
