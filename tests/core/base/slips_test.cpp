#include "core/base/slips.h"

#include <gtest/gtest.h>
#include <string>

namespace roundwright {
namespace {

TEST(Slips, OneIsALetterChangedLeftOutAddedOrSwapped) {
    EXPECT_EQ(slips_between("round", "round"), 0);
    EXPECT_EQ(slips_between("", ""), 0);
    EXPECT_EQ(slips_between("round", "rount"), 1);
    EXPECT_EQ(slips_between("round", "xound"), 1);
    EXPECT_EQ(slips_between("round", "roud"), 1);
    EXPECT_EQ(slips_between("round", "roundd"), 1);
    EXPECT_EQ(slips_between("round", "ruond"), 1);
    EXPECT_EQ(slips_between("round", "orund"), 1);
    EXPECT_EQ(slips_between("round", "roudn"), 1);
    EXPECT_EQ(slips_between("", "a"), 1);
}

TEST(Slips, TwoTogether) {
    EXPECT_EQ(slips_between("ruond", "roudn"), 2);
    EXPECT_EQ(slips_between("stitch", "stich es"), 3);
    EXPECT_EQ(slips_between("stitch", "sttich"), 1);
    EXPECT_EQ(slips_between("ab", "ba"), 1);
    EXPECT_EQ(slips_between("abc", "ca"), 3);  // no letter takes part in two slips
    EXPECT_EQ(slips_between("", "ab"), 2);
    EXPECT_EQ(slips_between("abcd", "badc"), 2);
}

TEST(Slips, MoreThanTwoAreThree) {
    EXPECT_EQ(slips_between("round", "xyzzy"), 3);
    EXPECT_EQ(slips_between("", "abc"), 3);
    EXPECT_EQ(slips_between("abc", ""), 3);
    EXPECT_EQ(slips_between("ab", "abcde"), 3);
    EXPECT_EQ(slips_between("abcd", "abcdef"), 2);
    EXPECT_EQ(slips_between("abcdef", "abcd"), 2);
}

TEST(Slips, AreCountedInWordsOfUpTo32Letters) {
    const std::string word(32, 'a');
    EXPECT_EQ(slips_between(word, word), 0);
    EXPECT_EQ(slips_between(word, std::string(31, 'a') + 'b'), 1);
    EXPECT_EQ(slips_between(std::string(33, 'a'), std::string(33, 'a')), 3);
    EXPECT_EQ(slips_between(word, std::string(33, 'a')), 3);
    EXPECT_EQ(slips_between(std::string(33, 'a'), word), 3);
}

}  // namespace
}  // namespace roundwright
