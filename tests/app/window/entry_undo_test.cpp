// Enter was pressed too early: Ctrl+Z in the line of next rounds takes the rounds back and gives the words
// back.

#include <gtest/gtest.h>

#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

class EntryUndo : public ::testing::Test {
  protected:
    EntryUndo() { maker.window->fast_entry().focus_line(); }

    void enter(const char* words) {
        maker.type(QString::fromLatin1(words));
        maker.press(Qt::Key_Return);
    }
    void undo() { maker.press(Qt::Key_Z, Qt::ControlModifier); }
    void redo() { maker.press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier); }
    void redo_by_y() { maker.press(Qt::Key_Y, Qt::ControlModifier); }
    [[nodiscard]] std::string line() const { return maker.window->fast_entry().line()->text().toStdString(); }
    [[nodiscard]] std::vector<int> counts() const { return maker.counts(); }

    MakerAtTheWindow maker{toy_of({6, 12})};
};

TEST_F(EntryUndo, TakesTheRoundsBackAndGivesTheWordsBackToBePutRight) {
    enter("18, 24, 3");
    ASSERT_EQ(counts(), (std::vector{6, 12, 18, 24, 3}));
    ASSERT_EQ(line(), "");
    undo();
    EXPECT_EQ(counts(), (std::vector{6, 12}));
    EXPECT_EQ(line(), "18, 24, 3");
    maker.press(Qt::Key_End);
    enter("0");
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24, 30}));
    EXPECT_EQ(line(), "");
}

TEST_F(EntryUndo, TypingTakesThePlaceOfTheWordsThatCameBack) {
    enter("18");
    undo();
    ASSERT_EQ(line(), "18");
    enter("15");
    EXPECT_EQ(counts(), (std::vector{6, 12, 15}));
}

TEST_F(EntryUndo, GoesBackEntryByEntryAndForwardAgain) {
    enter("18");
    enter("24, 30");
    enter("36");
    undo();
    EXPECT_EQ(line(), "36");
    undo();
    EXPECT_EQ(line(), "24, 30");
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
    undo();
    EXPECT_EQ(line(), "18");
    EXPECT_EQ(counts(), (std::vector{6, 12}));
    redo();
    EXPECT_EQ(line(), "24, 30");
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
    redo_by_y();
    EXPECT_EQ(line(), "36");
    redo_by_y();
    EXPECT_EQ(line(), "");
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24, 30, 36}));
}

TEST_F(EntryUndo, ItsOwnTypingComesFirstByEveryKey) {
    enter("18");
    maker.type(QStringLiteral("24"));
    undo();
    EXPECT_EQ(line(), "");
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
    redo();
    EXPECT_EQ(line(), "24");
    undo();
    redo_by_y();
    EXPECT_EQ(line(), "24");
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
}

TEST_F(EntryUndo, AnEmptiedLineIsEmpty) {
    enter("18");
    maker.type(QStringLiteral("24"));
    maker.press(Qt::Key_Backspace);
    maker.press(Qt::Key_Backspace);
    undo();
    EXPECT_EQ(counts(), (std::vector{6, 12})) << "and not the typing that was deleted";
    EXPECT_EQ(line(), "18");
}

TEST_F(EntryUndo, WhatWasTypedSinceStays) {
    enter("18");
    undo();
    maker.press(Qt::Key_End);
    maker.type(QStringLiteral("0"));
    maker.choose(QStringLiteral("Edit"), QStringLiteral("Redo"));
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
    EXPECT_EQ(line(), "180");
}

TEST_F(EntryUndo, AnotherStepGivesNoWordsBack) {
    enter("18");
    undo();
    maker.press(Qt::Key_Escape);
    maker.click_cell(0);
    maker.type(QStringLiteral("7"));
    maker.press(Qt::Key_Return);
    ASSERT_EQ(counts(), (std::vector{7, 12}));
    maker.window->fast_entry().focus_line();
    undo();
    EXPECT_EQ(counts(), (std::vector{6, 12}));
    EXPECT_EQ(line(), "") << "the step in its place was made elsewhere";
}

TEST_F(EntryUndo, NoWordsComeIntoALineThatHasNotTheKeyboard) {
    enter("18");
    maker.click_cell(0);
    maker.press(Qt::Key_Escape);
    undo();
    EXPECT_EQ(counts(), (std::vector{6, 12}));
    EXPECT_EQ(line(), "");
}

TEST_F(EntryUndo, AnotherToyForgetsThem) {
    enter("18");
    undo();
    maker.session.start(toy_of({8}));
    maker.window->fast_entry().focus_line();
    maker.press(Qt::Key_Escape);
    undo();
    redo();
    EXPECT_EQ(counts(), std::vector{8});
    EXPECT_EQ(line(), "");
}

TEST_F(EntryUndo, WhatEnterMadeOfANumberIsTheToys) {
    maker.begin_make();
    maker.type(QStringLiteral("4"));
    maker.press(Qt::Key_Return);
    ASSERT_EQ(maker.session.piece()->make, 4);
    undo();
    EXPECT_EQ(maker.session.piece()->make, 1);
    redo_by_y();
    EXPECT_EQ(maker.session.piece()->make, 4);
}

}  // namespace
}  // namespace roundwright::app
