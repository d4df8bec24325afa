#include "core/language/pattern/written_rounds.h"

#include <gtest/gtest.h>

#include "core/language/pattern/pattern_notes.h"
#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "core/language/round/write.h"
#include "core/toy/firmness.h"

namespace roundwright {
namespace {

Piece piece_of(const std::vector<int>& counts) {
    Piece piece;
    for (const int count : counts) piece.rounds.emplace_back().working = WorkedEvenly{count};
    return piece;
}

Piece piece_in_words(const std::vector<std::string>& rounds) {
    Piece piece;
    for (const auto& words : rounds) piece.rounds.emplace_back().working = AsWritten{words};
    return piece;
}

std::vector<WrittenRounds> written(const Piece& piece, const std::vector<int>& break_after = {}) {
    return written_rounds(piece, piece_graph(piece), Terms::us, break_after);
}

const std::vector<int> ball{6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6};

TEST(WrittenRounds, EveryRoundIsInOneOfThem) {
    for (Piece piece : {piece_of(ball), piece_of({6, 6, 6}), piece_in_words({"6 sc", "what", "inc x 6"})}) {
        int next = 0;
        for (const auto& rounds : written(piece)) {
            EXPECT_EQ(rounds.first, next);
            next = rounds.last + 1;
        }
        EXPECT_EQ(next, static_cast<int>(piece.rounds.size()));
    }
}

TEST(WrittenRounds, EqualRoundsGoTogether) {
    const auto all = written(piece_of(ball));
    ASSERT_EQ(all.size(), 12U);
    EXPECT_EQ(all[6].first, 6);
    EXPECT_EQ(all[6].last, 11);
    EXPECT_EQ(all[6].stitches, 36);
}

TEST(WrittenRounds, WhatDiffersStaysApart) {
    Piece piece = piece_of({12, 12, 12, 12, 12, 12});
    piece.rounds[2].yarn = 1;
    piece.rounds[4].note = "here";
    const auto all = written(piece);
    // 1 | 2 | 3 in another yarn | 4 back | 5 with a note | 6; round 1 is worked into the ring.
    ASSERT_EQ(all.size(), 6U);
    EXPECT_TRUE(all[2].new_yarn);
    EXPECT_TRUE(all[3].new_yarn);
    EXPECT_FALSE(all[0].new_yarn);
    EXPECT_EQ(all[4].note, "here");
}

TEST(WrittenRounds, OneEndsWhereSomethingIsToBeDone) {
    const auto all = written(piece_of(ball), {8});
    ASSERT_EQ(all.size(), 13U);
    EXPECT_EQ(all[6].last, 8);
    EXPECT_EQ(all[7].first, 9);
}

TEST(WrittenRounds, TheYarnIsTheOneThatTheWordsName) {
    const auto all = written(piece_in_words(
        {"6 sc", "with B, inc around", "with A, sc 6, with B, sc 6", "with B, sc in each st around"}));
    ASSERT_EQ(all.size(), 4U);
    EXPECT_EQ(all[1].yarn, 1);
    EXPECT_TRUE(all[1].new_yarn);
    EXPECT_TRUE(all[2].several_yarns);
    EXPECT_FALSE(all[2].new_yarn);  // the words name them
    EXPECT_FALSE(all[3].new_yarn);  // the round before ends in it
}

TEST(WrittenRounds, ARoundThatDoesNotFitKeepsTheMakersWords) {
    const auto all = written(piece_in_words({"6 sc", "[sc, inc] x 30", "sc in each st around"}));
    EXPECT_TRUE(all[1].does_not_fit);
    EXPECT_EQ(all[1].words, "[sc, inc] x 30");
}

TEST(WrittenRounds, LinesAreAsTheTradeWritesThem) {
    // Count in parentheses at the end (Craft Yarn Council).
    const auto all = written(piece_of(ball));
    EXPECT_EQ(written_line(all[2], Joining::spiral), "Rnd 3: [sc, inc] x 6 (18)");
    EXPECT_EQ(written_line(all[6], Joining::joined), "Rnds 7-12: sc in each st around (36)");
    EXPECT_EQ(written_line(all[2], Joining::rows, "with B, "), "Row 3: with B, [sc, inc] x 6 (18)");
}

// "sc, inc x 2" could mean the inc alone or both: brackets leave one reading.
TEST(WrittenRounds, ARepeatReadsOneWay) {
    const std::pair<const char*, const char*> rounds[] = {
        {"sc 3, inc, inc, inc, sc 12", "sc 3, [inc] x 3, sc 12"},
        {"sc, inc, sc 4, inc, inc, sc 10", "sc, inc, sc 4, inc, inc, sc 10"},
        {"dec, dec, dec, sc 12", "[dec] x 3, sc 12"},
        {"sc 2, [sc3tog] x 4, sc 4", "sc 2, [sc3tog] x 4, sc 4"},
        {"[sc, inc, inc, inc, inc, sc] x 3", "[sc, [inc] x 4, sc] x 3"},
    };
    for (const auto& [typed, written] : rounds) {
        Piece piece = piece_of({6, 12, 18});
        piece.rounds.emplace_back().working = AsWritten{typed};
        EXPECT_EQ(round_words(piece_graph(piece).graph, 3, Terms::us), written);
    }
}

TEST(WrittenRounds, StitchesBetweenTheEyesAreSaidAndReadBack) {
    Piece piece = piece_of(ball);
    Feature eyes;
    eyes.round = 8;
    eyes.stitches_apart = 9;
    piece.features = {eyes};
    const std::string text = write_piece(piece, Terms::us);
    EXPECT_NE(text.find("safety eyes between Rnds 9 and 10, with 9 sts between them."), std::string::npos)
        << text;
    for (const std::string& said :
         {text,
          std::string("Rnd 1: 6 sc in MR (6)\nRnds 2-12: sc around (6)\nAdd two eyes between rounds 9 and "
                      "10, 9 stitches between them.\nRnd 13: sc around (6)\n")}) {
        const ReadPattern read = read_pattern(said);
        ASSERT_EQ(read.pieces.size(), 1u) << said;
        ASSERT_EQ(read.pieces[0].features.size(), 1u) << said;
        EXPECT_EQ(read.pieces[0].features[0].round, 8);
        EXPECT_EQ(read.pieces[0].features[0].stitches_apart, 9);
    }
    const ReadPattern unsaid = read_pattern(
        "Rnd 1: 6 sc in MR (6)\nRnds 2-12: sc around (6)\nAdd 2 eyes between rounds 9 and 10.\n");
    ASSERT_EQ(unsaid.pieces.at(0).features.size(), 1u);
    EXPECT_EQ(unsaid.pieces[0].features[0].stitches_apart, Feature{}.stitches_apart);
}

TEST(WrittenRounds, APatternIsWrittenFromThem) {
    Piece piece = piece_of(ball);
    piece.rounds[9].note = "Eyes now.";
    const std::string text = write_piece(piece, Terms::us);
    EXPECT_NE(text.find("Rnds 7-9: sc in each st around (36)\nRnd 10: sc in each st around (36)\n"
                        "Note: Eyes now.\nRnds 11-12: "),
              std::string::npos)
        << text;
}

// Half way between two firmnesses is the firmer one.
TEST(Firmness, IsTheNearest) {
    for (const auto& [stretch, firmness] : {std::pair{0.0, Firmness::none},
                                            {0.004, Firmness::light},
                                            {light_stuffing_stretch, Firmness::light},
                                            {0.024, Firmness::light},
                                            {0.026, Firmness::medium},
                                            {medium_stuffing_stretch, Firmness::medium},
                                            {firm_stuffing_stretch, Firmness::firm},
                                            {0.2, Firmness::firm}})
        EXPECT_EQ(firmness_of(stretch), firmness) << stretch;
    EXPECT_EQ(stuffing_words(0.07), "Stuff firmly.");
}

}  // namespace
}  // namespace roundwright
