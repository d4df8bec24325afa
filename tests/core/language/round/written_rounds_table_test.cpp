#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/round/read_round.h"
#include "core/language/round/write.h"

namespace roundwright {
namespace {

// Sources. Repeats: Craft Yarn Council, Standards and Guidelines ("[A] 6 times" is six A; "*A; rep from * 4
// more times" is five; the count stands at the end). Names: its table of US and UK terms. "MR", "invdec" and
// hands not named there are common practice of the trade.
struct Written {
    int below;  // 0: into a ring
    const char* words;
    const char* stitches;  // as the writer says them, US terms
    int count;
    Terms terms = Terms::us;
};

class WrittenRound : public ::testing::TestWithParam<Written> {};

TEST_P(WrittenRound, IsUnderstood) {
    const Written& row = GetParam();
    RoundSetting setting;
    setting.terms = row.terms;
    setting.work.loops_below = row.below;
    setting.work.into_ring = row.below == 0;
    YarnTable yarns;
    const ReadRound read = read_round(row.words, setting, yarns);
    EXPECT_TRUE(read.proved()) << row.words << ": "
                               << (read.diagnostics.empty() ? "" : read_code_name(read.diagnostics[0].code));
    StitchGraph graph;
    graph.rounds.push_back(read.made);
    EXPECT_EQ(round_words(graph, 0, Terms::us), row.stitches) << row.words;
    EXPECT_EQ(read.stitches, row.count) << row.words;
}

constexpr const char* ball_1 = "6 sc in magic ring";
constexpr const char* ball_2 = "inc around";
constexpr const char* ball_3 = "[sc, inc] x 6";
constexpr const char* ball_4 = "[sc 2, inc] x 6";
constexpr const char* even = "sc in each st around";

INSTANTIATE_TEST_SUITE_P(Rings, WrittenRound,
                         ::testing::ValuesIn(std::vector<Written>{
                             {0, "6 sc in magic ring (6)", ball_1, 6},
                             {0, "6 sc in MR", ball_1, 6},
                             {0, "MR 6", ball_1, 6},
                             {0, "MR, 6 sc (6)", ball_1, 6},
                             {0, "Magic ring, 6 sc. (6)", ball_1, 6},
                             {0, "sc 6 in magic circle [6]", ball_1, 6},
                             {0, "6 SC INTO A MAGIC RING", ball_1, 6},
                             {0, "ch 2, 6 sc in 2nd ch from hook (6)", ball_1, 6},
                             {0, "Ch 2, 6 sc in second chain from hook.", ball_1, 6},
                             {0, "make a magic ring, 6 sc in ring (6 sts)", ball_1, 6},
                             {0, "in MR: 6 sc {6}", ball_1, 6},
                             {0, "6 single crochet in magic ring", ball_1, 6},
                             {0, "six sc in adjustable ring - 6 sts", ball_1, 6},
                             {0, "8 hdc in magic ring (8)", "8 hdc in magic ring", 8},
                             {0, "12 dc in MR (12)", "12 dc in magic ring", 12}}));

INSTANTIATE_TEST_SUITE_P(Increases, WrittenRound,
                         ::testing::ValuesIn(std::vector<Written>{
                             {6, "inc around (12)", ball_2, 12},
                             {6, "inc x 6 (12)", ball_2, 12},
                             {6, "6 inc (12)", ball_2, 12},
                             {6, "6inc", ball_2, 12},
                             {8, "8inc (16)", ball_2, 16},
                             {6, "inc in each st around", ball_2, 12},
                             {6, "2 sc in each st around (12)", ball_2, 12},
                             {6, "2 sc in each sc", ball_2, 12},
                             {6, "2 sc in each st (12 sts)", ball_2, 12},
                             {6, "(2 sc in next st) 6 times", ball_2, 12},
                             {6, "inc in next 6 sts", ball_2, 12},
                             {6, "2 sc in ea st around", ball_2, 12},
                             {12, "[sc 1, inc] x 6 (18)", ball_3, 18},
                             {12, "(sc, inc) 6 times - 18 sts", ball_3, 18},
                             {12, "(sc, inc) x6 (18)", ball_3, 18},
                             {12, "*1 sc, 2 sc in next st; rep from * around. (18)", ball_3, 18},
                             {12, "(1sc, 1inc)*6 (18)", ball_3, 18},
                             {12, "*sc, inc* x 6 [18]", ball_3, 18},
                             {12, "[sc, inc] \xC3\x97 6 (18)", ball_3, 18},
                             {12, "[sc, inc] 6x (18)", ball_3, 18},
                             {12, "6 x [sc, inc] (18)", ball_3, 18},
                             {12, "6 times (sc, inc) (18)", ball_3, 18},
                             {12, "rep (sc, inc) 6 times (18)", ball_3, 18},
                             {12, "[sc, inc] six times = 18", ball_3, 18},
                             {12, "sc, inc, rep around (18)", ball_3, 18},
                             {12, "[sc, inc] around (18)", ball_3, 18},
                             {12, "[sc 1, inc 1] rep 6 times", ball_3, 18},
                             {12, "*sc 1, inc; rep from * 5 more times (18)", ball_3, 18},
                             {12, "*sc in next st, 2 sc in next st; repeat from * to end", ball_3, 18},
                             {12, "(sc in next st, inc in next st) around \xE2\x80\x93 18 sts", ball_3, 18},
                             {12, "{sc, inc} x 6 {18}", ball_3, 18},
                             {12, "sc 1 & inc 1, repeat around (18)", ball_3, 18},
                             {18, "(inc, sc in next 2 sts) 6 times {24 sts}", "[inc, sc 2] x 6", 24},
                             {18, "*2 sc, inc* x 6 [24]", ball_4, 24},
                             {18, "[sc in next 2 sts, inc] x 6 (24)", ball_4, 24},
                             {18, "[2 sc, 2 sc in next st] x 6 (24)", ball_4, 24},
                             {18, "*sc 2, inc, rep from * around (24)", ball_4, 24},
                             {18, "sc 1, inc, [sc 2, inc] x 5, sc 1 (24)", "[sc, inc, sc] x 6", 24},
                             {15, "*sc, 2 sc in next 2 sts; rep from * 4 more times (25)",
                              "[sc, inc, inc] x 5", 25},
                             {24, "[[sc, inc] x 3, sc 6] x 2 (30)", "[[sc, inc] x 3, sc 6] x 2", 30},
                             {6, "3 sc in each st around (18)", "3 sc in each st around", 18},
                             {14, "3 sc in next st, sc in next 13 sts (16)", "3 sc in next st, sc 13", 16}}));

INSTANTIATE_TEST_SUITE_P(EvenRounds, WrittenRound,
                         ::testing::ValuesIn(std::vector<Written>{
                             {30, "sc in each st around (30)", even, 30},
                             {24, "sc even (24)", even, 24},
                             {24, "work even", even, 24},
                             {24, "sc around", even, 24},
                             {24, "sc in every st", even, 24},
                             {24, "24 sc (24)", even, 24},
                             {24, "sc 24", even, 24},
                             {24, "sc in next 24 sts", even, 24},
                             {24, "1 sc in each st", even, 24},
                             {24, "sc in all sts", even, 24},
                             {24, "Single crochet in each stitch around.", even, 24},
                             {24, "sc to end of rnd (24)", even, 24},
                             {24, "sc in each of next 24 sts", even, 24},
                             {24, "sc evenly around. 24 sts", even, 24},
                             {24, "24sc", even, 24},
                             {12, "hdc in each st around (12)", "hdc in each st around", 12},
                             {12, "BLO sc in each st around (12)", "BLO sc in each st around", 12},
                             {12, "in back loops only, sc in each st around (12)", "BLO sc in each st around",
                              12},
                             {12, "FLO inc around", "FLO inc around", 24},
                             {12, "sc in the back loop of each st around", "BLO sc in each st around", 12},
                             {12, "in BLO: [sc 2, dec] x 3 (9)", "in BLO: [sc 2, dec] x 3", 9}}));

INSTANTIATE_TEST_SUITE_P(
    Decreases, WrittenRound,
    ::testing::ValuesIn(std::vector<Written>{
        {12, "dec around (6)", "dec around", 6},
        {12, "sc2tog around", "dec around", 6},
        {12, "dec x 6 (6)", "dec around", 6},
        {12, "2 sc tog around", "dec around", 6},
        {12, "sc 2 tog 6 times", "dec around", 6},
        {12, "6 dec (6)", "dec around", 6},
        {6, "sc in next 4 sts, sc2tog", "sc 4, dec", 5},
        {6, "sc 4, sc next 2 sts together", "sc 4, dec", 5},
        {24, "[sc 2, dec] x 6 (18)", "[sc 2, dec] x 6", 18},
        {24, "(sc in next 2 sts, sc2tog) 6 times (18)", "[sc 2, dec] x 6", 18},
        {24, "*sc in next 2 sts, sc2tog over next 2 sts; rep from * around (18)", "[sc 2, dec] x 6", 18},
        {18, "single crochet two together, single crochet in next 16 stitches", "dec, sc 16", 17},
        {18, "[sc, invdec] x 6 (12)", "[sc, invdec] x 6", 12},
        {18, "[sc 1, inv dec] x 6", "[sc, invdec] x 6", 12},
        {9, "sc3tog around (3)", "sc3tog around", 3},
        {12, "hdc2tog around (6)", "hdc2tog around", 6},
        {12, "dec, sc in each st to last 2 sts, dec (10)", "dec, sc 8, dec", 10},
        {12, "[dc2tog, dc] x 4 (8)", "[dc2tog, dc] x 4", 8}}));

INSTANTIATE_TEST_SUITE_P(
    OtherStitches, WrittenRound,
    ::testing::ValuesIn(std::vector<Written>{
        {8, "(sc, hdc, sc) in next st, sc to end", "(sc, hdc, sc) in next st, sc 7", 10},
        {8, "sk 2 sts, sc 6", "sk next 2 sts, sc 6", 6},
        {8, "ch 2, skip next 2 sts, sc in next 6 sts (8)", "ch 2, sk next 2 sts, sc 6", 8},
        {8, "sc 3, bobble, sc 4", "sc 3, bobble, sc 4", 8},
        {8, "sl st in next 2 sts, hdc 2, dc 2, tr 2", "sl st in next 2 sts, hdc 2, dc 2, tr 2", 8},
        {8, "hdc inc, hdc 7", "2 hdc in next st, hdc 7", 9},
        {12, "ch 1, sc in each st around, join with sl st in first st (12)", even, 12},
        {12, "sc 6, change to B, sc 6", "with A, sc 6, with B, sc 6", 12},
        {12, "with B, sc 6, with A, sc 6 (12)", "with B, sc 6, with A, sc 6", 12},
        {12, "sc in each st around (12). Stuff firmly.", even, 12}}));

INSTANTIATE_TEST_SUITE_P(UkTerms, WrittenRound,
                         ::testing::ValuesIn(std::vector<Written>{
                             {0, "6 dc in magic ring (6)", ball_1, 6, Terms::uk},
                             {12, "[dc, inc] x 6 (18)", ball_3, 18, Terms::uk},
                             {12, "dc2tog around (6)", "dec around", 6, Terms::uk},
                             {12, "htr in each st around", "hdc in each st around", 12, Terms::uk},
                             {12, "tr in each st around", "dc in each st around", 12, Terms::uk},
                             {12, "dtr in each st around", "tr in each st around", 12, Terms::uk},
                             {12, "miss 1 st, dc 11", "sk next st, sc 11", 11, Terms::uk},
                             {12, "double crochet in each stitch around", even, 12, Terms::uk}}));

}  // namespace
}  // namespace roundwright
