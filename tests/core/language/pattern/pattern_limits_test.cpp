#include <algorithm>
#include <gtest/gtest.h>
#include <string>

#include "core/base/limits.h"
#include "core/language/pattern/pattern_notes.h"
#include "core/language/pattern/read_pattern.h"
#include "core/language/words/lexer.h"

namespace roundwright {
namespace {

// Each limit of a whole pattern: the last that is taken, and the first that is not.

const std::string ball = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc around (12)\n";

TEST(PatternLimits, AThousandOfAPieceAreMade) {
    EXPECT_EQ(read_pattern("Fin (make 1000)\n" + ball).pieces.at(0).make, 1'000);
    EXPECT_EQ(read_pattern("Fin (make 1001)\n" + ball).pieces.at(0).make, 1'000);
    EXPECT_EQ(read_pattern("Fin (make 0)\n" + ball).pieces.at(0).make, 1);
    EXPECT_EQ(read_pattern("Fin\nMake 1000.\n" + ball).pieces.at(0).make, 1'000);
    EXPECT_EQ(read_pattern("Fin\nMake 1001.\n" + ball).pieces.at(0).make, 1'000);
}

TEST(PatternLimits, AThousandYarnsAreCalledByNumber) {
    const auto index_of = [](const char* words) {
        const LexedText text(words);
        const auto line = yarn_line(text.lines()[0].tokens);
        return line ? line->yarn : -1;
    };
    EXPECT_EQ(index_of("yarn 1: white"), 0);
    EXPECT_EQ(index_of("yarn 1000: white"), 999);
    EXPECT_EQ(index_of("yarn 1001: white"), -1);
    EXPECT_EQ(index_of("yarn 0: white"), -1);
    EXPECT_EQ(index_of("yarn A: white"), 0);
    EXPECT_EQ(index_of("color Z = white"), 25);
    EXPECT_EQ(index_of("colour b - white"), 1);
    EXPECT_EQ(index_of("MC: white"), 0);
    EXPECT_EQ(index_of("CC: white"), 1);
    EXPECT_EQ(index_of("yarn A white"), -1);
    EXPECT_EQ(index_of("yarn A:"), -1);
    EXPECT_EQ(index_of("A: white"), -1);
}

TEST(PatternLimits, YarnsOfAListHaveACapital) {
    const auto listed = [](const char* words) {
        const LexedText text(words);
        const auto line = listed_yarn(text.lines()[0].tokens);
        return line ? std::to_string(line->yarn) + " " + line->name : "none";
    };
    EXPECT_EQ(listed("A: white wool, 50 g"), "0 white wool");
    EXPECT_EQ(listed("Z: grey"), "25 grey");
    EXPECT_EQ(listed("a: grey"), "none");
    EXPECT_EQ(listed("AB: grey"), "none");
    EXPECT_EQ(listed("A - grey"), "none");
    EXPECT_EQ(listed("A:"), "none");
    EXPECT_EQ(listed("7: grey"), "none");
    EXPECT_EQ(listed("B: , 50 g"), "1 ");
}

TEST(PatternLimits, AChangeOfYarnMayNameIt) {
    const auto change = [](const char* words) {
        const LexedText text(words);
        const auto line = yarn_change(text.lines()[0].tokens);
        return line ? std::to_string(line->yarn) + " " + line->name : "none";
    };
    EXPECT_EQ(change("Change to color B"), "1 ");
    EXPECT_EQ(change("Switch to yarn C."), "2 ");
    EXPECT_EQ(change("Change to colour D, moss green."), "3 moss green");
    EXPECT_EQ(change("Change to colour D, moss green"), "3 moss green");
    EXPECT_EQ(change("Change to yarn 2"), "1 ");
    EXPECT_EQ(change("Change to B"), "none");
    EXPECT_EQ(change("Change to yarn"), "none");
    EXPECT_EQ(change("Change from yarn B"), "none");
    EXPECT_EQ(change("Turn to yarn B"), "none");
    EXPECT_EQ(change("Change to yarn B and go on"), "none");
    EXPECT_EQ(change("Change to yarn white"), "none");
}

TEST(PatternLimits, HooksAreBetweenHalfAMillimetreAndTwentyFive) {
    const auto hook = [](const char* words) {
        const LexedText text(words);
        return hook_line(text.lines()[0].tokens).value_or(0);
    };
    EXPECT_EQ(hook("Hook: 3.5 mm"), 3.5);
    EXPECT_EQ(hook("Hook: 0.5 mm"), 0.5);
    EXPECT_EQ(hook("Hook: 0.4 mm"), 0);
    EXPECT_EQ(hook("Hook: 25 mm"), 25);
    EXPECT_EQ(hook("Hook: 26 mm"), 0);
    EXPECT_EQ(hook("A crochet hook of 4 mm"), 4);
    EXPECT_EQ(hook("You need one hook 4 mm"), 0);
    EXPECT_EQ(hook("Hook: 4"), 0);
    EXPECT_EQ(hook("4 mm"), 0);
}

TEST(PatternLimits, APieceHasTwoThousandRounds) {
    const ReadPattern whole = read_pattern("Rnd 1: 6 sc in MR\nRnds 2-2000: sc around\n");
    EXPECT_TRUE(whole.proved());
    EXPECT_EQ(whole.pieces.at(0).rounds.size(), max_rounds_per_piece);
    const ReadPattern over = read_pattern("Rnd 1: 6 sc in MR\nRnds 2-2001: sc around\n");
    EXPECT_FALSE(over.proved());
    ASSERT_FALSE(over.diagnostics.empty());
    EXPECT_EQ(over.diagnostics[0].code, ReadCode::too_many_rounds);
    EXPECT_EQ(over.diagnostics[0].expected, 2'000);
}

TEST(PatternLimits, AToyHasTwoHundredPieces) {
    std::string text;
    for (int i = 0; i < 200; ++i) text += ball;
    EXPECT_TRUE(read_pattern(text).proved());
    EXPECT_EQ(read_pattern(text).pieces.size(), max_pieces);
    const ReadPattern over = read_pattern(text + ball);
    EXPECT_EQ(over.pieces.size(), max_pieces);
    ASSERT_FALSE(over.diagnostics.empty());
    EXPECT_EQ(over.diagnostics[0].code, ReadCode::too_many_pieces);
}

TEST(PatternLimits, EyesAreAtMostAHundredMillimetresWide) {
    const auto width = [](const std::string& size) {
        const LexedText text("Place " + size + " mm safety eyes between Rnds 4 and 5, 6 sts apart.");
        const auto meaning = meaning_of_note(text.lines()[0].tokens);
        return meaning.eyes ? meaning.eyes->width_mm : -1;
    };
    EXPECT_EQ(width("10.5"), 10.5);
    EXPECT_EQ(width("100"), 100);
    EXPECT_EQ(width("101"), Feature{}.width_mm);
    EXPECT_EQ(width("0"), Feature{}.width_mm);
}

TEST(PatternLimits, EyesSitBetweenNeighbouringRounds) {
    const auto round_of = [](const char* words) {
        const LexedText text(words);
        const auto meaning = meaning_of_note(text.lines()[0].tokens);
        return meaning.eyes ? meaning.eyes->round : -1;
    };
    EXPECT_EQ(round_of("Eyes between Rnds 4 and 5."), 3);
    EXPECT_EQ(round_of("Eyes between rounds 1 & 2"), 0);
    EXPECT_EQ(round_of("Eyes between Rnd 12 and Rnd 13."), 11);
    EXPECT_EQ(round_of("Eyes between Rnds 0 and 1."), -1);
    EXPECT_EQ(round_of("Eyes between Rnds 4 and 6."), -1);
    EXPECT_EQ(round_of("Eyes between Rnds 5 and 4."), -1);
    EXPECT_EQ(round_of("Eyes between Rnds four and five"), 3);
    EXPECT_EQ(round_of("Eyes between Rnds A and B"), -1);
    EXPECT_EQ(round_of("Noses between Rnds 4 and 5"), -1);
    EXPECT_EQ(round_of("Eyes between sts 4 and 5"), -1);
    EXPECT_EQ(round_of("Eyes between Rnds 4 and"), -1);
}

TEST(PatternLimits, EyesAreSoManyStitchesApart) {
    const auto apart = [](const std::string& words) {
        const LexedText text("Eyes between Rnds 4 and 5, " + words);
        const auto meaning = meaning_of_note(text.lines()[0].tokens);
        return meaning.eyes ? meaning.eyes->stitches_apart : -1;
    };
    EXPECT_EQ(apart("7 sts apart"), 7);
    EXPECT_EQ(apart("7 apart"), 7);
    EXPECT_EQ(apart("with 8 stitches between them"), 8);
    EXPECT_EQ(apart("with 1 st between"), 1);
    EXPECT_EQ(apart("1000 sts apart"), 1'000);
    EXPECT_EQ(apart("1001 sts apart"), Feature{}.stitches_apart);
    EXPECT_EQ(apart("with 8 mm between"), Feature{}.stitches_apart);
    EXPECT_EQ(apart("far apart"), Feature{}.stitches_apart);
}

bool says(const ReadPattern& read, ReadCode code) {
    return std::any_of(read.diagnostics.begin(), read.diagnostics.end(),
                       [code](const ReadDiagnostic& d) { return d.code == code; });
}

TEST(PatternLimits, ALineThatIsCutAtALimitIsNotProved) {
    for (const char* words : {"Rnds 2-3000: sc around", "Rnds 2-3000: rep rnd 1"}) {
        const ReadPattern read = read_pattern(std::string("Rnd 1: 6 sc in MR (6)\n") + words + "\n");
        ASSERT_EQ(read.lines.size(), 2u);
        EXPECT_TRUE(says(read, ReadCode::too_many_rounds)) << words;
        EXPECT_FALSE(read.lines[1].proved) << words;
        EXPECT_EQ(read.lines[1].last_round, static_cast<int>(max_rounds_per_piece) - 1) << words;
    }
    const ReadPattern whole = read_pattern("Rnd 1: 6 sc in MR (6)\nRnds 2-2000: sc around\n");
    EXPECT_TRUE(whole.proved());
    EXPECT_TRUE(whole.lines.at(1).proved);
}

TEST(PatternLimits, ARoundThatIsCutIsSaidToBeHoweverMuchElseIsWrongWithIt) {
    std::string words = "Rnd 1: ";
    for (int i = 0; i < 30; ++i) words += "sk 1, ";
    const ReadPattern read = read_pattern(words + "[1000 sc] 999 times\n");
    EXPECT_TRUE(says(read, ReadCode::too_many_stitches));
}

}  // namespace
}  // namespace roundwright
