#include "core/language/round/completion.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace roundwright {
namespace {

using Words = std::vector<std::string>;

RoundSetting on(int below, Terms terms = Terms::us) {
    RoundSetting setting;
    setting.terms = terms;
    setting.work.loops_below = below;
    setting.work.into_ring = below == 0;
    return setting;
}

Words words_after(std::string_view before, const RoundSetting& setting) {
    Words words;
    for (const Completion& completion : completions(before, setting, {}, 20))
        words.push_back(completion.words);
    return words;
}

bool offers(std::string_view before, const RoundSetting& setting, const std::string& wanted) {
    const Words words = words_after(before, setting);
    return std::find(words.begin(), words.end(), wanted) != words.end();
}

// Repeat counts: Craft Yarn Council ("[A] 6 times" works A six times). Words: its abbreviations.
TEST(Completion, GivesTheTimesThatFitExactly) {
    EXPECT_TRUE(offers("[sc, inc]", on(12), " x 6"));
    EXPECT_TRUE(offers("[sc 2, inc] ", on(18), "x 6"));
    EXPECT_TRUE(offers("[sc, inc]", on(12), " around"));
    EXPECT_FALSE(offers("[sc, inc]", on(13), " around"));
    for (const std::string& words : words_after("[sc, inc]", on(13)))
        EXPECT_EQ(words.find('x'), std::string::npos) << words;
}

TEST(Completion, ClosesABracketWithTheTimesThatFit) {
    EXPECT_TRUE(offers("[sc 3, inc", on(24), "] x 6"));
    EXPECT_TRUE(offers("(sc 3, dec", on(25), ") x 5"));
    EXPECT_TRUE(offers("[sc 3, inc", on(23), "]"));
}

TEST(Completion, RepeatsFromAStar) {
    EXPECT_TRUE(offers("*sc 2, inc", on(18), "; rep from * around"));
    EXPECT_FALSE(offers("*sc 2, inc", on(19), "; rep from * around"));
}

TEST(Completion, FillsTheRound) {
    EXPECT_TRUE(offers("inc", on(6), " around"));
    EXPECT_TRUE(offers("inc", on(6), " x 6"));
    EXPECT_TRUE(offers("sc", on(24), " in each st around"));
    EXPECT_TRUE(offers("inc, sc", on(24), " 23"));
    EXPECT_TRUE(offers("inc, ", on(24), "sc 23"));
    EXPECT_TRUE(offers("", on(24), "sc in each st around"));
    EXPECT_TRUE(offers("", on(24), "dec around"));
    EXPECT_FALSE(offers("", on(25), "dec around"));
}

TEST(Completion, SaysTheCountWhenAllIsWorked) {
    EXPECT_TRUE(offers("[sc, inc] x 6", on(12), " (18)"));
    EXPECT_TRUE(offers("inc around ", on(6), "(12)"));
    EXPECT_FALSE(offers("[sc, inc] x 5", on(12), " (15)"));
    EXPECT_TRUE(words_after("[sc, inc] x 6 (18)", on(12)).empty());
}

TEST(Completion, BeginsWithTheStitchesOfTheTerms) {
    EXPECT_TRUE(offers("[", on(12), "sc"));
    EXPECT_TRUE(offers("sc 2, ", on(12), "inc"));
    EXPECT_TRUE(offers("sc 2, 3 ", on(12), "hdc"));
    EXPECT_FALSE(offers("sc 2, ", on(12, Terms::uk), "sc"));
    EXPECT_TRUE(offers("[", on(12, Terms::uk), "htr"));
    EXPECT_FALSE(offers("sc 2", on(12), "inc")) << "a comma is missing";
}

TEST(Completion, CompletesAWordThatIsBegun) {
    const auto found = completions("[sc 2, in", on(24), {});
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found[0], (Completion{"inc", 2, false}));
    EXPECT_TRUE(offers("sc in each st ar", on(24), "around"));
    EXPECT_TRUE(offers("BL", on(24), "BLO"));
    EXPECT_TRUE(offers("de", on(24), "dec around"));
    EXPECT_TRUE(words_after("[sc 2, zz", on(24)).empty());
}

TEST(Completion, BeginsARing) {
    EXPECT_TRUE(offers("", on(0), "6 sc in magic ring"));
    EXPECT_TRUE(offers("8 sc", on(0), " in magic ring"));
    EXPECT_TRUE(offers("", on(0, Terms::uk), "6 dc in magic ring"));
    EXPECT_FALSE(offers("", on(0), "dec"));
}

TEST(Completion, WhatEndsARoundComesOut) {
    for (const char* before :
         {"", "[sc, inc]", "[sc, inc", "*sc, inc", "inc", "sc", "sc 4, ", "sc 4, in", "dec, sc 3, [inc, sc"})
        for (const Completion& completion : completions(before, on(24), {}, 20)) {
            if (!completion.ends_round) continue;
            const std::string_view head(before);
            YarnTable yarns;
            const std::string words =
                std::string(head.substr(0, head.size() - completion.replaced)) + completion.words;
            EXPECT_TRUE(read_round(words, on(24), yarns).proved()) << words;
        }
}

TEST(Completion, AnyTextIsAnswered) {
    for (const char* before : {"]]]", "***", "\xff", "x x x", "999999999 ", "((((((((((((((((((((((((((((",
                               "sc sc sc", "(18)", "\n\n", "\xE2\x80\xA2 sc"})
        EXPECT_LE(completions(before, on(12), {}).size(), 8u) << before;
}

TEST(Completion, OffersNoCountThatTheWordsDoNotTake) {
    RoundSetting setting;
    setting.work.loops_below = 116;
    for (const Completion& offered : completions("5r", setting, {})) {
        YarnTable yarns;
        const std::string words = "5r " + offered.words;
        EXPECT_TRUE(!offered.ends_round || read_round(words, setting, yarns).proved()) << words;
    }
}

}  // namespace
}  // namespace roundwright
