#include "core/assembly/sewing_steps.h"

#include <gtest/gtest.h>

#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

struct SewingSteps : ::testing::Test {
    Toy toy;
    PieceCopy copy(std::size_t piece, int number = 0) const { return {toy.pieces.id(piece), number}; }
    std::vector<SewingStep> steps() const { return sewing_steps(toy, test::counts_of(toy), {4, 4, 0, 0}); }
};

TEST_F(SewingSteps, SaysWhatIsPinnedWhereInRoundsAndStitches) {
    toy.pieces = PieceList{test::even_piece("Head", 20, 36, End::drawn_closed),
                           test::even_piece("Ear", 5, 12, End::left_open, 2)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .pair = true, .at = {.round = 9, .stitches_right = -6}}};
    ASSERT_EQ(steps().size(), 1u);
    const SewingStep ears = steps()[0];
    EXPECT_EQ(ears.piece, 1u);
    EXPECT_EQ(ears.onto, 0u);
    EXPECT_EQ(ears.copies, 2);
    EXPECT_EQ(ears.place, SewnPlace::gap);
    EXPECT_EQ(ears.round, 10);
    EXPECT_EQ(ears.edge_stitches, 12);
    EXPECT_EQ(ears.onto_stitches, 36);
    EXPECT_EQ(ears.stitches_right, 6);
    EXPECT_TRUE(ears.open);
    EXPECT_TRUE(ears.stuffed_first);
    // A ring of 12 stitches is 12 / (2 pi) = 1.9 stitches in radius: two rounds each way.
    ASSERT_TRUE(ears.covers);
    EXPECT_EQ(*ears.covers, (RoundSpan{9, 12}));
}

TEST_F(SewingSteps, TheShorterWayRoundIsSaid) {
    toy.pieces =
        PieceList{test::even_piece("Body", 20, 36, End::drawn_closed), test::even_piece("Tail", 5, 6)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 3, .stitches_right = 30}}};
    EXPECT_EQ(steps().at(0).stitches_right, -6);
}

TEST_F(SewingSteps, EndsAndRingsAreNamed) {
    toy.pieces =
        PieceList{test::even_piece("Body", 20, 36), test::even_piece("Head", 12, 30, End::drawn_closed)};
    Join join{.piece = copy(1),
              .onto = copy(0),
              .end = JoinedEnd::start,
              .seam = Seam::closed,
              .at = {.round = 19}};
    toy.joins = {join};
    EXPECT_EQ(steps().at(0).place, SewnPlace::last_edge);
    EXPECT_TRUE(steps().at(0).onto_open);
    EXPECT_EQ(steps().at(0).edge_stitches, 0);
    EXPECT_FALSE(steps().at(0).stuffed_first);
    toy.joins[0].at.round = -1;
    EXPECT_EQ(steps().at(0).place, SewnPlace::start);
    EXPECT_FALSE(steps().at(0).onto_open);
    toy.joins[0].at = {.round = 7, .around = true};
    EXPECT_EQ(steps().at(0).place, SewnPlace::around);
}

TEST_F(SewingSteps, WhatIsSewnToAPieceComesBeforeThePieceIsSewnOn) {
    toy.pieces =
        PieceList{test::even_piece("Body", 20, 36, End::drawn_closed), test::even_piece("Head", 12, 30),
                  test::even_piece("Ear", 4, 8), test::even_piece("Tail", 4, 6)};
    toy.joins = {{.piece = copy(3), .onto = copy(0), .at = {.round = 4}},
                 {.piece = copy(1), .onto = copy(0), .at = {.round = 15}},
                 {.piece = copy(2), .onto = copy(1), .at = {.round = 3}}};
    std::vector<std::size_t> order;
    for (const SewingStep& step : steps()) order.push_back(step.join);
    EXPECT_EQ(order, (std::vector<std::size_t>{2, 0, 1}));
}

TEST_F(SewingSteps, JoinsThatHoldNothingAreLeftOut) {
    toy.pieces = PieceList{test::even_piece("Body", 20, 36), test::even_piece("Head", 12, 30)};
    toy.joins = {{.piece = copy(1), .onto = copy(0), .at = {.round = 50}},
                 {.piece = {PieceId{77}, 0}, .onto = copy(0), .at = {.round = 5}},
                 {.piece = copy(0), .onto = copy(0), .at = {.round = 5}}};
    EXPECT_TRUE(steps().empty());
}

TEST_F(SewingSteps, WhatIsWorkedOnIsWorkedAfterItsEdges) {
    Piece body = test::even_piece("Body", 20, 30);
    body.start = WorkedOn{.stitches = 30, .chains_between = 3};
    Piece head = test::even_piece("Head", 12, 30, End::drawn_closed);
    head.start = WorkedOn{.stitches = 30};
    toy.pieces = PieceList{head, body, test::even_piece("Ear", 4, 8),
                           test::even_piece("Leg", 8, 12, End::left_open, 2)};
    toy.joins = {
        {.piece = copy(3), .onto = copy(1), .pair = true, .seam = Seam::worked_on, .at = {.round = -1}},
        {.piece = copy(0),
         .onto = copy(1),
         .end = JoinedEnd::start,
         .seam = Seam::worked_on,
         .at = {.round = 19, .around = true}}};
    EXPECT_EQ(working_order(toy), (std::vector<std::size_t>{3, 1, 0, 2}));
    EXPECT_EQ(worked_on_edges(toy, 1), (std::vector<PieceCopy>{copy(3, 0), copy(3, 1)}));
    EXPECT_EQ(worked_on_edges(toy, 0), (std::vector<PieceCopy>{copy(1)}));
    EXPECT_EQ(goes_on_as(toy, 3), 1u);
    EXPECT_EQ(goes_on_as(toy, 1), 0u);
    EXPECT_FALSE(goes_on_as(toy, 0));
    EXPECT_EQ(loops_of_edges(toy, 1, test::counts_of(toy)), 30);
    EXPECT_EQ(loops_of_edges(toy, 0, test::counts_of(toy)), 30);
    EXPECT_FALSE(loops_of_edges(toy, 2, test::counts_of(toy)));
}

TEST_F(SewingSteps, APieceWorkedOnItselfEndsTheSearch) {
    Piece body = test::even_piece("Body", 20, 30);
    body.start = WorkedOn{};
    toy.pieces = PieceList{body, body};
    toy.joins = {{.piece = copy(0), .onto = copy(1), .seam = Seam::worked_on, .at = {.round = -1}},
                 {.piece = copy(1), .onto = copy(0), .seam = Seam::worked_on, .at = {.round = -1}}};
    EXPECT_EQ(working_order(toy).size(), 2u);
    EXPECT_TRUE(steps().empty());
}

}  // namespace
}  // namespace roundwright
