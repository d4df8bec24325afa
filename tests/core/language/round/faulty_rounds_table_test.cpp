#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/round/read_round.h"

namespace roundwright {
namespace {

// The slips are those of real written rounds (common practice). What a round should have said follows the
// Craft Yarn Council's Standards and Guidelines: "[A] 6 times" works A six times, "*A; rep from * 4 more
// times" five times, the count of stitches stands at the end; names by its table of US and UK terms.

// A faulty round: what stands against it first, where, and the likeliest mend.
struct Faulty {
    int below;  // 0: into a ring
    const char* words;
    ReadCode code;
    TextSpan where;
    int expected;
    int found;
    const char* mended_words;  // "": none is offered
    Terms terms = Terms::us;
};

ReadRound read_on(const Faulty& row, const std::string& words) {
    RoundSetting setting;
    setting.terms = row.terms;
    setting.work.loops_below = row.below;
    setting.work.into_ring = row.below == 0;
    YarnTable yarns;
    return read_round(words, setting, yarns);
}

class FaultyRound : public ::testing::TestWithParam<Faulty> {};

TEST_P(FaultyRound, IsNamedWithPlaceAndMend) {
    const Faulty& row = GetParam();
    const ReadRound read = read_on(row, row.words);
    ASSERT_FALSE(read.diagnostics.empty()) << row.words;
    const ReadDiagnostic& first = read.diagnostics[0];
    EXPECT_EQ(read_code_name(first.code), read_code_name(row.code)) << row.words;
    EXPECT_EQ(first.where, row.where)
        << row.words << " at " << first.where.line << ":" << first.where.column << "+" << first.where.length;
    EXPECT_EQ(first.expected, row.expected) << row.words;
    EXPECT_EQ(first.found, row.found) << row.words;
    EXPECT_EQ(first.mends.empty() ? "" : mended(row.words, first.mends[0]), row.mended_words) << row.words;
}

TEST_P(FaultyRound, ComesOutWithEveryMendThatIsOffered) {
    const Faulty& row = GetParam();
    for (const ReadDiagnostic& d : read_on(row, row.words).diagnostics)
        for (const Mend& mend : d.mends) {
            const std::string words = mended(row.words, mend);
            EXPECT_TRUE(read_on(row, words).proved()) << words;
        }
}

const std::vector<Faulty> faulty_rounds{
    {24, "[sc 4, inc] x 6 (30)", ReadCode::loops_do_not_fit, {1, 8, 3}, 24, 30, "[sc 3, inc] x 6 (30)"},
    {12, "[sc, inc] (18)", ReadCode::loops_do_not_fit, {1, 6, 3}, 12, 2, "[sc, inc] x 6 (18)"},
    {12, "[sc 1, inc] x 6 (20)", ReadCode::count_differs, {1, 18, 2}, 20, 18, "[sc 1, inc] x 6 (18)"},
    {12, "[sc, inc] 8 6 (18)", ReadCode::number_alone, {1, 11, 1}, 0, 0, "[sc, inc] x 6 (18)"},
    {12, "[sc, inc] 86 (18)", ReadCode::loops_do_not_fit, {1, 2, 2}, 12, 172, "[sc, inc] x 6 (18)"},
    {12, "sc 1, inc x 6 (18)", ReadCode::loops_do_not_fit, {1, 7, 7}, 12, 7, "[sc 1, inc] x 6 (18)"},
    {12, "(sc 1, inc x 6 (18)", ReadCode::bracket_not_closed, {1, 1, 1}, 0, 0, "(sc 1, inc) x 6 (18)"},
    {12, "sc 1, inc) x 6 (18)", ReadCode::bracket_not_opened, {1, 10, 1}, 0, 0, "(sc 1, inc) x 6 (18)"},
    {12, "[scc 1, inc] x 6 (18)", ReadCode::unknown_words, {1, 2, 3}, 0, 0, "[sc 1, inc] x 6 (18)"},
    {10,
     "*3 sc, 2 sc in next st; rep from * around (15)",
     ReadCode::repeat_does_not_fit,
     {1, 1, 1},
     4,
     2,
     "*1 sc, 2 sc in next st; rep from * around (15)"},
    {16, "*2 sc, inc* x 6 [24]", ReadCode::loops_do_not_fit, {1, 2, 4}, 16, 18, "[sc, inc] x 8 [24]"},
    // The number of times is missing, or wrong.
    {18, "[sc 2, inc] (24)", ReadCode::loops_do_not_fit, {1, 8, 3}, 18, 3, "[sc 2, inc] x 6 (24)"},
    {18, "*sc 2, inc* (24)", ReadCode::loops_do_not_fit, {1, 8, 3}, 18, 3, "*sc 2, inc* x 6 (24)"},
    {18, "sc 2, inc (24)", ReadCode::loops_do_not_fit, {1, 7, 3}, 18, 3, "[sc 2, inc] x 6 (24)"},
    {24, "[sc 3, inc] x 5 (30)", ReadCode::loops_do_not_fit, {1, 8, 3}, 24, 20, "[sc 3, inc] x 6 (30)"},
    {24, "[sc 3, inc] x 7 (30)", ReadCode::loops_do_not_fit, {1, 2, 4}, 24, 28, "[sc 3, inc] x 6 (30)"},
    {36,
     "(sc 4, dec) 5 times (30)",
     ReadCode::loops_do_not_fit,
     {1, 8, 3},
     36,
     30,
     "(sc 4, dec) 6 times (30)"},
    {24,
     "*sc 3, inc; rep from * 6 more times (30)",
     ReadCode::loops_do_not_fit,
     {1, 2, 4},
     24,
     28,
     "*sc 3, inc; rep from * 5 more times (30)"},
    {24,
     "*sc 3, inc; rep from * 4 more times (30)",
     ReadCode::loops_do_not_fit,
     {1, 8, 3},
     24,
     20,
     "*sc 3, inc; rep from * 5 more times (30)"},
    {12, "(1sc, 1inc)*5 (18)", ReadCode::loops_do_not_fit, {1, 7, 4}, 12, 10, "(1sc, 1inc)*6 (18)"},
    {24, "[sc 3, inc] x 0 (30)", ReadCode::number_is_zero, {1, 13, 3}, 0, 0, "[sc 3, inc] x 6 (30)"},
    // The count in the brackets is wrong, or no count.
    {24, "[sc 3, inc] x 6 (32)", ReadCode::count_differs, {1, 18, 2}, 32, 30, "[sc 3, inc] x 6 (30)"},
    {24,
     "sc in each st around (25)",
     ReadCode::count_differs,
     {1, 23, 2},
     25,
     24,
     "sc in each st around (24)"},
    {24, "[sc 2, dec] x 6 - 20 sts", ReadCode::count_differs, {1, 19, 2}, 20, 18, "[sc 2, dec] x 6 - 18 sts"},
    {12, "{sc, inc} x 6 {20 sts}", ReadCode::count_differs, {1, 16, 2}, 20, 18, "{sc, inc} x 6 {18 sts}"},
    {36, "[sc 4, dec] x 6 [36]", ReadCode::count_differs, {1, 18, 2}, 36, 30, "[sc 4, dec] x 6 [30]"},
    {24, "(sc 3, inc) x 6 = 31", ReadCode::count_differs, {1, 19, 2}, 31, 30, "(sc 3, inc) x 6 = 30"},
    {24, "[sc 3, inc] x 6 (03)", ReadCode::count_differs, {1, 18, 2}, 3, 30, "[sc 3, inc] x 6 (30)"},
    {24, "[sc 3, inc] x 6 (3O)", ReadCode::number_alone, {1, 18, 1}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {24, "[sc 3, inc] x 6 30", ReadCode::number_alone, {1, 17, 2}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {24, "[sc 3, inc]x6(30", ReadCode::number_alone, {1, 15, 2}, 0, 0, "[sc 3, inc]x6(30)"},
    {0, "6 sc in MR (7)", ReadCode::count_differs, {1, 13, 1}, 7, 6, "6 sc in MR (6)"},
    // An 8 typed for the sign of times.
    {18, "(sc 2, inc) 8 6 (24)", ReadCode::number_alone, {1, 13, 1}, 0, 0, "(sc 2, inc) x 6 (24)"},
    {18, "[sc 2, inc] 8 6", ReadCode::number_alone, {1, 13, 1}, 0, 0, "[sc 2, inc] x 6"},
    {18, "(sc 2, inc)86 (24)", ReadCode::loops_do_not_fit, {1, 2, 4}, 18, 258, "(sc 2, inc)x 6 (24)"},
    {24, "[sc 3, inc] x x 6 (30)", ReadCode::unknown_words, {1, 13, 3}, 0, 0, "[sc 3, inc] x 6 (30)"},
    // One stitch too many or too few.
    {24,
     "[sc 3, inc, sc] x 6 (30)",
     ReadCode::loops_do_not_fit,
     {1, 13, 2},
     24,
     30,
     "[sc 2, inc, sc] x 6 (30)"},
    {24, "[sc 4, inc] x 6", ReadCode::loops_do_not_fit, {1, 8, 3}, 24, 30, "[sc 3, inc] x 6"},
    {24, "[sc 3, inc] x 6, sc (31)", ReadCode::loops_do_not_fit, {1, 18, 2}, 24, 25, "[sc 3, inc] x 6 (30)"},
    {24,
     "[sc 3, inc] x 5, sc 3 (29)",
     ReadCode::loops_do_not_fit,
     {1, 18, 4},
     24,
     23,
     "[sc 3, inc] x 5, sc 4 (29)"},
    {24, "sc 25", ReadCode::loops_do_not_fit, {1, 1, 5}, 24, 25, "sc 24"},
    {24, "sc in next 23 sts", ReadCode::loops_do_not_fit, {1, 1, 17}, 24, 23, "sc in next 24 sts"},
    {24, "inc, sc 24 (26)", ReadCode::loops_do_not_fit, {1, 6, 5}, 24, 25, "inc, sc 23 (25)"},
    {24,
     "[sc 4, inc] around (30)",
     ReadCode::repeat_does_not_fit,
     {1, 1, 1},
     5,
     4,
     "[sc 3, inc] around (30)"},
    {24,
     "*sc 3, dec; rep from * around (20)",
     ReadCode::repeat_does_not_fit,
     {1, 1, 1},
     5,
     4,
     "*sc 4, dec; rep from * around (20)"},
    {6, "inc x 7 (14)", ReadCode::loops_do_not_fit, {1, 1, 7}, 6, 7, "inc x 6 (12)"},
    {24,
     "sc in each st around to last st",
     ReadCode::loops_do_not_fit,
     {1, 1, 31},
     24,
     23,
     "sc in each st around to last st, sc 1"},
    // A decrease over the end.
    {24, "sc 23, dec", ReadCode::loops_do_not_fit, {1, 8, 3}, 24, 25, "sc 22, dec"},
    {24, "dec x 13", ReadCode::loops_do_not_fit, {1, 1, 8}, 24, 26, "dec x 12"},
    {24, "sc3tog x 9 (8)", ReadCode::loops_do_not_fit, {1, 1, 10}, 24, 27, "sc3tog x 8 (8)"},
    {36,
     "sc in next 35 sts, sc2tog (35)",
     ReadCode::loops_do_not_fit,
     {1, 20, 6},
     36,
     37,
     "sc in next 34 sts, sc2tog (35)"},
    {24, "sc 10, sc to last 16 sts, dec", ReadCode::not_enough_left, {1, 8, 17}, 16, 14, ""},
    {24, "sc to last 30 sts, dec", ReadCode::not_enough_left, {1, 1, 17}, 30, 24, ""},
    // Brackets and stars.
    {24, "(sc 3, inc x 6 (30)", ReadCode::bracket_not_closed, {1, 1, 1}, 0, 0, "(sc 3, inc) x 6 (30)"},
    {24, "[sc 3, inc x 6", ReadCode::bracket_not_closed, {1, 1, 1}, 0, 0, "[sc 3, inc] x 6"},
    {24, "sc 3, inc] x 6 (30)", ReadCode::bracket_not_opened, {1, 10, 1}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {24, "[sc 3, inc]] x 6 (30)", ReadCode::bracket_not_opened, {1, 12, 1}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {24, "[[sc 3, inc] x 6 (30)", ReadCode::bracket_not_closed, {1, 1, 1}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {24, "[sc 3, inc) x 6 (30)", ReadCode::bracket_mismatched, {1, 11, 1}, 0, 0, ""},
    {24, "sc 3, inc x 6 (30)", ReadCode::loops_do_not_fit, {1, 7, 7}, 24, 9, "[sc 3, inc] x 6 (30)"},
    {24,
     "sc 3, inc; rep from * around (30)",
     ReadCode::star_missing,
     {1, 12, 10},
     0,
     0,
     "[sc 3, inc] x 6 (30)"},
    {24, "rep from * around", ReadCode::star_missing, {1, 1, 10}, 0, 0, ""},
    // Unknown words, and those of the other terms.
    {24, "[sc 3, imc] x 6 (30)", ReadCode::unknown_words, {1, 8, 3}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {24, "[sc 3, icn] x 6 (30)", ReadCode::unknown_words, {1, 8, 3}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {24, "[hcd 3, inc] x 6 (30)", ReadCode::unknown_words, {1, 2, 3}, 0, 0, "[hdc 3, inc] x 6 (30)"},
    {24, "[sc 3, increse] x 6 (30)", ReadCode::unknown_words, {1, 8, 7}, 0, 0, "[sc 3, increase] x 6 (30)"},
    {24, "[sc 3, gizmo] x 6 (30)", ReadCode::unknown_words, {1, 8, 5}, 0, 0, "[sc 3, inc] x 6 (30)"},
    {6, "inc aroundd (12)", ReadCode::unknown_words, {1, 5, 7}, 0, 0, "inc around (12)"},
    {12,
     "singel crochet in each stitch around (12)",
     ReadCode::unknown_words,
     {1, 1, 6},
     0,
     0,
     "single crochet in each stitch around (12)"},
    {24, "[htr 3, inc] x 6 (30)", ReadCode::other_terms, {1, 2, 3}, 0, 0, "[hdc 3, inc] x 6 (30)"},
    {24, "[sc 3, inc] x 6 (30)", ReadCode::other_terms, {1, 2, 2}, 0, 0, "[dc 3, inc] x 6 (30)", Terms::uk},
    {24, "[hdc 3, inc] x 6 (30)", ReadCode::other_terms, {1, 2, 3}, 0, 0, "[htr 3, inc] x 6 (30)", Terms::uk},
    {18,
     "[dc 3, inc] x 6 (24)",
     ReadCode::loops_do_not_fit,
     {1, 2, 4},
     18,
     24,
     "[dc 2, inc] x 6 (24)",
     Terms::uk},
    {18,
     "[dc 2, inc] x 6 (25)",
     ReadCode::count_differs,
     {1, 18, 2},
     25,
     24,
     "[dc 2, inc] x 6 (24)",
     Terms::uk},
    // Numbers beyond the limits, alone, or nought.
    {0, "200001 sc in MR", ReadCode::too_many_stitches, {1, 1, 15}, 200000, 200001, "200000 sc in MR"},
    {24, "sc 200001", ReadCode::loops_do_not_fit, {1, 1, 9}, 24, 200001, "sc 24"},
    {24, "sc 999999999999", ReadCode::loops_do_not_fit, {1, 1, 15}, 24, 1000000000, ""},
    {24, "[sc 2001, inc] x 6", ReadCode::loops_do_not_fit, {1, 2, 7}, 24, 12012, "[sc 3, inc] x 6"},
    {24, "sc 24, 7", ReadCode::number_alone, {1, 8, 1}, 0, 0, "sc 24"},
    {24, "12", ReadCode::number_alone, {1, 1, 2}, 0, 0, ""},
    {24, "sc 0, inc 24", ReadCode::number_is_zero, {1, 4, 1}, 0, 0, "inc 24"},
    // Stitches that cannot be where they are said to be.
    {24, "inc in same st, sc 24", ReadCode::no_stitch_before, {1, 1, 14}, 0, 0, "sc 24"},
    {24,
     "(sc, dec) in next st, sc 23",
     ReadCode::not_one_stitch,
     {1, 1, 1},
     0,
     0,
     "(sc, inc) in next st, sc 23"},
    {0, "inc around (12)", ReadCode::nothing_to_fill, {1, 1, 10}, 0, 0, "12 sc in magic ring (12)"},
    {0, "sc in each st around", ReadCode::nothing_to_fill, {1, 1, 20}, 0, 0, ""},
    {24, "stuff firmly", ReadCode::no_stitches, {1, 1, 5}, 0, 0, ""},
    // On a second line.
    {24,
     "[sc 3, inc] x 3,\n[sc 3, imc] x 3 (30)",
     ReadCode::unknown_words,
     {2, 8, 3},
     0,
     0,
     "[sc 3, inc] x 3,\n[sc 3, inc] x 3 (30)"},
    {24, "sc 12,\nsc 13 (24)", ReadCode::loops_do_not_fit, {2, 1, 5}, 24, 25, "sc 11,\nsc 13 (24)"},
};

INSTANTIATE_TEST_SUITE_P(All, FaultyRound, ::testing::ValuesIn(faulty_rounds));

}  // namespace
}  // namespace roundwright
