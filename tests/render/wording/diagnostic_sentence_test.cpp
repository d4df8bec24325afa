#include "render/wording/diagnostic_sentence.h"

#include <gtest/gtest.h>
#include <set>

#include <QLocale>

namespace roundwright {
namespace {

class DiagnosticSentence : public testing::Test {
  protected:
    void SetUp() override { QLocale::setDefault(QLocale::c()); }
    void TearDown() override { QLocale::setDefault(QLocale::system()); }
};

std::string sentence(ReadCode code, int expected, int found, std::vector<Argument> arguments = {}) {
    ReadDiagnostic diagnostic;
    diagnostic.code = code;
    diagnostic.expected = expected;
    diagnostic.found = found;
    diagnostic.arguments = std::move(arguments);
    return diagnostic_sentence(diagnostic).toStdString();
}

TEST_F(DiagnosticSentence, SaysBothNumbers) {
    EXPECT_EQ(sentence(ReadCode::loops_do_not_fit, 18, 14),
              "There are 18 stitches below and the words use 14: 4 left over.");
    EXPECT_EQ(sentence(ReadCode::loops_do_not_fit, 18, 19),
              "There are 18 stitches below and the words use 19: 1 too few.");
    EXPECT_EQ(sentence(ReadCode::count_differs, 24, 23), "The count says 24, but the words make 23.");
    EXPECT_EQ(sentence(ReadCode::repeat_does_not_fit, 4, 18),
              "A repeat of 4 stitches does not fit evenly into 18.");
    EXPECT_EQ(sentence(ReadCode::unknown_words, 0, 0, {std::string("glorp")}),
              "\u201cglorp\u201d is not a stitch or word known here.");
}

TEST_F(DiagnosticSentence, SaysThatARoundIsCutAtALimit) {
    EXPECT_EQ(sentence(ReadCode::too_many_stitches, 200'000, 300'000),
              "A piece has at most 200000 stitches. This round was cut there.");
    EXPECT_EQ(sentence(ReadCode::too_many_rounds, 2'000, 3'000),
              "A piece has at most 2000 rounds. The rest was left out.");
    EXPECT_EQ(sentence(ReadCode::number_too_large, 1'000, 300'000),
              "300000 is more than the limit of 1000, so 1000 was taken instead.");
}

TEST_F(DiagnosticSentence, EveryCodeHasASentenceOfItsOwn) {
    std::set<std::string> sentences;
    const int codes = static_cast<int>(ReadCode::not_utf8) + 1;
    for (int code = 0; code < codes; ++code) {
        const std::string said = sentence(static_cast<ReadCode>(code), 1, 2, {std::string("[")});
        EXPECT_FALSE(said.empty()) << read_code_name(static_cast<ReadCode>(code));
        EXPECT_EQ(said.find('%'), std::string::npos) << said;
        sentences.insert(said);
    }
    EXPECT_EQ(sentences.size(), codes);
}

TEST_F(DiagnosticSentence, SaysWhatTheNextRoundsGoOnFrom) {
    ReadDiagnostic diagnostic;
    diagnostic.code = ReadCode::count_differs;
    diagnostic.expected = 20;
    diagnostic.found = 18;
    const auto said = [&](GoingOn::From from, bool confirmed) {
        diagnostic.goes_on = {from, 18, confirmed, false};
        return diagnostic_sentence(diagnostic)
            .toStdString()
            .substr(std::string("The count says 20, but the words make 18.").size());
    };
    using From = GoingOn::From;
    EXPECT_EQ(said(From::not_said, false), "");
    EXPECT_EQ(said(From::stated_count, true), " The next rounds need 18 stitches, the count given here.");
    EXPECT_EQ(said(From::stated_count, false),
              " The next rounds go on from 18 stitches, the count given here.");
    EXPECT_EQ(said(From::words, true), " The next rounds need 18 stitches.");
    EXPECT_EQ(said(From::words, false), " The next rounds go on from 18 stitches, as the words say.");
    EXPECT_EQ(said(From::next_rounds, true), " The next rounds need 18 stitches.");
    EXPECT_EQ(said(From::round_below, false),
              " The next rounds go on from 18 stitches, as before this round.");
}

TEST_F(DiagnosticSentence, SaysWhatAnotherStitchIsCountedLike) {
    EXPECT_EQ(sentence(ReadCode::unnamed_stitch, 0, 0, {std::string("fpdc"), std::string("dc")}),
              "\u201cfpdc\u201d is counted like dc.");
    EXPECT_EQ(sentence(ReadCode::rounds_filled, 4, 4),
              "Round 4 is not written out; it was worked like those around it.");
    EXPECT_EQ(sentence(ReadCode::rounds_filled, 4, 6),
              "Rounds 4 to 6 are not written out; they were worked like those around them.");
}

TEST_F(DiagnosticSentence, SaysHowManyMoreAreNotListed) {
    ReadDiagnostic diagnostic;
    diagnostic.code = ReadCode::bracket_not_opened;
    diagnostic.arguments = {std::string(")")};
    diagnostic.more = 9'980;
    EXPECT_EQ(diagnostic_sentence(diagnostic).toStdString(),
              "There is no opening bracket for ). (And 9980 more like this.)");
}

TEST_F(DiagnosticSentence, EveryMendHasAQuestionAndALabel) {
    for (int code = 0; code <= static_cast<int>(MendCode::bracket_count); ++code) {
        const Mend mend{static_cast<MendCode>(code), {5, 6, 2, 10, 12}, {}};
        EXPECT_TRUE(mend_question(mend).endsWith(QLatin1Char('?'))) << mend_code_name(mend.code);
        EXPECT_FALSE(mend_label(mend).isEmpty()) << mend_code_name(mend.code);
        EXPECT_TRUE(mend_made_words(mend).endsWith(QLatin1Char('.'))) << mend_code_name(mend.code);
    }
}

}  // namespace
}  // namespace roundwright
