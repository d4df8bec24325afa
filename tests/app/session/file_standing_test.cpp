#include "app/session/file_standing.h"

#include <gtest/gtest.h>
#include <string>
#include <vector>

namespace roundwright::app {
namespace {

/// A standing in seven letters: edited, recovered, kept; on disk (n never saved, s same, c changed, u
/// unreadable, g gone); newer format, open elsewhere, no right to write.
std::string letters(const FileStanding& standing) {
    const auto digit = [](bool is) { return is ? '1' : '0'; };
    return {digit(standing.edited),       digit(standing.recovered),
            digit(standing.kept),         "nscug"[static_cast<int>(standing.on_disk)],
            digit(standing.newer_format), digit(standing.open_elsewhere),
            digit(standing.no_right)};
}

/// From the standings that `before` fits (a dot fits anything), the event leads to `after` (a dot: as it
/// was).
struct Row {
    FileEvent event;
    const char* before;
    const char* after;
};

constexpr Row rows[] = {
    // What the maker does in the window.
    {FileEvent::edited, ".......", "1.0...."},
    {FileEvent::back_to_saved, ".......", "0.0...."},
    {FileEvent::saved, ".......", "000s000"},
    {FileEvent::save_failed, ".......", "......."},
    {FileEvent::took_theirs, ".......", "000s..."},
    {FileEvent::recovered, ".......", "011...."},
    // The kept copy: only of what no file has.
    {FileEvent::kept, "1......", "..1...."},
    {FileEvent::kept, "01.....", "..1...."},
    {FileEvent::kept, "00.n...", "..0...."},
    {FileEvent::kept, "00.s...", "..0...."},
    {FileEvent::kept, "00.c...", "..0...."},
    {FileEvent::kept, "00.u.0.", "..1...."},
    {FileEvent::kept, "00.g.0.", "..1...."},
    {FileEvent::kept, "00.u.1.", "..0...."},
    {FileEvent::kept, "00.g.1.", "..0...."},
    {FileEvent::keeping_failed, ".......", "..0...."},
    // What happens to the file. A toy that was never saved has none.
    {FileEvent::changed_by_another, "...n...", "......."},
    {FileEvent::changed_by_another, "1..s...", "...c..."},
    {FileEvent::changed_by_another, "1..c...", "...c..."},
    {FileEvent::changed_by_another, "1..u...", "...c..."},
    {FileEvent::changed_by_another, "1..g...", "...c..."},
    {FileEvent::changed_by_another, "01.s...", "...c..."},
    {FileEvent::changed_by_another, "01.c...", "...c..."},
    {FileEvent::changed_by_another, "01.u...", "...c..."},
    {FileEvent::changed_by_another, "01.g...", "...c..."},
    {FileEvent::changed_by_another, "00.s...", "..0c..."},
    {FileEvent::changed_by_another, "00.c...", "..0c..."},
    {FileEvent::changed_by_another, "00.u...", "..0c..."},
    {FileEvent::changed_by_another, "00.g...", "..0c..."},
    {FileEvent::made_unreadable, "...n...", "......."},
    {FileEvent::made_unreadable, "...s...", "...u..."},
    {FileEvent::made_unreadable, "...c...", "...u..."},
    {FileEvent::made_unreadable, "...u...", "...u..."},
    {FileEvent::made_unreadable, "...g...", "...u..."},
    {FileEvent::gone, "...n...", "......."},
    {FileEvent::gone, "...s...", "...g..."},
    {FileEvent::gone, "...c...", "...g..."},
    {FileEvent::gone, "...u...", "...g..."},
    {FileEvent::gone, "...g...", "...g..."},
    {FileEvent::back, "...n...", "......."},
    {FileEvent::back, "1..s...", "...s..."},
    {FileEvent::back, "1..c...", "...s..."},
    {FileEvent::back, "1..u...", "...s..."},
    {FileEvent::back, "1..g...", "...s..."},
    {FileEvent::back, "01.s...", "...s..."},
    {FileEvent::back, "01.c...", "...s..."},
    {FileEvent::back, "01.u...", "...s..."},
    {FileEvent::back, "01.g...", "...s..."},
    {FileEvent::back, "00.s...", "..0s..."},
    {FileEvent::back, "00.c...", "..0s..."},
    {FileEvent::back, "00.u...", "..0s..."},
    {FileEvent::back, "00.g...", "..0s..."},
    {FileEvent::renamed, "...n...", "......."},
    {FileEvent::renamed, "1..s...", "...s..."},
    {FileEvent::renamed, "1..c...", "...s..."},
    {FileEvent::renamed, "1..u...", "...s..."},
    {FileEvent::renamed, "1..g...", "...s..."},
    {FileEvent::renamed, "01.s...", "...s..."},
    {FileEvent::renamed, "01.c...", "...s..."},
    {FileEvent::renamed, "01.u...", "...s..."},
    {FileEvent::renamed, "01.g...", "...s..."},
    {FileEvent::renamed, "00.s...", "..0s..."},
    {FileEvent::renamed, "00.c...", "..0s..."},
    {FileEvent::renamed, "00.u...", "..0s..."},
    {FileEvent::renamed, "00.g...", "..0s..."},
    // Who may write it. What another window has open is that window's to save.
    {FileEvent::opened_elsewhere, "1......", ".....1."},
    {FileEvent::opened_elsewhere, "01.....", ".....1."},
    {FileEvent::opened_elsewhere, "00.....", "..0..1."},
    {FileEvent::closed_elsewhere, ".......", ".....0."},
    {FileEvent::right_taken, ".......", "......1"},
    {FileEvent::right_given, ".......", "......0"},
};

bool fits(const std::string& standing, const std::string& pattern) {
    for (std::size_t at = 0; at < standing.size(); ++at) {
        if (pattern[at] != '.' && pattern[at] != standing[at]) return false;
    }
    return true;
}

std::string led_to(std::string standing, const std::string& pattern) {
    for (std::size_t at = 0; at < standing.size(); ++at) {
        if (pattern[at] != '.') standing[at] = pattern[at];
    }
    return standing;
}

std::vector<FileEvent> all_events() {
    std::vector<FileEvent> events;
    for (int event = 0; event <= static_cast<int>(FileEvent::right_given); ++event)
        events.push_back(static_cast<FileEvent>(event));
    return events;
}

std::vector<FileStanding> reachable() {
    FileStanding opened;
    opened.on_disk = OnDisk::same;
    FileStanding newer = opened;
    newer.newer_format = true;
    std::vector<FileStanding> found{{}, opened, newer};
    for (std::size_t at = 0; at < found.size(); ++at) {
        for (const FileEvent event : all_events()) {
            const FileStanding next = after(found[at], event);
            if (std::find(found.begin(), found.end(), next) == found.end()) found.push_back(next);
        }
    }
    return found;
}

TEST(FileStandingTest, EveryEventFromEveryStandingIsARow) {
    const auto standings = reachable();
    EXPECT_GT(standings.size(), 100u);
    RecordProperty("standings", static_cast<int>(standings.size()));
    for (const FileStanding& standing : standings) {
        for (const FileEvent event : all_events()) {
            int rows_that_fit = 0;
            for (const Row& row : rows) {
                if (row.event != event || !fits(letters(standing), row.before)) continue;
                ++rows_that_fit;
                EXPECT_EQ(letters(after(standing, event)), led_to(letters(standing), row.after))
                    << "event " << static_cast<int>(event) << " from " << letters(standing);
            }
            EXPECT_EQ(rows_that_fit, 1)
                << "event " << static_cast<int>(event) << " from " << letters(standing);
        }
    }
}

TEST(FileStandingTest, NothingCountsAsSavedThatNoFileHas) {
    for (const FileStanding& standing : reachable()) {
        if (standing.edited || standing.recovered) {
            EXPECT_TRUE(counts_as_unsaved(standing)) << letters(standing);
        }
        EXPECT_TRUE(!standing.kept || counts_as_unsaved(standing)) << letters(standing);
        for (const FileEvent event : all_events()) {
            const FileStanding next = after(standing, event);
            const bool settles = event == FileEvent::saved || event == FileEvent::took_theirs ||
                                 event == FileEvent::back_to_saved || event == FileEvent::recovered;
            EXPECT_TRUE(!standing.edited || settles || counts_as_unsaved(next)) << letters(standing);
            EXPECT_TRUE(!next.recovered || standing.recovered || event == FileEvent::recovered);
        }
    }
}

TEST(FileStandingTest, WhatIsReadOnlySaysWhy) {
    FileStanding standing;
    standing.on_disk = OnDisk::same;
    EXPECT_EQ(read_only(standing), ReadOnly::no);
    EXPECT_TRUE(may_be_saved(standing));
    standing = after(standing, FileEvent::right_taken);
    EXPECT_EQ(read_only(standing), ReadOnly::no_right);
    EXPECT_TRUE(may_be_edited(standing)) << "it can be saved under another name";
    EXPECT_FALSE(may_be_saved(standing));
    standing = after(standing, FileEvent::opened_elsewhere);
    EXPECT_EQ(read_only(standing), ReadOnly::open_elsewhere);
    EXPECT_FALSE(may_be_edited(standing));
    standing.newer_format = true;
    EXPECT_EQ(read_only(standing), ReadOnly::newer_format);
    EXPECT_TRUE(may_be_edited(after(standing, FileEvent::saved))) << "saved under another name, it is ours";
}

TEST(FileStandingTest, AFileThatIsGoneLeavesTheToyUnsavedUntilItIsBackOrSavedAgain) {
    FileStanding standing;
    standing.on_disk = OnDisk::same;
    EXPECT_FALSE(counts_as_unsaved(standing));
    standing = after(standing, FileEvent::gone);
    EXPECT_TRUE(counts_as_unsaved(standing));
    EXPECT_FALSE(counts_as_unsaved(after(standing, FileEvent::back)));
    EXPECT_FALSE(counts_as_unsaved(after(standing, FileEvent::saved)));
    EXPECT_FALSE(counts_as_unsaved(after(standing, FileEvent::opened_elsewhere)))
        << "the window that may write it says so";
}

}  // namespace
}  // namespace roundwright::app
