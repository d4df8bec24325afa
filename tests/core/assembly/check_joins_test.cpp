#include "core/assembly/check_joins.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

struct CheckJoins : ::testing::Test {
    CheckJoins() {
        Piece head = test::even_piece("Head", 20, 30, End::drawn_closed);
        Piece ear = test::even_piece("Ear", 5, 12);
        ear.make = 2;
        toy.pieces = PieceList{head, ear};
        toy.joins = {
            {.piece = copy(1), .onto = copy(0), .pair = true, .at = {.round = 4, .stitches_right = 6}}};
    }
    PieceCopy copy(std::size_t piece, int number = 0) const { return {toy.pieces.id(piece), number}; }
    std::vector<Check> checks() const {
        std::vector<std::vector<int>> counts;
        for (const Piece& piece : toy.pieces) {
            counts.emplace_back();
            for (const Round& round : piece.rounds)
                counts.back().push_back(std::get<WorkedEvenly>(round.working).stitches);
        }
        return check_joins(toy, counts);
    }
    Toy cured(const Check& check) const { return cured_joins(toy, check, check.cures.at(0)); }
    Toy toy;
};

TEST_F(CheckJoins, NothingIsWrongWithAToyThatIsTogether) { EXPECT_TRUE(checks().empty()); }

TEST_F(CheckJoins, ACircleIsAnErrorAndTakingAJoinAwayMendsIt) {
    toy.joins[0].pair = false;
    toy.pieces[1].make = 1;
    toy.joins.push_back({.piece = copy(0), .onto = copy(1), .at = {.round = 2}});
    const auto found = checks();
    ASSERT_EQ(found.size(), 2u);
    EXPECT_EQ(found[0].code, CheckCode::joined_in_a_circle);
    EXPECT_EQ(found[0].severity, Severity::error);
    EXPECT_EQ(found[0].piece, 1);
    toy = cured(found[0]);
    EXPECT_EQ(toy.joins.size(), 1u);
    for (const Check& check : checks()) EXPECT_NE(check.code, CheckCode::joined_in_a_circle);
}

TEST_F(CheckJoins, WhatIsNotThereIsNamed) {
    toy.joins.push_back({.piece = copy(1, 7), .onto = copy(0), .at = {.round = 2}});
    toy.joins.push_back({.piece = copy(1, 1), .onto = copy(0), .at = {.round = 9}});
    const auto found = checks();
    ASSERT_EQ(found.size(), 2u);
    EXPECT_EQ(found[0].code, CheckCode::join_without_piece);
    EXPECT_EQ(found[1].code, CheckCode::joined_twice);
    toy = cured(found[1]);
    EXPECT_EQ(toy.joins.size(), 2u);
}

TEST_F(CheckJoins, ARoundThatIsGoneMovesToTheLast) {
    toy.joins[0].at.round = 40;
    const auto found = checks();
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].code, CheckCode::join_without_round);
    EXPECT_EQ(found[0].arguments, (std::vector<Argument>{std::string("Head"), 41, 20}));
    toy = cured(found[0]);
    EXPECT_EQ(toy.joins[0].at.round, 19);
    EXPECT_TRUE(checks().empty());
}

TEST_F(CheckJoins, AStuffedEdgeThatNothingIsSewnToIsNoted) {
    toy.pieces.push_back(test::even_piece("", 6, 18));
    ASSERT_EQ(checks().size(), 1u);
    EXPECT_EQ(checks()[0].code, CheckCode::edge_not_sewn);
    EXPECT_EQ(checks()[0].severity, Severity::note);
    EXPECT_EQ(checks()[0].piece, 2);
    EXPECT_EQ(checks()[0].arguments, (std::vector<Argument>{18, 1}));
    toy.pieces[2].area_stretch = unstuffed_stretch;  // a hat
    EXPECT_TRUE(checks().empty());
    toy.pieces[2].area_stretch = medium_stuffing_stretch;
    toy.joins.clear();  // not put together yet
    EXPECT_TRUE(checks().empty());
}

TEST_F(CheckJoins, AnEdgeThatAnotherIsSetOnIsSewn) {
    toy.pieces.push_back(test::even_piece("", 6, 18));
    toy.joins.push_back({.piece = copy(0),
                         .onto = copy(2),
                         .end = JoinedEnd::start,
                         .seam = Seam::closed,
                         .at = {.round = 5, .around = true}});
    EXPECT_TRUE(checks().empty());
}

TEST_F(CheckJoins, ALegEdgeAndChainsMustComeToTheFirstRound) {
    Piece body = test::even_piece("", 10, 30);
    body.start = WorkedOn{.stitches = 28, .chains_between = 3};
    body.end = End::drawn_closed;
    Piece leg = test::even_piece("", 6, 12);
    leg.make = 2;
    toy = {};
    toy.pieces = PieceList{leg, body};
    for (int i = 0; i < 2; ++i)
        toy.joins.push_back(
            {.piece = copy(0, i), .onto = copy(1), .seam = Seam::worked_on, .at = {.round = -1}});
    const auto found = checks();
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].code, CheckCode::worked_on_other_count);
    // 12 + 3 + 12 + 3, both sides of the chain.
    EXPECT_EQ(found[0].arguments, (std::vector<Argument>{28, 30, 2}));
    toy = cured(found[0]);
    EXPECT_EQ(std::get<WorkedOn>(toy.pieces[1].start).stitches, 30);
    EXPECT_TRUE(checks().empty());
    toy.joins.clear();
    ASSERT_EQ(checks().size(), 1u);
    EXPECT_TRUE(checks()[0].cures.empty());
}

TEST_F(CheckJoins, WordsOfAssemblyRememberTheJoinsTheyWereWrittenFor) {
    Toy said = toy;
    said.text.assembly = "Sew on the ears.";
    said = with_joins_remembered(toy, said);
    EXPECT_EQ(said.text.assembly_then, toy.joins);
    Toy moved = said;
    moved.joins[0].at.round = 6;
    moved = with_joins_remembered(said, moved);
    EXPECT_EQ(moved.text.assembly_then, toy.joins);
    toy = moved;
    const auto found = checks();
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].code, CheckCode::joins_changed);
    EXPECT_EQ(found[0].piece, 1);
    EXPECT_EQ(found[0].arguments, (std::vector<Argument>{std::string("Head"), 5, 7, std::string()}));
    toy = cured(found[0]);
    EXPECT_TRUE(checks().empty());
}

TEST_F(CheckJoins, WordsFromBeforeThereWereJoinedPiecesKeepTheJoinsOfBefore) {
    toy.text.assembly = "Sew on the ears.";
    Toy moved = toy;
    moved.joins[0].turn_degrees = 30;
    EXPECT_EQ(with_joins_remembered(toy, moved).text.assembly_then, toy.joins);
    Toy silent = toy;
    silent.text.assembly_then = toy.joins;
    Toy cleared = silent;
    cleared.text.assembly.clear();
    EXPECT_TRUE(with_joins_remembered(silent, cleared).text.assembly_then.empty());
}

TEST_F(CheckJoins, ChangesAreToldByWhatIsJoinedOn) {
    const std::vector<Join> then = toy.joins;
    const Join tail{.piece = {PieceId{9}, 0}, .onto = copy(0), .at = {.round = 2}};
    const auto added = join_changes(then, {then[0], tail});
    ASSERT_EQ(added.size(), 1u);
    EXPECT_FALSE(added[0].then);
    const auto gone = join_changes(then, {});
    ASSERT_EQ(gone.size(), 1u);
    EXPECT_FALSE(gone[0].now);
    EXPECT_TRUE(join_changes(then, then).empty());
}

}  // namespace
}  // namespace roundwright
