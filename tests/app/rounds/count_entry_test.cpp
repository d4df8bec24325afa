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
    EXPECT_EQ(parse_count_entry(u"="), (CountEntry{Kind::change, 0}));
}

TEST(CountEntry, RefusesWhatIsNoCount) {
    for (const auto* text :
         {u"", u"0", u"six", u"+", u"--6", u"+-6", u"6x4", u"200001", u"99999999999", u"1.5", u"=6"}) {
        EXPECT_FALSE(parse_count_entry(text)) << QStringView(text).toString().toStdString();
    }
}

TEST(CountEntry, TakesAChangeFromTheRoundBelow) {
    EXPECT_EQ(entered_count({Kind::change, 6}, 12), 18);
    EXPECT_EQ(entered_count({Kind::change, -20}, 12), 1);
    EXPECT_EQ(entered_count({Kind::count, 5}, 12), 5);
}

}  // namespace
}  // namespace roundwright::app
