#include "core/language/pattern/said_numbers.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

std::string phrases(std::string_view text) {
    std::string all;
    for (const SaidNumbers& said : said_numbers(text)) {
        all += said.unit == SaidNumbers::Unit::rounds ? "r" : "s";
        for (const SaidNumbers::Number& number : said.numbers) all += " " + std::to_string(number.value);
        all += " <" + std::string(text.substr(said.at, said.length)) + "> ";
    }
    return all;
}

TEST(SaidNumbers, RoundsAndWholeCountsOfStitches) {
    const std::pair<const char*, const char*> lines[] = {
        {"Sew the 15 stitches of the edge between rounds 19 and 22.",
         "s 15 <the 15 stitches> r 19 22 <rounds 19 and 22> "},
        {"at round 4, 6 stitches apart", "r 4 <round 4> "},
        {"Rnds 3-5", "r 3 5 <Rnds 3-5> "},
        {"rows 2\xE2\x80\x93"
         "6 and round 9 or round 12",
         "r 2 6 9 12 <rows 2\xE2\x80\x93"
         "6 and round 9 or round 12> "},
        {"Over the 5th round, all 30 open sts.", "r 5 <5th round> s 30 <all 30 open sts> "},
        {"Mark every 6th stitch, skip 2 stitches, 7 stitches apart, 12 sts", ""},
        {"round about; 10 cm; the 3 wings; the 2 sides", ""},
        {"the 99999999999999999999 stitches, round 99999999999999999999", ""},
        {"", ""},
    };
    for (const auto& [line, found] : lines) EXPECT_EQ(phrases(line), found) << line;
}

TEST(SaidNumbers, TakeOtherNumbersAndKeepTheWords) {
    const auto with = [](std::string_view text, const std::vector<int>& numbers) {
        return said_with(text, said_numbers(text).front(), numbers);
    };
    EXPECT_EQ(with("between Rnds 19 & 22.", {16, 18}), "Rnds 16 & 18");
    EXPECT_EQ(with("the 23rd round", {21}), "21st round");
    EXPECT_EQ(with("the 15 stitches of it", {12}), "the 12 stitches");
}

}  // namespace
}  // namespace roundwright
