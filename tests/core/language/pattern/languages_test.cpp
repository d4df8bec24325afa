#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/pattern/write_pattern.h"
#include "core/language/round/completion.h"
#include "core/language/round/read_round.h"
#include "core/language/words/in_language.h"
#include "tests/core/language/pattern/random_pattern_toy.h"
#include "tests/core/language/pattern/random_piece.h"
#include "tests/core/language/pattern/read_back.h"
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
    return testing::is_read_back(piece, read.pieces[0], text, terms);
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

// --- while a round is typed

RoundSetting over(int loops, Terms terms) {
    RoundSetting setting;
    setting.terms = terms;
    setting.work.loops_below = loops;
    setting.work.into_ring = loops == 0;
    return setting;
}

TEST_P(Languages, OfferWordsThatGoOn) {
    const Terms terms = GetParam();
    const auto begins = [&](int loops, const std::string& before, const std::string& words) {
        for (const Completion& one : completions(before, over(loops, terms), {}))
            if (one.words == words) return true;
        return false;
    };
    EXPECT_TRUE(begins(0, "", said_in("6 sc in magic ring", terms)));
    EXPECT_TRUE(begins(6, "", said_in("inc around", terms)));
    const std::string skip = said_in("sk", terms);
    const std::size_t letter = static_cast<unsigned char>(skip[0]) < 0x80 ? 1 : 2;
    const RoundSetting setting = over(6, terms);
    for (const Completion& one : completions(skip.substr(0, letter), setting, {}, 40)) {
        YarnTable yarns;
        EXPECT_TRUE(!one.ends_round || read_round(one.words, setting, yarns).proved()) << one.words;
    }
}

TEST_P(Languages, MendInTheirOwnWords) {
    const Terms terms = GetParam();
    const RoundSetting setting = over(12, terms);
    for (const char* english : {"[sc, inc] x 7 (18)", "sc, inc x 6 (18)", "[sc, inc] (18)", "sc 10 (12)"}) {
        const std::string words = said_in(english, terms);
        YarnTable yarns;
        const ReadRound read = read_round(words, setting, yarns);
        ASSERT_FALSE(read.diagnostics.empty()) << words;
        ASSERT_FALSE(read.diagnostics[0].mends.empty()) << words;
        for (const Mend& mend : read.diagnostics[0].mends) {
            const std::string better = mended(words, mend);
            EXPECT_TRUE(read_round(better, setting, yarns).proved()) << words << " -> " << better;
            EXPECT_EQ(better, words_in_terms(words_in_terms(better, terms, Terms::us), Terms::us, terms))
                << "in the words of the language";
        }
    }
}

TEST_P(Languages, AreTypedIntoACellAndStoredInUsWords) {
    const Terms terms = GetParam();
    Piece piece;
    piece.rounds.resize(2);
    piece.rounds[0].working = WorkedEvenly{6};
    piece.rounds[1].working = WorkedEvenly{12};
    YarnTable yarns;
    const ReadCell cell = read_cell(piece, 1, said_in("[sc 2, inc] x 2, ch 1", terms), terms, yarns);
    const auto* written = std::get_if<AsWritten>(&cell.round.working);
    ASSERT_NE(written, nullptr);
    YarnTable us;
    const ReadRound again = read_round(written->words, over(6, Terms::us), us);
    EXPECT_TRUE(again.proved()) << written->words;
    EXPECT_EQ(again.made, cell.reading.made) << written->words;
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
