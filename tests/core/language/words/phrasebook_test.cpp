#include "core/language/words/phrasebook.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <set>
#include <string>

#include "core/language/words/in_language.h"
#include "core/language/words/letters.h"

namespace roundwright {
namespace {

using Kind = PhrasePart::Kind;

std::string letters(std::string_view word) {
    std::string room;
    return std::string(plain_letters(word, room));
}

TEST(PlainLetters, FoldCaseAccentsAndTheirSubstitutes) {
    EXPECT_EQ(letters("inc"), "inc");
    EXPECT_EQ(letters("N\xC3\x84"
                      "CHSTE"),
              "nachste");
    EXPECT_EQ(letters("naechste"), "nachste");
    EXPECT_EQ(letters("na\xCC\x88"
                      "chste"),
              "nachste");
    EXPECT_EQ(letters("n\xE4"
                      "chste"),
              "nachste");
    EXPECT_EQ(letters("n\xC3\xA6ste"), letters("naeste"));
    EXPECT_EQ(letters("m\xC3\xA1gico"), "magico");
    EXPECT_EQ(letters("schlie\xC3\x9F"
                      "en"),
              "schliessen");
    EXPECT_EQ(letters("\xC2\xAA"), "a");
    EXPECT_EQ(letters("\xC2\xB0"), "o");
}

TEST(Terms, HaveCodes) {
    std::set<std::string_view> codes;
    for (const Terms terms : all_terms) {
        codes.insert(terms_code(terms));
        EXPECT_EQ(terms_of_code(terms_code(terms)), terms);
        EXPECT_FALSE(abbreviation(StitchKind::single_crochet, terms).empty());
        EXPECT_FALSE(full_name(StitchKind::bobble, terms).empty());
    }
    EXPECT_EQ(codes.size(), all_terms.size());
    EXPECT_EQ(terms_of_code("xx"), std::nullopt);
}

class Phrasebooks : public ::testing::TestWithParam<Terms> {};

std::string english(const PhrasePair& pair) {
    std::string words;
    for (const PhrasePart& part : pair.english)
        words += part.kind == Kind::word || part.kind == Kind::mark ? part.text + " "
                 : part.kind == Kind::number                        ? std::to_string(part.number) + " "
                                                                    : "# ";
    return words;
}

// A word that English says in several is parted between them, so it needs as many letters.
TEST_P(Phrasebooks, HaveALetterForEveryEnglishWord) {
    for (const PhrasePair& pair : Phrasebook::of(GetParam()).pairs()) {
        std::size_t count = 0;
        for (const PhrasePart& part : pair.said)
            count += part.kind == Kind::word ? part.text.size() : part.kind == Kind::stitch ? 2 : 1;
        EXPECT_GE(count, pair.english.size()) << pair.said_text;
        EXPECT_FALSE(pair.english.empty()) << pair.said_text;
        EXPECT_FALSE(pair.said.empty()) << english(pair);
    }
}

TEST_P(Phrasebooks, KeepTheNumbersOfAPhrase) {
    const auto slots = [](const std::vector<PhrasePart>& parts) {
        return std::count_if(parts.begin(), parts.end(), [](const PhrasePart& part) {
            return part.kind == Kind::any_number || part.kind == Kind::any_ordinal;
        });
    };
    for (const PhrasePair& pair : Phrasebook::of(GetParam()).pairs()) {
        EXPECT_EQ(slots(pair.english), slots(pair.said)) << pair.said_text;
        const auto is_stitch = [](const PhrasePart& part) { return part.kind == Kind::stitch; };
        EXPECT_EQ(std::ranges::count_if(pair.english, is_stitch), std::ranges::count_if(pair.said, is_stitch))
            << pair.said_text;
    }
}

TEST_P(Phrasebooks, WriteTheSamePhrasesAsTheOthers) {
    const auto written = [](Terms terms) {
        std::set<std::string> all;
        for (const PhrasePair& pair : Phrasebook::of(terms).pairs())
            if (pair.written) all.insert(english(pair));
        return all;
    };
    EXPECT_EQ(written(GetParam()), written(Terms::german));
}

TEST_P(Phrasebooks, ReadWhatTheyWrite) {
    for (const char* words :
         {"6 sc in magic ring", "[sc, inc] x 6", "inc around", "sc in each st around", "sc3tog",
          "BLO sc in next st", "in FLO: 6 hdc, dec", "sk next 2 sts, tr",
          "invisible dc2tog in same st and next st", "bobble in next 3 sts", "2 dc in each of next 4 sts",
          "starting in 5th st, 3 sc, leave rem sts unworked", "with B, 3 ch, sl st", "sc in each ch across",
          "invdec around", "dc in each st across"}) {
        const std::string said = said_in(words, GetParam());
        LexedText read(said);
        read_as_english(read, GetParam());
        std::string back = english_of(all_tokens(read));
        std::string plain = words;
        std::erase(back, ' ');
        std::erase(plain, ' ');
        std::transform(plain.begin(), plain.end(), plain.begin(),
                       [](char c) { return static_cast<char>(std::tolower(c)); });
        std::transform(back.begin(), back.end(), back.begin(),
                       [](char c) { return static_cast<char>(std::tolower(c)); });
        EXPECT_EQ(back, plain) << said;
    }
}

TEST_P(Phrasebooks, LoseNothingOfWhatIsWritten) {
    const std::string said = said_in("6 sc in magic ring, with B, sc3tog. Stuff firmly.", GetParam());
    LexedText text(said);
    read_as_english(text, GetParam());
    std::string raw;
    int column = 1;
    for (const Token& token : all_tokens(text)) {
        EXPECT_FALSE(token.raw.empty());
        EXPECT_GE(token.where.column, column) << token.raw;
        column = token.where.column;
        raw += token.raw;
    }
    const auto without_spaces = [](std::string words) {
        std::erase(words, ' ');
        return words;
    };
    EXPECT_EQ(without_spaces(raw), without_spaces(said));
}

INSTANTIATE_TEST_SUITE_P(All, Phrasebooks,
                         ::testing::Values(Terms::german, Terms::french, Terms::spanish, Terms::dutch,
                                           Terms::danish, Terms::portuguese, Terms::italian),
                         [](const auto& one) { return std::string(terms_code(one.param)); });

}  // namespace
}  // namespace roundwright
