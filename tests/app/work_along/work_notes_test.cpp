#include "app/work_along/work_notes.h"

#include <gtest/gtest.h>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

std::vector<std::pair<int, std::string>> notes_of(const Toy& toy) {
    std::vector<std::pair<int, std::string>> notes;
    for (const WorkNote& note : work_notes(toy, toy.pieces[0], study_piece(toy, 0)))
        notes.emplace_back(note.after_round, note.words.toStdString());
    return notes;
}

bool has_note(const Toy& toy, int after, const std::string& words) {
    for (const auto& [round, text] : notes_of(toy))
        if (round == after && text.find(words) != std::string::npos) return true;
    return false;
}

Toy ball() {
    Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
    toy.pieces[0].end = End::drawn_closed;
    return toy;
}

TEST(WorkNotes, TellYarnChanges) {
    Toy toy = ball();
    toy.pieces[0].rounds[6].yarn = 1;
    EXPECT_TRUE(has_note(toy, -1, "Start with Fog grey."));
    EXPECT_TRUE(has_note(toy, 5, "Change to Tide blue."));
    EXPECT_TRUE(has_note(toy, 6, "Change to Fog grey."));
}

TEST(WorkNotes, TellWhenToFitEyesWithTheirCaution) {
    Toy toy = ball();
    Feature eyes;
    eyes.round = 8;
    toy.pieces[0].features.push_back(eyes);
    bool found = false;
    for (const auto& [round, words] : notes_of(toy)) {
        if (words.find("Insert the 8 mm safety eyes, between rounds 9 and 10") == std::string::npos) continue;
        found = true;
        EXPECT_GE(round, 8);
        EXPECT_LT(round, 14);
        EXPECT_NE(words.find("choking hazard"), std::string::npos);
    }
    EXPECT_TRUE(found);
}

TEST(WorkNotes, TellStuffingAndClosingInOrder) {
    const auto notes = notes_of(ball());
    ASSERT_GE(notes.size(), 2u);
    EXPECT_EQ(notes.back().first, 14);
    EXPECT_EQ(notes.back().second, "Draw the last stitches closed.");
    for (std::size_t i = 1; i < notes.size(); ++i) EXPECT_LE(notes[i - 1].first, notes[i].first);
    bool stuffed = false;
    for (const auto& [round, words] : notes) stuffed = stuffed || words.find("tuff") != std::string::npos;
    EXPECT_TRUE(stuffed);
    Toy flat = ball();
    flat.pieces[0].area_stretch = unstuffed_stretch;
    for (const auto& [round, words] : notes_of(flat)) EXPECT_EQ(words.find("tuff"), std::string::npos);
}

TEST(WorkNotes, TellHowTheEndIsSewn) {
    Toy ear = toy_of({6, 12, 18, 24, 24, 24});
    ear.pieces[0].end = End::sewn_straight;
    EXPECT_TRUE(has_note(ear, 5, "Flatten the last round and sew straight across it, through both layers."));
    EXPECT_FALSE(has_note(ear, 5, "Draw the last stitches closed."));
}

TEST(Repeat, IsFoundWhereOneGroupIsRepeated) {
    const Repeat repeat = repeat_of(QStringLiteral("[sc 4, dec] x 6"), 30);
    EXPECT_EQ(repeat.times, 6);
    EXPECT_EQ(repeat.stitches, 5);
    EXPECT_EQ(repeat_of(QStringLiteral("sc in each st around"), 30).times, 0);
    EXPECT_EQ(repeat_of(QStringLiteral("[sc, inc] x 5, sc 2"), 17).times, 0);
}

TEST(Times, ReadAsAClockDoes) {
    EXPECT_EQ(time_text(0).toStdString(), "0:00");
    EXPECT_EQ(time_text(80).toStdString(), "1:20");
    EXPECT_EQ(time_text(3725).toStdString(), "1:02:05");
}

TEST(Times, WhatIsLeftGoesByTheStitchesMeasured) {
    // 36 stitches took 72 seconds; 12 + 18 - 4 are left.
    EXPECT_DOUBLE_EQ(seconds_left({3, 4, {12, 24, 36}}, {6, 12, 18, 12, 18}), 52);
    EXPECT_DOUBLE_EQ(seconds_left({2, 0, {}}, {6, 12, 18}), 0);
    EXPECT_DOUBLE_EQ(seconds_left({2, 0, {0, 24}}, {6, 12, 18}), 36);
}

}  // namespace
}  // namespace roundwright::app
