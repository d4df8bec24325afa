#include "tests/torture/memory.h"

#include <gtest/gtest.h>

#include "tests/torture/journal.h"

namespace roundwright::torture {
namespace {

constexpr std::int64_t second = 1'000'000'000;

/// A toy "a" in its file, changed to "b" after 1 s and to "c" after 2 s, a key each; "24" typed after 3 s.
Memory an_evening() {
    Memory memory;
    memory.add({0, {"a", ""}, "/harbour/pup", false});
    memory.add({1 * second, {"b", ""}, "/harbour/pup", true});
    memory.add({2 * second, {"c", ""}, "/harbour/pup", true});
    memory.add({3 * second, {"c", "24"}, "/harbour/pup", true});
    for (const int at : {1, 2, 3}) memory.key(at * second);
    return memory;
}

TEST(TortureMemory, WhatWasThereAtTheEndIsNoLoss) {
    const Loss loss = an_evening().loss({"c", "24"}, 4 * second);
    EXPECT_TRUE(loss.known);
    EXPECT_EQ(loss.seconds, 0);
    EXPECT_EQ(loss.keys, 0);
}

TEST(TortureMemory, ALossBeginsWithTheFirstChangeThatIsMissing) {
    EXPECT_DOUBLE_EQ(an_evening().loss({"c", ""}, 4 * second).seconds, 1);
    EXPECT_DOUBLE_EQ(an_evening().loss({"b", ""}, 4 * second).seconds, 2);
    EXPECT_EQ(an_evening().loss({"b", ""}, 4 * second).keys, 2);
    EXPECT_DOUBLE_EQ(an_evening().loss({"a", ""}, 4 * second).seconds, 3);
}

TEST(TortureMemory, WhatNeverStoodThereIsNotKnown) {
    EXPECT_FALSE(an_evening().loss({"d", ""}, 4 * second).known);
    EXPECT_FALSE(an_evening().loss({"a", "24"}, 4 * second).known) << "two halves of different times";
}

TEST(TortureMemory, TheLatestTimeCounts) {
    Memory memory = an_evening();
    memory.add({4 * second, {"a", ""}, "/harbour/pup", false});  // undone
    EXPECT_EQ(memory.loss({"a", ""}, 9 * second).seconds, 0);
}

TEST(TortureMemory, TimeInWhichNothingCouldBeKeptIsExcused) {
    Memory memory = an_evening();
    memory.excuse(2 * second, 3 * second);
    memory.excuse(5 * second / 2, 7 * second / 2);  // overlaps
    EXPECT_DOUBLE_EQ(memory.loss({"b", ""}, 4 * second).seconds, 0.5);
    EXPECT_DOUBLE_EQ(memory.loss_by_the_clock({"b", ""}, 4 * second).seconds, 2);
    EXPECT_DOUBLE_EQ(memory.loss({"a", ""}, 4 * second).seconds, 1.5);
}

TEST(TortureMemory, NothingThatCameBackIsTheWholeLoss) {
    EXPECT_DOUBLE_EQ(an_evening().whole_loss(4 * second).seconds, 3);
    Memory memory = an_evening();
    memory.add({4 * second, {"c", ""}, "/harbour/pup", false});  // saved
    EXPECT_EQ(memory.whole_loss(9 * second).seconds, 0);
    memory.add({8 * second, {"d", ""}, "/harbour/pup", true});
    EXPECT_DOUBLE_EQ(memory.whole_loss(9 * second).seconds, 1);
}

TEST(TortureMemory, OnlyWhatIsNowhereElseIsOwed) {
    Memory memory;
    memory.add({0, {"a", ""}, "/harbour/pup", false});
    EXPECT_FALSE(memory.owed_within(1, second));
    EXPECT_TRUE(an_evening().owed_within(1, 4 * second));
    memory.add({1 * second, {"b", ""}, "/harbour/pup", true});
    memory.add({2 * second, {"b", ""}, "/harbour/pup", false});  // saved
    EXPECT_TRUE(memory.owed_within(1.5, 3 * second)) << "its copy may not be gone yet";
    EXPECT_FALSE(memory.owed_within(1.5, 4 * second));
}

TEST(TortureMemory, WhatIsBroughtBackMayHoldMoreThanTheWindowHasTold) {
    Memory memory = an_evening();
    memory.bring_back(5 * second);
    memory.add({6 * second, {"z", ""}, "/harbour/pup", true});
    const Work copy{"z", "sc 2, inc"};
    EXPECT_TRUE(memory.loss(copy, 7 * second).known);
    EXPECT_EQ(memory.loss(copy, 7 * second).seconds, 0);
    EXPECT_FALSE(memory.loss({"y", "sc 2"}, 7 * second).known);
    memory.key(6 * second + 1);
    EXPECT_FALSE(memory.loss(copy, 7 * second).known);
}

TEST(TortureMemory, AnEmptyToyDoesNotStandForTheFileThatWasOpen) {
    const Moment empty{0, {"nothing", ""}, "", false};
    const Moment pup{4 * second, {"c", ""}, "/harbour/pup", true};
    EXPECT_FALSE(stands_for(empty, pup, false));
    EXPECT_TRUE(stands_for(pup, pup, false));
    EXPECT_TRUE(stands_for(empty, pup, true)) << "a copy may come back without its file";
}

TEST(TortureMemory, WhatIsGivenUpIsOwedAgainWhereItStays) {
    Memory memory = an_evening();
    memory.give_up(4 * second);
    EXPECT_TRUE(memory.is_given_up());
    memory.add({5 * second, {"c", "24"}, "/harbour/pup", true});  // the other file could not be opened
    EXPECT_FALSE(memory.is_given_up());
}

TEST(TortureJournal, ReadsWhatItWrites) {
    const Entry entry{123'456'789, "told", {"no\troom\n", "\\n", ""}};
    std::string line = written(entry);
    ASSERT_EQ(line.back(), '\n');
    line.pop_back();
    EXPECT_EQ(line.find('\n'), std::string::npos);
    EXPECT_EQ(read_entry(line), entry);
    EXPECT_EQ(read_entry("4711"), std::nullopt) << "broken off";
    EXPECT_EQ(read_entry(""), std::nullopt);
}

}  // namespace
}  // namespace roundwright::torture
