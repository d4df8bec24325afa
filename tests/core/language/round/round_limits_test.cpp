#include <gtest/gtest.h>
#include <string>

#include "core/language/round/completion.h"
#include "core/language/round/read_round.h"
#include "core/language/words/lexer.h"

namespace roundwright {
namespace {

// Each limit of the words of a round: the last that is taken, and the first that is not.

ReadRound read_over(int below, const std::string& words, YarnTable yarns = {}) {
    RoundSetting setting;
    setting.work.loops_below = below;
    return read_round(words, setting, yarns);
}

std::string repeated(const std::string& words, int times) {
    std::string all;
    for (int i = 0; i < times; ++i) all += words;
    return all;
}

const ReadDiagnostic* said(const ReadRound& read, ReadCode code) {
    for (const ReadDiagnostic& d : read.diagnostics)
        if (d.code == code) return &d;
    return nullptr;
}

TEST(RoundLimits, AThousandStitchesGoIntoOneLoop) {
    EXPECT_TRUE(read_over(1, "1000 sc in next st").proved());
    EXPECT_EQ(read_over(1, "1000 sc in next st").stitches, 1'000);
    const ReadRound over = read_over(1, "1001 sc in next st");
    ASSERT_NE(said(over, ReadCode::number_too_large), nullptr);
    EXPECT_EQ(said(over, ReadCode::number_too_large)->expected, 1'000);
    EXPECT_EQ(said(over, ReadCode::number_too_large)->found, 1'001);
}

TEST(RoundLimits, AThousandStitchesShareOnePlace) {
    EXPECT_EQ(read_over(1, "(sc 999, hdc) in next st").stitches, 1'000);
    EXPECT_LE(read_over(1, "(sc 5000, sc 5000) in next st").made.stitches.size(), 6'000u);
}

TEST(RoundLimits, SixtyThousandLoopsAreTakenTogether) {
    EXPECT_TRUE(read_over(60'000, "sc60000tog").proved());
    const ReadRound over = read_over(60'001, "sc60001tog");
    ASSERT_NE(said(over, ReadCode::number_too_large), nullptr);
    EXPECT_EQ(said(over, ReadCode::number_too_large)->expected, 60'000);
    EXPECT_NE(said(read_over(6, "sc0tog"), ReadCode::number_is_zero), nullptr);
    EXPECT_TRUE(read_over(1, "sc1tog").proved());
}

TEST(RoundLimits, AThousandYarnsHaveNames) {
    YarnTable yarns;
    yarns.names.resize(999, "plain");
    EXPECT_EQ(read_over(6, "change to moss, sc around", yarns).last_yarn, 999);
    yarns.names.resize(1'000, "plain");
    EXPECT_EQ(read_over(6, "change to moss, sc around", yarns).last_yarn, 0);
    EXPECT_EQ(read_over(6, "with yarn 1000, sc around").last_yarn, 999);
    EXPECT_EQ(read_over(6, "with yarn 1001, sc around").last_yarn, 0);
    EXPECT_EQ(read_over(6, "with yarn 1, sc around").last_yarn, 0);
    EXPECT_EQ(read_over(6, "with CC999, sc around").last_yarn, 999);
    EXPECT_EQ(read_over(6, "with CC1000, sc around").last_yarn, 1);
    EXPECT_EQ(read_over(6, "with CC2, sc around").last_yarn, 2);
}

TEST(RoundLimits, MendsAreSoughtInRoundsOfThreeHundredTokens) {
    // "sc , " is two tokens; a last "sc 2" takes one loop too many.
    const auto mends = [](int stitches, const std::string& last) {
        const ReadRound read = read_over(stitches + 1, repeated("sc, ", stitches) + last);
        const ReadDiagnostic* fault = said(read, ReadCode::loops_do_not_fit);
        return fault == nullptr ? std::size_t{0} : fault->mends.size();
    };
    EXPECT_GT(mends(149, "sc 2"), 0u);      // 298 + 2
    EXPECT_EQ(mends(149, "sc 2 sts"), 0u);  // 301
}

TEST(RoundLimits, NothingIsOfferedAfterTwoThousandCharacters) {
    RoundSetting setting;
    setting.work.loops_below = 12;
    const auto offered = [&](std::size_t length) {
        const std::string words = "sc 6, ";
        return completions(std::string(length - words.size(), ' ') + words, setting, {}).size();
    };
    EXPECT_GT(offered(2'000), 0u);
    EXPECT_EQ(offered(2'001), 0u);
}

TEST(RoundLimits, NumbersAreHeldAtTheLargest) {
    const LexedText text("1000000000 1000000001 99999999999999999999");
    EXPECT_EQ(text.lines()[0].tokens[0].number, 1'000'000'000);
    EXPECT_EQ(text.lines()[0].tokens[1].number, largest_number);
    EXPECT_EQ(text.lines()[0].tokens[2].number, largest_number);
}

// The least number of each length, and one below it in that many bytes (an "overlong" form): RFC 3629, 3.
TEST(RoundLimits, LettersOfUtf8AreReadInTheirShortestForm) {
    for (const char* letter : {"\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80",
                               "\xF4\x8F\xBF\xBF", "\xED\x9F\xBF", "\xEE\x80\x80"})
        EXPECT_FALSE(LexedText(letter).not_utf8()) << letter;
    for (const char* overlong : {"\xC0\x80", "\xC1\xBF", "\xE0\x80\x80", "\xE0\x9F\xBF", "\xF0\x80\x80\x80",
                                 "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xED\xA0\x80", "\xED\xBF\xBF",
                                 "\x80", "\xC2", "\xE2\x80", "\xF0\x9F\xA7", "\xF8\x88\x80\x80\x80"})
        EXPECT_TRUE(LexedText(overlong).not_utf8()) << overlong;
}

// What tokens point into must not move while more of them come.
TEST(RoundLimits, TokensOfOldFilesStayWhereTheyAre) {
    std::string fractions = "sc ";
    for (int i = 0; i < 2'000; ++i) fractions += "\xBC ";
    const LexedText text(fractions);
    const std::vector<Token> tokens = all_tokens(text);
    ASSERT_EQ(tokens.size(), 2'001u);
    EXPECT_EQ(tokens[0].text, "sc");
    for (std::size_t i = 1; i < tokens.size(); ++i) ASSERT_EQ(tokens[i].text, ".25") << i;
    const std::string dots(3'000, '\x85');
    const std::string source = "inc " + dots;
    const LexedText of_dots(source);
    EXPECT_EQ(all_tokens(of_dots)[0].text, "inc");
}

TEST(RoundLimits, ARoundThatIsProvedLeavesLoops) {
    RoundSetting setting;
    setting.work.into_ring = true;
    for (const std::string& words :
         {std::string("0\0\0\0\0\0\0\x13*(sc, dec]", 19), std::string("0*(sc, dec]"),
          std::string("0 x (sc, dec)"), std::string("*(sc, dec]"), std::string("(sc, dec) x 0"),
          std::string("0 sc")}) {
        YarnTable yarns;
        const ReadRound read = read_round(words, setting, yarns);
        EXPECT_TRUE(!read.proved() || read.made.loops_left > 0) << words;
        EXPECT_EQ(said(read, ReadCode::number_is_zero) != nullptr, words.find('0') != std::string::npos)
            << words;
    }
}

}  // namespace
}  // namespace roundwright
