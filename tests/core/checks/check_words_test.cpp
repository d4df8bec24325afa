#include <gtest/gtest.h>

#include "tests/core/checks/checked_piece.h"

namespace roundwright {
namespace {

using namespace test;

Toy with_words(const std::vector<int>& counts, std::size_t round, const std::string& words) {
    Toy toy = toy_of(counts);
    toy.pieces[0].rounds[round].working = AsWritten{words};
    return toy;
}

std::vector<Check> words_checks(const Toy& toy) { return checks_of(toy, CheckCode::words_do_not_fit); }

TEST(CheckWords, WordsThatComeOutAreFine) {
    EXPECT_EQ(named(checks_of(with_words({6, 12, 18}, 1, "inc around"))), "");
    EXPECT_EQ(named(checks_of(with_words({6, 12, 18}, 2, "[sc, inc] x 6"))), "");
}

// Arithmetic: [sc, inc] takes two loops, five times ten of the twelve.
TEST(CheckWords, LoopsLeftOverAreCountedAndMended) {
    const Toy toy = with_words({6, 12, 18}, 2, "[sc, inc] x 5");
    const auto checks = words_checks(toy);
    ASSERT_EQ(named(checks), "words_do_not_fit round 3; ");
    EXPECT_EQ(checks[0].severity, Severity::error);
    EXPECT_EQ(checks[0].arguments, (std::vector<Argument>{12, 10, Millimetres{10}}));
    ASSERT_TRUE(checks[0].reading);
    EXPECT_EQ(checks[0].reading->code, ReadCode::loops_do_not_fit);
    ASSERT_FALSE(checks[0].cures.empty());
    EXPECT_EQ(checks[0].cures[0].kind, CureKind::mend_words);
    EXPECT_EQ(std::get<AsWritten>(checks[0].cures[0].rounds.at(0).working).words, "[sc, inc] x 6");
    for (const Cure& cure : checks[0].cures) EXPECT_EQ(named(words_checks(cured(toy, cure))), "");
}

TEST(CheckWords, ACountChangedBelowIsSeenInTheWordsAbove) {
    Toy toy = with_words({6, 12, 18}, 2, "[sc, inc] x 6");
    toy.pieces[0].rounds[1].working = WorkedEvenly{11};
    EXPECT_EQ(named(words_checks(toy)), "words_do_not_fit round 3; ");
}

TEST(CheckWords, WhatCannotBeReadIsSaidWithItsPlace) {
    const auto checks = words_checks(with_words({6, 12, 18}, 1, "inc arround, glorp"));
    ASSERT_EQ(named(checks), "words_do_not_fit round 2; ");
    ASSERT_TRUE(checks[0].reading);
    EXPECT_EQ(checks[0].reading->where.line, 1);
    EXPECT_GE(checks[0].reading->where.column, 1);
    EXPECT_EQ(checks[0].arguments.at(2), Argument(Millimetres{0}));
}

TEST(CheckWords, RoundThatDoesNotComeOutIsNotAlsoCalledGathered) {
    Toy toy = with_words({6, 12, 18, 24, 24}, 4, "sc, glorp");
    EXPECT_EQ(named(checks_of(toy)), "words_do_not_fit round 5; ");
}

TEST(CheckWords, EveryRoundAtFaultIsNamedOnce) {
    Toy toy = toy_of(std::vector<int>(9, 6));
    for (Round& round : toy.pieces[0].rounds) round.working = AsWritten{"glorp glorp"};
    const auto checks = words_checks(toy);
    EXPECT_EQ(checks.size(), 9);
    for (const Check& check : checks) EXPECT_TRUE(check.reading);
}

}  // namespace
}  // namespace roundwright
