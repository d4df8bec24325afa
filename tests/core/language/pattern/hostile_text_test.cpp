#include <gtest/gtest.h>
#include <string>

#include "core/base/limits.h"
#include "core/language/pattern/read_pattern.h"
#include "core/language/round/read_round.h"

namespace roundwright {
namespace {

std::string repeated(const std::string& part, std::size_t bytes) {
    std::string text;
    while (text.size() < bytes) text += part;
    return text;
}

bool says(const ReadPattern& read, ReadCode code) {
    for (const ReadDiagnostic& d : read.diagnostics)
        if (d.code == code) return true;
    return false;
}

// 1 MiB each, answered; how fast is for the benchmark to say.
TEST(HostileText, IsAnsweredWhateverItIs) {
    constexpr std::size_t mebibyte = 1024 * 1024;
    for (const char* part : {"(", "(\n", "sc\n", "*sc ", "x 9 ", "[[[[[sc] x 99] x 99] x 99] x 99] x 99\n",
                             "\xff\xfe\x80", "Rnd 1-2000: ", "hello there you\n"}) {
        const ReadPattern read = read_pattern(repeated(part, mebibyte));
        EXPECT_FALSE(read.diagnostics.empty()) << part;
        EXPECT_LE(read.pieces.size(), max_pieces) << part;
    }
}

// Found by the fuzzer: the closing star's bracket has become one unit of work when the repeat comes.
TEST(HostileText, AStarThatWasWorkedInOneStitchIsRepeated) {
    const ReadPattern read =
        read_pattern("Rnd 1: 6 sc in MR\nRnd 2: *sc, 2 sc* in next st; rep from * around\n");
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_EQ(read.pieces[0].rounds.size(), 2u);
}

TEST(HostileText, EveryLimitIsNamed) {
    EXPECT_TRUE(says(read_pattern("Rnd 1: 999999999 sc in MR"), ReadCode::too_many_stitches));
    EXPECT_TRUE(says(read_pattern("Rnd 1: 6 sc in MR\nRnds 2-9000: sc around"), ReadCode::too_many_rounds));
    EXPECT_TRUE(says(read_pattern(repeated("Rnd 1: 6 sc in MR (6)\nRnd 2: sc around (6)\n", 20'000)),
                     ReadCode::too_many_pieces));
    EXPECT_TRUE(says(read_pattern("Rnd 1: " + std::string(40, '[') + "sc" + std::string(40, ']')),
                     ReadCode::nested_too_deep));
    EXPECT_TRUE(says(read_pattern("Rnd 1: 6 sc in MR \xff"), ReadCode::not_utf8));
    EXPECT_TRUE(says(read_pattern(""), ReadCode::no_rounds));
}

TEST(HostileText, AllThePiecesTogetherHaveALimit) {
    EXPECT_TRUE(says(read_pattern(repeated("Rnd 1: 199999 sc in MR\n", 1'000)), ReadCode::stitches_of_text));
    EXPECT_TRUE(says(read_pattern(repeated("Rnd 1: 6 sc in MR\nRnds 2-2000: sc around\n", 2'000)),
                     ReadCode::rounds_of_text));
}

// Words that ask for more than there can be are counted, not worked, so that no number costs time.
TEST(HostileText, NumbersBeyondTheLoopsAreNotWorked) {
    RoundSetting setting;
    setting.find_mends = false;
    YarnTable yarns;
    for (const int below : {0, 12}) {
        setting.work.loops_below = below;
        setting.work.into_ring = below == 0;
        for (const char* words : {"sc 999999999", "[sc 3, inc] x 999999999", "[[sc, inc] x 9999] x 9999",
                                  "dec 999999999", "ch 999999999", "[ch 1, [sc] x 9999999] x 9999999"}) {
            const ReadRound read = read_round(words, setting, yarns);
            EXPECT_FALSE(read.proved()) << words;
            EXPECT_LT(read.effort, 200) << words;
        }
    }
}

TEST(HostileText, WhatTheWordsWouldTakeIsStillSaid) {
    RoundSetting setting;
    setting.work.loops_below = 12;
    YarnTable yarns;
    const ReadRound read = read_round("[sc 3, inc, ch 1] x 1000", setting, yarns);
    EXPECT_EQ(read.taken, 4'000);
    EXPECT_EQ(read.stitches, 6'000);
    EXPECT_EQ(read.made.loops_below, 12);
}

TEST(HostileText, OneBadRoundHidesNoOther) {
    const ReadPattern read = read_pattern(
        "Rnd 1: 6 sc in MR (6)\nRnd 2: inc around (12)\nRnd 3: [sc 4, inc] x 6 (18)\nRnd 4: [sc 2, inc] x 6 "
        "(24)\n");
    ASSERT_EQ(read.diagnostics.size(), 1u);
    EXPECT_EQ(read.diagnostics[0].where.line, 3);
    EXPECT_EQ(read.diagnostics[0].round, 2);
    EXPECT_EQ(read.pieces.at(0).rounds.size(), 4u);
}

TEST(HostileText, AHeadingWithoutWordsIsNothing) {
    for (const char* text :
         {"#", "# ", "## ", "#\n\nRnd 1: 6 sc in magic ring (6)\n", "- ", "Note:", "#\n---"})
        EXPECT_LE(read_pattern(text).pieces.size(), 1u) << text;
    EXPECT_LE(read_pattern(std::string("# \0", 3)).pieces.size(), 0u);
}

}  // namespace
}  // namespace roundwright
