#include "app/rounds/count_entry.h"

#include <gtest/gtest.h>

#include <QString>

namespace roundwright::app {
namespace {

using Kind = CountEntry::Kind;

TEST(CountEntry, ReadsCountsAndChanges) {
    EXPECT_EQ(parse_count_entry(u"30"), (CountEntry{Kind::count, 30}));
    EXPECT_EQ(parse_count_entry(u" 7 "), (CountEntry{Kind::count, 7}));
    EXPECT_EQ(parse_count_entry(u"+6"), (CountEntry{Kind::change, 6}));
    EXPECT_EQ(parse_count_entry(u"-6"), (CountEntry{Kind::change, -6}));
    EXPECT_EQ(parse_count_entry(u"\u22126"), (CountEntry{Kind::change, -6}));
    EXPECT_EQ(parse_count_entry(u"\u20136"), (CountEntry{Kind::change, -6}));
    EXPECT_EQ(parse_count_entry(u"="), (CountEntry{Kind::change, 0}));
    EXPECT_EQ(parse_count_entry(u"24x4"), (CountEntry{Kind::count, 24, 4}));
    EXPECT_EQ(parse_count_entry(u" +6 \u00d7 3"), (CountEntry{Kind::change, 6, 3}));
    EXPECT_EQ(parse_count_entry(u"=*2"), (CountEntry{Kind::change, 0, 2}));
}

TEST(CountEntry, RefusesWhatIsNoCount) {
    for (const auto* text : {u"", u"0", u"six", u"+", u"--6", u"+-6", u"6x0", u"6x2001", u"6,", u"6 12",
                             u"200001", u"99999999999", u"1.5", u"=6"}) {
        EXPECT_FALSE(parse_count_entry(text)) << QStringView(text).toString().toStdString();
    }
}

TEST(CountEntry, TakesAChangeFromTheRoundBelow) {
    EXPECT_EQ(entered_counts({Kind::change, 6}, 12), (std::vector{18}));
    EXPECT_EQ(entered_counts({Kind::change, -20}, 12), (std::vector{1}));
    EXPECT_EQ(entered_counts({Kind::count, 5}, 12), (std::vector{5}));
    EXPECT_EQ(entered_counts({Kind::change, 6, 3}, 12), (std::vector{18, 24, 30}));
    EXPECT_EQ(entered_counts({Kind::count, 24, 2}, 12), (std::vector{24, 24}));
}

TEST(CountEntry, OfSeveralTimesMakesEachRoundAsMany) {
    EXPECT_EQ(each_times({1, 4}, 1), (std::vector{1, 4}));
    EXPECT_EQ(each_times({1, 4}, 3), (std::vector{1, 2, 3, 6, 7, 8}));
    EXPECT_TRUE(each_times({}, 3).empty());
}

}  // namespace
}  // namespace roundwright::app
