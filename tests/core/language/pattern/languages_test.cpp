#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/pattern/write_pattern.h"
#include "core/language/round/read_round.h"
#include "tests/core/language/pattern/random_pattern_toy.h"
#include "tests/core/language/pattern/random_piece.h"
#include "tests/core/language/pattern/table_of_texts.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::RandomPiece;
using testing::WrittenText;

std::vector<Terms> languages() {
    std::vector<Terms> all;
    for (const Terms terms : all_terms)
        if (!is_english(terms)) all.push_back(terms);
    return all;
}

std::string name_of(const ::testing::TestParamInfo<Terms>& info) {
    return std::string(terms_code(info.param));
}

std::string told(const ReadPattern& read) {
    std::string all;
    for (const std::string& finding : testing::findings_read(read)) all += finding + "\n";
    return all;
}

// --- what people write: a table for each language beside this file

class LanguageTexts : public ::testing::TestWithParam<const char*> {};

TEST_P(LanguageTexts, AreReadInTheirLanguage) {
    const std::string file = GetParam();
    const Terms terms = terms_of_code(file.substr(file.size() - 2)).value();
    const std::string name = file.substr(0, file.size() - 3);
    const std::vector<WrittenText> texts =
        testing::table_of_texts(std::string(HANDS_FOLDER) + "/languages/" + name + ".txt");
    EXPECT_GE(texts.size(), 10u) << name;
    for (const WrittenText& one : texts) {
        const ReadPattern read = read_pattern(one.text);
        EXPECT_EQ(terms_code(read.terms), terms_code(terms)) << one.name << "\n" << one.text;
        EXPECT_EQ(testing::counts_read(read), one.counts) << one.name << "\n" << one.text;
        EXPECT_EQ(testing::findings_read(read), one.findings) << one.name << "\n" << one.text;
        for (const Piece& piece : read.pieces) EXPECT_TRUE(piece_graph(piece).problems.empty()) << one.name;
    }
}

INSTANTIATE_TEST_SUITE_P(Tables, LanguageTexts,
                         ::testing::Values("german-de", "french-fr", "spanish-es", "dutch-nl", "danish-da",
                                           "portuguese-pt", "italian-it"));

// --- what is written comes back

class Languages : public ::testing::TestWithParam<Terms> {};

::testing::AssertionResult reads_back(const Piece& piece, Terms terms) {
    const std::string text = write_piece(piece, terms);
    const ReadPattern read = read_pattern(text, {terms, {}});
    if (!read.proved() || read.pieces.size() != 1) return ::testing::AssertionFailure() << text << told(read);
    const Piece& again = read.pieces[0];
    const bool same = piece_graph(again).graph == piece_graph(piece).graph && again.start == piece.start &&
                      again.end == piece.end && again.joining == piece.joining && again.make == piece.make &&
                      again.name == piece.name && again.area_stretch == piece.area_stretch;
    if (same) return ::testing::AssertionSuccess();
    return ::testing::AssertionFailure() << text << "-- read and written again:\n"
                                         << write_piece(again, terms);
}

TEST_P(Languages, GiveTheSameStitchesBack) {
    const auto count = static_cast<unsigned>(testing::random_cases(20'000));
    for (unsigned seed = 0; seed < count; ++seed)
        ASSERT_TRUE(reads_back(RandomPiece(seed).piece(), GetParam())) << "seed " << seed;
}

TEST_P(Languages, GiveTheSameToyBackAndAreFoundInTheText) {
    const auto count = static_cast<unsigned>(testing::random_cases(5'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        const Toy toy = testing::RandomPatternToy(seed).toy();
        const std::string text = write_toy(toy, GetParam());
        const ReadPattern read = read_pattern(text);
        ASSERT_TRUE(read.diagnostics.empty()) << "seed " << seed << "\n" << text << told(read);
        ASSERT_EQ(read.terms, GetParam()) << text;
        ASSERT_EQ(read.pieces.size(), toy.pieces.size()) << text;
        EXPECT_EQ(read.title, toy.title);
        EXPECT_EQ(read.designer, toy.designer);
        EXPECT_EQ(read.notes, toy.notes);
        for (std::size_t i = 0; i < toy.pieces.size(); ++i)
            ASSERT_EQ(piece_graph(read.pieces[i]).graph, piece_graph(toy.pieces[i]).graph) << text;
    }
}

TEST_P(Languages, StoreUsWords) {
    const Terms terms = GetParam();
    YarnTable yarns;
    RoundSetting setting;
    setting.terms = terms;
    setting.work.loops_below = 12;
    const std::string said = words_in_terms("[sc, inc] x 3, sc 6", Terms::us, terms);
    const ReadRound read = read_round(said, setting, yarns);
    EXPECT_TRUE(read.proved()) << said;
    EXPECT_EQ(read.stitches, 15) << said;
    const std::string again = words_in_terms(read.words, Terms::us, terms);
    EXPECT_EQ(again, said);
    EXPECT_EQ(words_in_terms(said, terms, Terms::us), read.words);
}

INSTANTIATE_TEST_SUITE_P(All, Languages, ::testing::ValuesIn(languages()), name_of);

// --- letters, encodings, and two languages in one text

TEST(LanguageLetters, OfOldFilesAndCombiningAccentsAreRead) {
    for (const char* text : {"Rd 1: 6 fM in FR (6)\nRd 2: fM in die n\xE4"
                             "chste M, 5 Zun (11)\n",
                             "Rd 1: 6 fM in FR (6)\nRd 2: fM in die na\xCC\x88"
                             "chste M, 5 Zun (11)\n",
                             "Rd 1: 6 fM in FR (6)\nRd 2: fM in die naechste M, 5 Zun (11)\n",
                             "RD 1: 6 FM IN FR (6)\nRD 2: FM IN DIE N\xC3\x84"
                             "CHSTE M, 5 ZUN (11)\n"}) {
        const ReadPattern read = read_pattern(text);
        EXPECT_EQ(read.terms, Terms::german) << text;
        EXPECT_EQ(testing::counts_read(read), "6 11") << text << told(read);
    }
}

TEST(LanguageOfAText, DecidesWhatTheSameLettersMean) {
    EXPECT_EQ(read_pattern("V1: 6 pb en un anillo m\xC3\xA1gico (6)\nV2: 6 aum (12)\n").terms,
              Terms::spanish);
    EXPECT_EQ(read_pattern("C1: 6 pb no anel m\xC3\xA1gico (6)\nCarr 2: 6 aum (12)\n").terms,
              Terms::portuguese);
    EXPECT_EQ(read_pattern("Giro 1: 6 mb nell'anello magico (6)\nGiro 2: 6 aum (12)\n").terms,
              Terms::italian);
    EXPECT_EQ(read_pattern("Rnd 1: 6 sc in MR (6)\nRnd 2: inc around, pm (12)\n").terms, Terms::us);
    EXPECT_EQ(read_pattern("Rnd 1: 6 dc in ring (6)\nRnd 2: (dc, htr) 6 times (12)\n").terms, Terms::uk);
}

TEST(LanguageOfAText, SaysWhereAnotherOneIsMixedIn) {
    const ReadPattern read = read_pattern("Kopf\nRd 1: 6 fM in FR (6)\nRd 2: 6 Zun (12)\nRd 3: 12 sc (12)\n");
    EXPECT_EQ(read.terms, Terms::german);
    ASSERT_EQ(read.diagnostics.size(), 1u) << told(read);
    EXPECT_EQ(read.diagnostics[0].code, ReadCode::terms_mixed);
    EXPECT_EQ(read.diagnostics[0].where.line, 4);
    const std::vector<Argument> arguments{std::string("sc"), std::string("us"), std::string("de")};
    EXPECT_EQ(read.diagnostics[0].arguments, arguments);
    EXPECT_EQ(testing::counts_read(read), "6 12 12");
}

}  // namespace
}  // namespace roundwright
