#include <algorithm>
#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/pattern/read_pattern.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

// Nothing of a pattern vanishes: what may be a round is read or told. The lines are forms that people write
// (common practice of the trade); the toys are invented.

using Counts = std::vector<int>;
using Said = std::vector<std::string>;

const std::string ball = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc around (12)\n";

Counts counts(const Piece& piece) { return stitch_counts(piece_graph(piece).graph); }

Counts counts_of(const std::string& text) {
    const ReadPattern read = read_pattern(text);
    return read.pieces.size() == 1 ? counts(read.pieces[0]) : Counts{};
}

/// "line:column code", in the order of the text.
Said said_of(const ReadPattern& read) {
    Said all;
    for (const ReadDiagnostic& d : read.diagnostics)
        all.push_back(std::to_string(d.where.line) + ":" + std::to_string(d.where.column) + " " +
                      std::string(read_code_name(d.code)));
    return all;
}

Said said_of(const std::string& text) { return said_of(read_pattern(text)); }

std::vector<std::string> names_of(const ReadPattern& read) {
    std::vector<std::string> names;
    for (const Piece& piece : read.pieces) names.push_back(piece.name);
    return names;
}

// --- forms that are read

TEST(LostRounds, RangesInEveryHandAreRead) {
    for (const char* range : {"3. - 5. (3 rows) unchanged (12)", "3. - 5. unchanged (12)", "3.-5. sc around",
                              "R3 to R5 sc around", "R3-R5 sc around (12)", "Rnds 3-5 sc around (12)",
                              "Rnd 3 to 5 sc around (12)", "Rnds 3-5 (3 rounds): sc around",
                              "Rounds 3 through 5: 12 sc", "3 - 5) (3 rnds) sc around (12)"})
        EXPECT_EQ(counts_of(ball + range + "\nRnd 6: dec around (6)\n"), (Counts{6, 12, 12, 12, 12, 6}))
            << range;
    EXPECT_EQ(counts_of("Rnd 1 - 6 sc in MR (6)\nRnd 2 - 6 inc (12)\n"), Counts({6, 12}));
}

TEST(LostRounds, TheLastRoundIsRead) {
    for (const char* last :
         {"Last rnd: dec around (6)", "Final round: dec around (6)", "LAST ROUND - dec around"})
        EXPECT_EQ(counts_of(ball + last + "\n"), (Counts{6, 12, 6})) << last;
    EXPECT_EQ(counts_of(ball + "Last 2 rnds: sc around (12)\n"), (Counts{6, 12, 12, 12}));
}

TEST(LostRounds, ARemarkMayStandBetweenTheNumberAndTheStitches) {
    for (const char* remark : {"3. Stuff the head firmly.", "3) Place the eyes now",
                               "Rnd 3: Now stuff the head.", "Rnd 3 - place eyes between rnds 2 and 3",
                               "Rnd 3: (work loosely here)", "Rnd 3: Change to blue."}) {
        const ReadPattern read = read_pattern(ball + remark + "\ndec around (6)\nRnd 4: sc around (6)\n");
        ASSERT_EQ(read.pieces.size(), 1u) << remark;
        EXPECT_EQ(counts(read.pieces[0]), (Counts{6, 12, 6, 6})) << remark;
        EXPECT_TRUE(read.diagnostics.empty()) << remark << " " << said_of(read).at(0);
    }
    // A step of something else is no round.
    EXPECT_EQ(counts_of(ball + "7. Stuff the head.\nRnd 3: dec around (6)\n"), (Counts{6, 12, 6}));
}

// --- pieces worked like another

TEST(LostRounds, APieceLikeAnotherIsThatPiece) {
    for (const char* like :
         {"Right ear: same as left ear", "Right ear - work as the left ear.", "Right ear\nSame as left ear.",
          "Right ear\n\nWork the same as for the Left Ear", "Right ear (make 1)\nwork as left ear",
          "Right ear: work as left ear, but do not fasten off.", "Right ear: same as left"}) {
        const ReadPattern read = read_pattern("Left ear\n" + ball + "\n" + like + "\n\nNose\n" + ball);
        EXPECT_EQ(names_of(read), (std::vector<std::string>{"Left ear", "Right ear", "Nose"})) << like;
        ASSERT_EQ(read.pieces.size(), 3u) << like;
        EXPECT_EQ(read.pieces[1].rounds, read.pieces[0].rounds) << like;
        EXPECT_TRUE(read.diagnostics.empty()) << like;
    }
}

TEST(LostRounds, LegsWorkedAsArmsPutNothingOnTheArms) {
    for (const char* like :
         {"work as arms", "Work as for the arms to Rnd 2.", "Work as arms up to and including round 2"}) {
        const ReadPattern read =
            read_pattern("Arms (make 2)\n" + ball + "Rnd 3: sc around (12)\n\nLegs (make 2)\n" + like +
                         "\nRnd 3: dec around (6)\nRnd 4: sc around (6)\n");
        ASSERT_EQ(names_of(read), (std::vector<std::string>{"Arms", "Legs"})) << like;
        EXPECT_EQ(counts(read.pieces[0]), (Counts{6, 12, 12})) << like;
        EXPECT_EQ(read.pieces[1].make, 2);
        EXPECT_EQ(counts(read.pieces[1]), (Counts{6, 12, 6, 6})) << like;
        EXPECT_TRUE(read.pieces[0].rounds.back().note.empty()) << read.pieces[0].rounds.back().note;
    }
    const ReadPattern plain =
        read_pattern("Arms (make 2)\n" + ball + "Legs (make 2)\nRnd 3: sc around (12)\n");
    EXPECT_EQ(names_of(plain), (std::vector<std::string>{"Arms", "Legs"}));
    EXPECT_EQ(counts(plain.pieces.at(0)), (Counts{6, 12}));
    EXPECT_FALSE(plain.proved());
}

TEST(LostRounds, WhatIsLikeNothingBeforeItIsTold) {
    EXPECT_EQ(said_of("Ear (make 2)\n" + ball + "\nRight leg: same as left leg\n"),
              (Said{"5:12 unknown_piece"}));
    EXPECT_EQ(said_of("Arm\n" + ball + "\nLeg\nWork as arm but with blue.\n"),
              (Said{"6:1 line_not_understood"}));
    EXPECT_EQ(said_of("Arm\n" + ball + "\nLeg\nWork as arm to round 9\n"), (Said{"6:1 line_not_understood"}));
    EXPECT_EQ(said_of("Left arm\n" + ball + "\nLeft leg\n" + ball + "\nTail: same as left\n"),
              (Said{"9:7 unknown_piece"}));
    EXPECT_EQ(said_of("Arm\n" + ball + "\nLegs (make 2)\n"), (Said{"5:1 piece_without_rounds"}));
    // The rounds that follow are the leg's own.
    const ReadPattern own =
        read_pattern("Arm\n" + ball + "\nLeg (make 2)\nWork as arm.\nRnd 1: 5 sc in MR (5)\n");
    EXPECT_EQ(said_of(own), (Said{"6:1 line_not_understood"}));
    EXPECT_EQ(names_of(own), (std::vector<std::string>{"Arm", "Leg"}));
    EXPECT_EQ(counts(own.pieces.at(1)), (Counts{5}));
}

TEST(LostRounds, RoundsUnderAHeadingOfTheirOwnAreNotPutOnACopy) {
    const ReadPattern read =
        read_pattern("Leg 1\n" + ball + "\nLeg 2: same as leg 1\n\nBody\nRnd 3: sc around (12)\n");
    EXPECT_EQ(names_of(read), (std::vector<std::string>{"Leg 1", "Leg 2", "Body"}));
    EXPECT_EQ(counts(read.pieces.at(1)), (Counts{6, 12}));
    EXPECT_FALSE(read.proved());
}

TEST(LostRounds, ASentenceThatComparesIsNoPiece) {
    const ReadPattern read =
        read_pattern("Body\n" + ball + "The hook is the same as for a scarf.\nIt looks like a bun.\n");
    EXPECT_EQ(read.pieces.size(), 1u);
    EXPECT_TRUE(read.diagnostics.empty());
}

// --- lines that are not read are told, and the pattern is not proved

TEST(LostRounds, ALineThatMayBeRoundsIsAnError) {
    for (const char* line :
         {"alle M verd. (24)  [6 fM]", "5. Reihe: 3 fM, 1 Zun (20)", "Round five and six as you like, sc 12",
          "Reihe 3: 6 fM (6)", "repeat rounds 1 and 2 until it is long enough",
          "Stuff. Then dec around until closed.", "every round has 12 sc from here",
          "Now [sc, inc] x 6 again", "keep going even for 4 more", "Rnd 3 as the one before",
          "last round as before (6)", "sc2tog x 6", "18 sts: [sc, inc]"}) {
        const ReadPattern read = read_pattern("Head\n" + ball + "\n" + line + "\n");
        EXPECT_FALSE(read.proved()) << line;
        ASSERT_FALSE(read.diagnostics.empty()) << line;
        EXPECT_EQ(read.diagnostics[0].where.line, 5) << line;
    }
}

TEST(LostRounds, ARemarkIsNone) {
    for (const char* line :
         {"Place 8 mm safety eyes between Rnds 1 and 2, 4 sts apart.",
          "Sew the ears on between rounds 2 and 3.", "Finished size: 12 cm wide", "3. Weave in all ends.",
          "Note: 12 sc are enough for a small one (12)", "Page 3 of 7",
          "Stuff firmly, leaving the last 2 rounds empty.", "Here the maker rests a while."}) {
        const ReadPattern read = read_pattern("Head\n" + ball + line + "\n");
        EXPECT_TRUE(read.diagnostics.empty()) << line << " " << said_of(read).at(0);
    }
}

TEST(LostRounds, NumbersAndStitchesAreAtHomeInTheirSections) {
    EXPECT_EQ(
        said_of("Materials\n2 balls of grey\n5 buttons\n\nAbbreviations\nsc = single crochet\ndec: sc2tog, 1 "
                "fewer\n"
                "\nGauge\n5 sc and 6 rounds measure 1 inch\n\nHead\n" +
                ball +
                "\nAssembly\n1. Sew the 12 sts to rounds 4 to 6.\n2. Work a chain of 20 for the string.\n"),
        Said{});
    EXPECT_EQ(said_of("You will need:\n2 colours\n5 buttons\n\nHead\n" + ball), Said{});
    // Even there stitches with a count are rounds that were not read.
    EXPECT_EQ(said_of("Notes\n6 sc in MR (6)\n"), (Said{"1:1 no_rounds", "2:1 line_not_understood"}));
}

// --- numbers

TEST(LostRounds, GapsAndRoundsWithOneNumberAreErrors) {
    for (const auto& [text, said] : std::vector<std::pair<std::string, Said>>{
             {ball + "Rnd 5: sc around (12)\n", {"3:1 rounds_missing"}},
             {ball + "Rnd 2: sc around (12)\n", {"3:1 round_out_of_order"}},
             {"Rnd 4: 6 sc in MR (6)\n", {"1:1 rounds_missing"}},
             {ball + "Rnds 3-5 (4 rounds): sc around (12)\n", {"3:1 rounds_differ"}}}) {
        const ReadPattern read = read_pattern(text);
        EXPECT_EQ(said_of(read), said);
        EXPECT_FALSE(read.proved());
    }
}

TEST(LostRounds, AWrongCountOnARangeIsNamed) {
    EXPECT_EQ(said_of(ball + "Rnds 3-5: sc around (48)\n"), (Said{"3:22 count_differs"}));
    EXPECT_EQ(said_of(ball + "Rnds 3-5: sc around (12)\n"), Said{});
    EXPECT_EQ(said_of(ball + "Rnds 3-5: inc, sc to end (15)\n"), Said{});
    EXPECT_EQ(said_of(ball + "Rnds 3-5: inc, sc to end (14)\n"), (Said{"3:27 count_differs"}));
    EXPECT_EQ(said_of(ball + "Rnd 3: sc around\nRnds 4-6: rep rnd 3 (13)\n"), (Said{"4:22 count_differs"}));
}

}  // namespace
}  // namespace roundwright
