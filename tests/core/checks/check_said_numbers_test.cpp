#include "core/checks/check_said_numbers.h"

#include <gtest/gtest.h>

#include "core/document/json_document.h"
#include "core/reshape/reshape_toy.h"
#include "core/rounds/piece_graph.h"
#include "core/study/toy_checks.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

std::vector<Check> found(const Toy& toy) { return check_said_numbers(toy, counts_of_pieces(toy)); }

/// "said_round_moved <rounds 19 and 22> -> <rounds 15 and 18>; "
std::string told(const Toy& toy) {
    std::string all;
    for (const Check& check : found(toy)) {
        all += std::string(check_code_name(check.code)) + " <" + check.said->words + ">";
        if (!check.said->becomes.empty()) all += " -> <" + check.said->becomes + ">";
        all += "; ";
    }
    return all;
}

Piece piece_of(const std::string& name, const std::vector<int>& counts, End end = End::left_open) {
    Piece piece = toy_of(counts).pieces[0];
    piece.name = name;
    piece.end = end;
    return piece;
}

/// A head of 23 rounds with eyes, a body of 25 that is left open over 30 stitches, two ears.
Toy pup() {
    Toy toy = toy_of({});
    toy.pieces = {piece_of("Head", ball(8), End::drawn_closed),
                  piece_of("Body", {6,  12, 18, 24, 30, 36, 42, 48, 48, 48, 48, 48, 48,
                                    48, 42, 42, 42, 42, 36, 36, 36, 36, 30, 30, 30}),
                  piece_of("Ear", {5, 10, 15, 15})};
    toy.pieces[0].features.resize(1);
    toy.text.assembly =
        "Sew the 30 stitches of the body's edge to the head between rounds 19 and 20.\n"
        "\n"
        "Sew the 15 stitches of each ear to the face at round 5.";
    return toy;
}

void set_rounds(Toy& toy, std::size_t piece, const std::vector<int>& counts) {
    toy.pieces[piece].rounds = toy_of(counts).pieces[0].rounds;
}

TEST(CheckSaidNumbers, WordsThatFitAreNotNamed) {
    EXPECT_EQ(told(pup()), "");
    Toy toy = pup();
    toy.text.assembly = "Sew the ears on at round 6.\nSet the head on the body at round 25.";
    EXPECT_EQ(told(toy), "");
}

TEST(CheckSaidNumbers, RoundsThatAreNotThereAreNamedWithTheirPlace) {
    Toy toy = pup();
    toy.text.assembly += "\nSew the ears to the head at round 24.";
    toy.notes = "Tie a bow around the ear at round 5.";
    const auto checks = found(toy);
    ASSERT_EQ(told(toy), "said_round_missing <round 24>; said_round_missing <round 5>; ");
    EXPECT_EQ(checks[0].severity, Severity::warning);
    EXPECT_EQ(checks[0].said->in, OwnWords::assembly);
    EXPECT_EQ(checks[0].said->line, 3);
    EXPECT_EQ(checks[0].arguments, (std::vector<Argument>{23}));
    EXPECT_EQ(checks[1].said->in, OwnWords::notes);
    EXPECT_EQ(checks[1].arguments, (std::vector<Argument>{4}));
}

TEST(CheckSaidNumbers, WhereNoPieceIsNamedAnyMayBeMeant) {
    Toy toy = pup();
    toy.text.assembly =
        "Leave a marker in round 25.\nAnother in round 26.\nCatch all 10 stitches.\nCatch all 11 stitches.";
    EXPECT_EQ(told(toy), "said_round_missing <round 26>; said_count_missing <all 11 stitches>; ");
}

TEST(CheckSaidNumbers, CountsOfAnEdgeThatHasChangedHaveACure) {
    Toy toy = pup();
    set_rounds(toy, 2, {4, 8, 12, 12});
    const auto checks = found(toy);
    ASSERT_EQ(told(toy), "said_count_missing <the 15 stitches> -> <the 12 stitches>; ");
    EXPECT_EQ(checks[0].piece, 2);
    EXPECT_EQ(checks[0].said->line, 2);
    const Toy mended = with_words_renumbered(toy, counts_of_pieces(toy));
    EXPECT_EQ(
        mended.text.assembly,
        "Sew the 30 stitches of the body's edge to the head between rounds 19 and 20.\n\nSew the 12 stitches "
        "of each ear to the face at round 5.");
    EXPECT_EQ(told(mended), "");
}

TEST(CheckSaidNumbers, AfterAResizeRoundsThatMovedAreNamedAndCured) {
    const Toy before = pup();
    Toy after = before;
    set_rounds(after, 0, ball(6));  // 17 rounds: 19 and 20 are gone
    after = with_words_remembered(before, after);
    // Round 5 has the same rounds below it as before, and so is where it was.
    ASSERT_EQ(told(after), "said_round_moved <rounds 19 and 20> -> <rounds 14 and 15>; ");
    EXPECT_EQ(found(after)[0].arguments, (std::vector<Argument>{23, 17}));
    EXPECT_EQ(found(after)[0].piece, 0);
    const Toy mended = with_words_renumbered(after, counts_of_pieces(after));
    EXPECT_NE(mended.text.assembly.find("to the head between rounds 14 and 15."), std::string::npos);
    EXPECT_EQ(told(mended), "");
}

TEST(CheckSaidNumbers, ARoundBelowWhichNothingChangedKeepsItsNumber) {
    const Toy before = pup();
    Toy after = before;
    std::vector<int> longer = ball(8);
    longer.insert(longer.begin() + 21, longer[20]);
    set_rounds(after, 0, longer);
    EXPECT_EQ(told(with_words_remembered(before, after)), "");
}

TEST(CheckSaidNumbers, ResizingAPieceOfASampleIsNoticed) {
    Toy toy = pup();
    Target wanted;
    wanted.scale = 0.7;
    const ReshapedToy made = reshape_toy(toy, toy, {0}, wanted);
    EXPECT_NE(told(with_words_remembered(toy, made.toy)).find("<rounds 19 and 20> -> <rounds"),
              std::string::npos);
}

TEST(CheckSaidNumbers, WhatIsWrittenAnewIsWrittenForThePiecesAsTheyAre) {
    const Toy before = pup();
    Toy after = before;
    set_rounds(after, 0, ball(6));
    after = with_words_remembered(before, after);
    Toy reworded = after;
    reworded.text.assembly = "Sew the head on between rounds 14 and 15.";
    reworded = with_words_remembered(after, reworded);
    EXPECT_EQ(reworded.text.written_for.at(0).stitches.size(), 17u);
    EXPECT_EQ(told(reworded), "");
    Toy plain = reworded;
    plain.text.assembly = "Sew the head on.";
    EXPECT_TRUE(with_words_remembered(reworded, plain).text.written_for.empty());
}

TEST(CheckSaidNumbers, WordsRememberAPieceThatIsRenamedOrMoved) {
    const Toy before = pup();
    Toy after = before;
    set_rounds(after, 0, ball(6));
    after = with_words_remembered(before, after);
    const std::string as_named = told(after);
    ASSERT_NE(as_named, "");
    after.pieces.move(0, 2);
    EXPECT_EQ(told(after), as_named);
    after.pieces[2].name = "head";
    EXPECT_EQ(told(after), as_named);
}

TEST(CheckSaidNumbers, NothingIsRememberedOfWordsWithoutNumbers) {
    Toy before = pup();
    before.text.assembly = "Sew it all together.";
    Toy after = before;
    set_rounds(after, 0, ball(6));
    EXPECT_TRUE(with_words_remembered(before, after).text.written_for.empty());
}

TEST(CheckSaidNumbers, NotesOnRoundsAreReadToo) {
    Toy toy = pup();
    toy.pieces[2].rounds[3].note = "The 15 stitches are sewn to round 30.";
    const auto checks = found(toy);
    ASSERT_EQ(told(toy), "said_round_missing <round 30>; ");
    EXPECT_EQ(checks[0].piece, 2);
    EXPECT_EQ(checks[0].round, 3);
}

TEST(CheckSaidNumbers, AreAmongEveryCheckOfAToy) {
    Toy toy = pup();
    toy.text.assembly = "Sew the ears to the head at round 40.";
    std::vector<PieceStudy> studies;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) studies.push_back(study_piece(toy, i));
    EXPECT_EQ(every_check(toy, studies).back().code, CheckCode::said_round_missing);
}

TEST(CheckSaidNumbers, OddTextsAreReadWithoutHarm) {
    for (const char* text :
         {"\n\n\n", "round", "rounds 1 and", "the 5", "round 0", "\xFF\xC3 round 99 \xF0\x9F\xA7\xB6",
          "rounds 1, 2, 3, 4, 5, 6, 7, 8, 9", "the 0 stitches"}) {
        Toy toy = pup();
        toy.text.assembly = text;
        (void)told(toy);
        (void)with_words_renumbered(toy, counts_of_pieces(toy));
    }
    Toy empty;
    empty.text.assembly = "Sew the 12 stitches to round 4.";
    EXPECT_EQ(told(empty), "said_count_missing <the 12 stitches>; said_round_missing <round 4>; ");
}

}  // namespace
}  // namespace roundwright
