#include "core/differences/align.h"

#include <gtest/gtest.h>
#include <random>
#include <string>

#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

/// "a=a b>c -d +e": the same, changed, taken out, put in.
std::string said(const std::string& before, const std::string& after) {
    const auto change = [&](std::size_t i, std::size_t k) { return before[i] == after[k] ? 0 : 1; };
    std::string words;
    for (const AlignedPair& pair : align(before.size(), after.size(), {change, 1})) {
        if (!words.empty()) words += ' ';
        if (!pair.after) words += std::string("-") + before[*pair.before];
        if (!pair.before) words += std::string("+") + after[*pair.after];
        if (pair.before && pair.after)
            words += std::string() + before[*pair.before] +
                     (before[*pair.before] == after[*pair.after] ? '=' : '>') + after[*pair.after];
    }
    return words;
}

TEST(Align, Tables) {
    const struct {
        const char* before;
        const char* after;
        const char* expected;
    } cases[] = {
        {"", "", ""},
        {"abc", "abc", "a=a b=b c=c"},
        {"abc", "", "-a -b -c"},
        {"", "ab", "+a +b"},
        {"abc", "abxc", "a=a b=b +x c=c"},
        {"abc", "ac", "a=a -b c=c"},
        {"abc", "axc", "a=a b>x c=c"},
        {"abbbbc", "abbbc", "a=a b=b b=b b=b -b c=c"},
        {"abc", "xabc", "+x a=a b=b c=c"},
        {"abcdef", "abxdyef", "a=a b=b c>x d=d +y e=e f=f"},
        {"abcd", "wxyz", "a>w b>x c>y d>z"},
    };
    for (const auto& c : cases) EXPECT_EQ(said(c.before, c.after), c.expected);
}

TEST(Align, OfRandomListsEveryItemStandsOnceInOrder) {
    std::mt19937 random(7);
    for (int i = 0; i < testing::random_cases(2000); ++i) {
        std::string before(random() % 12, 'a');
        std::string after(random() % 12, 'a');
        for (char& c : before) c = static_cast<char>('a' + random() % 3);
        for (char& c : after) c = static_cast<char>('a' + random() % 3);
        const auto change = [&](std::size_t a, std::size_t b) { return before[a] == after[b] ? 0 : 1; };
        std::size_t next_before = 0;
        std::size_t next_after = 0;
        int cost = 0;
        for (const AlignedPair& pair : align(before.size(), after.size(), {change, 1})) {
            ASSERT_TRUE(pair.before || pair.after);
            if (pair.before) {
                ASSERT_EQ(*pair.before, next_before++);
            }
            if (pair.after) {
                ASSERT_EQ(*pair.after, next_after++);
            }
            cost += pair.before && pair.after ? change(*pair.before, *pair.after) : 1;
        }
        EXPECT_EQ(next_before, before.size());
        EXPECT_EQ(next_after, after.size());
        // Equal lists cost nothing, and no alignment costs more than changing all and adding the rest.
        if (before == after) {
            EXPECT_EQ(cost, 0);
        }
        EXPECT_LE(cost, static_cast<int>(std::max(before.size(), after.size())));
    }
}

}  // namespace
}  // namespace roundwright
