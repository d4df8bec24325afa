#include "app/pieces/piece_edits.h"

#include <gtest/gtest.h>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

TEST(PieceEdits, CopiesAreNumbered) {
    DocumentSession session;
    Toy toy;
    toy.pieces = {piece_of({6, 12}, "Ear"), piece_of({6, 12}, "ear 3")};
    session.start(toy);
    session.set_current_piece(0);
    ASSERT_TRUE(PieceEdits(session).duplicate());
    EXPECT_EQ(session.piece()->name, "Ear 2");
    ASSERT_TRUE(PieceEdits(session).duplicate());
    EXPECT_EQ(session.piece()->name, "Ear 4");  // 3 is taken
}

}  // namespace
}  // namespace roundwright::app
