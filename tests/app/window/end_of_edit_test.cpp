// What is typed reaches the toy, once and in its own cell, however the typing ends.

#include <gtest/gtest.h>

#include <QDirIterator>
#include <QPointer>

#include "app/window/whole_toy.h"
#include "core/rounds/piece_graph.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

enum class Ending {
    enter,
    tab,
    backtab,
    up,
    down,
    click,
    save,
    other_tab,
    next_piece,
    other_window,
    close,
    undo
};

struct EndName {
    Ending end;
    const char* name;
};
constexpr EndName ends[] = {{Ending::enter, "Enter"},
                            {Ending::tab, "Tab"},
                            {Ending::backtab, "ShiftTab"},
                            {Ending::up, "Up"},
                            {Ending::down, "Down"},
                            {Ending::click, "AClickElsewhere"},
                            {Ending::save, "CtrlS"},
                            {Ending::other_tab, "TheTabOfAnotherPiece"},
                            {Ending::next_piece, "TheKeyForTheNextPiece"},
                            {Ending::other_window, "AnotherWindow"},
                            {Ending::close, "ClosingTheWindow"},
                            {Ending::undo, "UndoFromTheMenu"}};

/// How the edit ends, and whether the shape had time to follow what was typed.
using Case = std::tuple<EndName, bool>;

class EndOfEdit : public ::testing::TestWithParam<Case> {
  protected:
    void end() {
        if (std::get<1>(GetParam())) {
            ASSERT_TRUE(wait_for_shape(maker.session));
        }
        do_end();
        QCoreApplication::processEvents();
    }
    void do_end() {
        const Ending how = std::get<0>(GetParam()).end;
        if (how != Ending::enter) maker.put_popup_away();
        switch (how) {
            case Ending::enter:
                return maker.press(Qt::Key_Return);
            case Ending::tab:
                return maker.press(Qt::Key_Tab);
            case Ending::backtab:
                return maker.press(Qt::Key_Backtab, Qt::ShiftModifier);
            case Ending::up:
                return maker.press(Qt::Key_Up);
            case Ending::down:
                return maker.press(Qt::Key_Down);
            case Ending::click:
                return maker.click_cell(1);
            case Ending::save:
                return maker.press(Qt::Key_S, Qt::ControlModifier);
            case Ending::other_tab:
                return maker.click_tab(1);
            case Ending::next_piece:
                return maker.press(Qt::Key_PageDown, Qt::ControlModifier);
            case Ending::other_window:
                return maker.glance_at_another_window();
            case Ending::close:
                return maker.nearly_close();
            case Ending::undo:
                maker.choose(QStringLiteral("Edit"), QStringLiteral("Undo"));
                EXPECT_EQ(write_document(maker.session.toy()), before) << "undone";
                return maker.choose(QStringLiteral("Edit"), QStringLiteral("Redo"));
        }
    }
    [[nodiscard]] const Piece& head() const { return maker.session.toy().pieces.front(); }
    [[nodiscard]] const Round& round(std::size_t at) const { return head().rounds[at]; }
    void expect_one_step() {
        EXPECT_EQ(maker.session.undo_stack().count(), 1);
        maker.session.undo_stack().undo();
        EXPECT_EQ(write_document(maker.session.toy()), before);
    }

    MakerAtTheWindow maker{toy_to_type_into()};
    std::string before = write_document(maker.session.toy());
};

TEST_P(EndOfEdit, KeepsWordsThatComeRight) {
    maker.begin_words(8);
    maker.type(QStringLiteral("[dec, sc 6] x 6"));
    end();
    ASSERT_TRUE(std::holds_alternative<AsWritten>(round(8).working));
    EXPECT_EQ(std::get<AsWritten>(round(8).working).words, "[dec, sc 6] x 6");
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsAnotherStitch) {
    maker.session.edit_piece(QStringLiteral("Even"),
                             [](Piece& piece) { piece.rounds[5].working = WorkedEvenly{30}; });
    maker.session.undo_stack().clear();
    before = write_document(maker.session.toy());
    maker.begin_words(5);
    maker.type(QStringLiteral("hdc in each st around"));
    end();
    ASSERT_TRUE(std::holds_alternative<WorkedEvenly>(round(5).working));
    EXPECT_EQ(std::get<WorkedEvenly>(round(5).working).kind, StitchKind::half_double_crochet);
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsWordsThatDoNotComeOut) {
    maker.begin_words(8);
    maker.type(QStringLiteral("sc 5, dec 3"));
    end();
    ASSERT_TRUE(std::holds_alternative<AsWritten>(round(8).working));
    EXPECT_EQ(std::get<AsWritten>(round(8).working).words, "sc 5, dec 3");
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsACount) {
    maker.click_cell(8);
    maker.type(QStringLiteral("40"));
    end();
    EXPECT_EQ(counts_of(head())[8], 40);
    EXPECT_EQ(head().rounds.size(), 12u);
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsAChange) {
    maker.click_cell(8);
    maker.type(QStringLiteral("+2"));
    end();
    EXPECT_EQ(counts_of(head())[8], 50);
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsACountOfTheNextRound) {
    maker.click_cell(12);
    maker.type(QStringLiteral("18"));
    end();
    ASSERT_EQ(head().rounds.size(), 13u);
    EXPECT_EQ(counts_of(head())[12], 18);
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsWordsOfTheNextRound) {
    maker.begin_words(12);
    maker.type(QStringLiteral("[dec, sc 2] x 6"));
    end();
    ASSERT_EQ(head().rounds.size(), 13u);
    ASSERT_TRUE(std::holds_alternative<AsWritten>(round(12).working));
    EXPECT_EQ(std::get<AsWritten>(round(12).working).words, "[dec, sc 2] x 6");
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsACountOfSeveralRounds) {
    maker.click_cell(8);
    maker.press(Qt::Key_Down, Qt::ShiftModifier);
    maker.press(Qt::Key_Down, Qt::ShiftModifier);
    maker.type(QStringLiteral("44"));
    end();
    EXPECT_EQ(counts_of(head()), (std::vector{6, 12, 18, 24, 30, 36, 42, 48, 44, 44, 44, 24}));
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsTheNameOfAYarn) {
    const Ending how = std::get<0>(GetParam()).end;
    if (how == Ending::up || how == Ending::down) GTEST_SKIP() << "they mean nothing to a name";
    maker.begin_yarn_name(1);
    maker.type(QStringLiteral("Deep sea"));
    end();
    EXPECT_EQ(maker.session.toy().yarns[1].name, "Deep sea");
    expect_one_step();
}

TEST_P(EndOfEdit, KeepsAFieldOfAPanel) {
    const Ending how = std::get<0>(GetParam()).end;
    if (how == Ending::up || how == Ending::down) GTEST_SKIP() << "these step a field";
    maker.begin_make();
    maker.type(QStringLiteral("12"));
    end();
    EXPECT_EQ(head().make, 12);
    EXPECT_EQ(maker.session.toy().pieces[1].make, 1);
    expect_one_step();
}

INSTANTIATE_TEST_SUITE_P(EveryWay, EndOfEdit,
                         ::testing::Combine(::testing::ValuesIn(ends), ::testing::Bool()),
                         [](const auto& each) {
                             return std::string(std::get<0>(each.param).name) +
                                    (std::get<1>(each.param) ? "OnceTheShapeFollowed" : "AtOnce");
                         });

// --- where the cursor goes

class TypingTest : public ::testing::Test {
  protected:
    MakerAtTheWindow maker{toy_to_type_into()};
    [[nodiscard]] int row() { return maker.table().currentIndex().row(); }
    [[nodiscard]] bool is_kept(const QString& words) const {
        for (QDirIterator each(maker.folder.path(), QDir::Files | QDir::Hidden, QDirIterator::Subdirectories);
             each.hasNext();) {
            QFile file(each.next());
            if (file.open(QIODevice::ReadOnly) && file.readAll().contains(words.toUtf8())) return true;
        }
        return false;
    }
};

TEST_F(TypingTest, KeysThatWaitGoToTheCellsTheyWereTypedFor) {
    maker.click_cell(12);
    for (const char* count : {"18", "24", "+6", "=", "18"}) {
        maker.type(QString::fromLatin1(count));
        maker.press(Qt::Key_Return);
    }
    EXPECT_EQ(maker.counts(),
              (std::vector{6, 12, 18, 24, 30, 36, 42, 48, 42, 36, 30, 24, 18, 24, 30, 30, 18}));
    maker.click_cell(2);
    for (const char* count : {"17", "23", "29"}) {
        maker.type(QString::fromLatin1(count));
        maker.press(Qt::Key_Enter, Qt::KeypadModifier);
    }
    maker.type(QStringLiteral("35"));
    maker.press(Qt::Key_Down);
    maker.type(QStringLiteral("41"));
    maker.press(Qt::Key_Up);
    maker.type(QStringLiteral("36"));
    maker.press(Qt::Key_Return);
    EXPECT_EQ(maker.counts(),
              (std::vector{6, 12, 17, 23, 29, 36, 41, 48, 42, 36, 30, 24, 18, 24, 30, 30, 18}));
}

TEST_F(TypingTest, KeysThatWaitGoToTheWordsTheyWereTypedFor) {
    maker.click_cell(12);
    maker.type(QStringLiteral("18"));
    maker.press(Qt::Key_Tab);
    maker.press(Qt::Key_A, Qt::ControlModifier);
    maker.type(QStringLiteral("[dec, sc 2] x 6"));
    maker.press(Qt::Key_Return);
    maker.type(QStringLiteral("sc 3, dec 2"));
    maker.press(Qt::Key_Return);
    maker.type(QStringLiteral("12"));
    maker.press(Qt::Key_Return);
    ASSERT_EQ(maker.session.piece()->rounds.size(), 15u);
    EXPECT_EQ(maker.words(12), "[dec, sc 2] x 6");
    EXPECT_EQ(maker.words(13), "sc 3, dec 2");
    EXPECT_EQ(maker.counts()[14], 12);
}

TEST_F(TypingTest, NamesOfYarnsTakeNothingTypedAfterEnter) {
    maker.press(Qt::Key_1, Qt::AltModifier);
    auto* panel = maker.window->findChild<YarnPanel*>();
    for (auto* button : panel->findChildren<QAbstractButton*>())
        if (button->text() == QStringLiteral("Add &yarn")) maker.click(button);
    maker.type(QStringLiteral("Kelp"));
    maker.press(Qt::Key_Return);
    maker.type(QStringLiteral("xy"));
    QCoreApplication::processEvents();
    EXPECT_EQ(maker.session.toy().yarns.back().name, "Kelp");
}

TEST_F(TypingTest, TheCursorStaysWhereTheEditWasUntilItIsMoved) {
    maker.click_cell(12);
    maker.type(QStringLiteral("18"));
    maker.press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(row(), 12);
    EXPECT_EQ(maker.session.selection(), std::vector{12});
    EXPECT_TRUE(maker.table().hasFocus());
    maker.press(Qt::Key_Return);
    maker.type(QStringLiteral("12"));
    maker.press(Qt::Key_Return);
    EXPECT_EQ(maker.counts()[13], 12);
    EXPECT_EQ(row(), 14);
}

TEST_F(TypingTest, SavingSavesWhatIsBeingTyped) {
    maker.click_cell(8);
    maker.type(QStringLiteral("40"));
    maker.press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(counts_of(load_document_file(maker.file()).document.toy.pieces.front())[8], 40);
    EXPECT_FALSE(maker.session.modified());
}

TEST_F(TypingTest, EscapeTakesBackWhatWasTyped) {
    const std::string before = write_document(maker.session.toy());
    maker.click_cell(8);
    maker.type(QStringLiteral("40"));
    maker.press(Qt::Key_Escape);
    maker.begin_words(8);
    maker.type(QStringLiteral("[dec, sc 6] x 6"));
    ASSERT_TRUE(wait_for_shape(maker.session));
    maker.put_popup_away();
    maker.press(Qt::Key_Escape);
    EXPECT_EQ(write_document(maker.session.toy()), before);
    EXPECT_EQ(maker.session.undo_stack().count(), 0);
}

TEST_F(TypingTest, ACommandComesAfterWhatIsBeingTypedAndHoldsNoPreview) {
    maker.click_cell(8);
    maker.type(QStringLiteral("40"));
    ASSERT_TRUE(wait_for_shape(maker.session));
    maker.press(Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(maker.counts(), (std::vector{6, 12, 18, 24, 30, 36, 42, 48, 40, 40, 36, 30, 24}));
    EXPECT_EQ(maker.session.undo_stack().count(), 2);
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(maker.counts()[8], 40) << "the count is a step of its own";
}

TEST_F(TypingTest, ARoundChosenElsewhereTakesNothingOfTheEdit) {
    maker.click_cell(8);
    maker.type(QStringLiteral("40"));
    maker.session.select_rounds({2});
    EXPECT_EQ(row(), 2);
    EXPECT_EQ(maker.counts(), (std::vector{6, 12, 18, 24, 30, 36, 42, 48, 40, 36, 30, 24}));
}

TEST_F(TypingTest, WordsAreOfferedAsTheyAreNowNotAsTheyWere) {
    maker.click_cell(8);
    maker.type(QStringLiteral("36"));
    maker.press(Qt::Key_Tab);
    auto* words = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_TRUE(words);
    YarnTable yarns;
    const auto cell = read_cell(*maker.session.piece(), 8, words->text().toStdString(), Terms::us, yarns);
    EXPECT_EQ(cell.reading.stitches, 36) << words->text().toStdString();
}

// A message pops up over the window for a moment, or the maker looks at a video and comes back.
TEST_F(TypingTest, WhoLookedAtAnotherProgramTypesOn) {
    const auto look_away_and_back = [&] {
        QApplication::setActiveWindow(nullptr);
        QApplication::setActiveWindow(maker.window.get());
    };
    maker.begin_words(8);
    maker.type(QStringLiteral("[dec, sc"));
    look_away_and_back();
    maker.type(QStringLiteral(" 6] x 6"));
    maker.press(Qt::Key_Return);
    EXPECT_EQ(maker.words(8), "[dec, sc 6] x 6");
    EXPECT_EQ(maker.session.undo_stack().count(), 1);
    maker.click_cell(4);
    maker.type(QStringLiteral("3"));
    look_away_and_back();
    maker.type(QStringLiteral("4"));
    maker.press(Qt::Key_Return);
    EXPECT_EQ(maker.counts()[4], 34);
    EXPECT_EQ(maker.session.undo_stack().count(), 2);
}

TEST_F(TypingTest, WhatIsBeingTypedIsSaidWhereAnotherProgramHasTheKeyboard) {
    maker.click_cell(4);
    maker.type(QStringLiteral("34"));
    QApplication::setActiveWindow(nullptr);
    maker.nearly_close();
    EXPECT_EQ(maker.counts()[4], 34);
}

TEST_F(TypingTest, SavingKeepsTheCursor) {
    maker.click_cell(4);
    maker.press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(row(), 4);
    EXPECT_EQ(maker.table().currentIndex().column(), static_cast<int>(RoundColumn::stitches));
}

TEST_F(TypingTest, UndoIsTheToysWhereTheLineHasNothingToTakeBack) {
    maker.window->fast_entry().focus_line();
    maker.type(QStringLiteral("18, 12"));
    maker.press(Qt::Key_Return);
    ASSERT_EQ(maker.session.piece()->rounds.size(), 14u);
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(maker.session.piece()->rounds.size(), 12u);
    maker.press(Qt::Key_Escape);
    maker.type(QStringLiteral("18"));
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(maker.session.piece()->rounds.size(), 12u) << "the line's own typing comes first";
}

TEST_F(TypingTest, AFieldThatIsLeftUntouchedChangesNothing) {
    maker.session.edit_piece(QStringLiteral("Eye"), [](Piece& piece) {
        Feature eye;
        eye.kind = FeatureKind::felt_disc;
        eye.round = 5;
        eye.width_mm = 8.88888;
        eye.height_mm = 8.88888;
        piece.features.push_back(eye);
    });
    maker.session.undo_stack().clear();
    const std::string before = write_document(maker.session.toy());
    maker.press(Qt::Key_4, Qt::AltModifier);
    for (int field = 0; field < 30; ++field) maker.press(Qt::Key_Tab);
    EXPECT_EQ(maker.session.undo_stack().count(), 0);
    EXPECT_EQ(write_document(maker.session.toy()), before);
}

// --- where the keyboard is

TEST_F(TypingTest, AWindowThatGoesTakesAnOpenEditBackWhileItIsWhole) {
    const std::string before = write_document(maker.session.toy());
    const QString words = QStringLiteral("[sc, inc] x 5, inc, sc");
    maker.begin_words(2);
    maker.type(words);
    ASSERT_NE(write_document(maker.session.toy()), before) << "nothing is shown of what is being typed";
    const QPointer<WholeToy> part = &maker.window->whole_toy();
    int told = 0;
    QObject::connect(&maker.session, &DocumentSession::toy_changed, &maker.session, [&] {
        ++told;
        EXPECT_FALSE(part.isNull()) << "parts of the window are told of a change when others are gone";
    });
    maker.window.reset();
    EXPECT_EQ(told, 1);
    EXPECT_EQ(write_document(maker.session.toy()), before);
    EXPECT_TRUE(is_kept(words)) << "what was being typed is lost";
}

TEST_F(TypingTest, TheMenuBarGivesTheKeyboardBackToTheTable) {
    maker.click_cell(8);
    maker.type(QStringLiteral("40"));
    maker.press(Qt::Key_Alt);
    EXPECT_EQ(maker.counts()[8], 40);
    maker.press(Qt::Key_Escape);
    ASSERT_TRUE(maker.table().hasFocus());
    maker.press(Qt::Key_Down);
    maker.type(QStringLiteral("34"));
    maker.press(Qt::Key_Return);
    EXPECT_EQ(maker.counts()[9], 34);
}

TEST_F(TypingTest, ANewPieceWaitsForItsRoundsInTheEntryLine) {
    maker.press(Qt::Key_4, Qt::AltModifier);
    maker.press(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(maker.window->fast_entry().line()->hasFocus());
    maker.type(QStringLiteral("6, 12"));
    maker.press(Qt::Key_Return);
    EXPECT_EQ(maker.counts(), (std::vector{6, 12}));
}

TEST_F(TypingTest, AboutThisToyBeginsInTheTitle) {
    ASSERT_TRUE(maker.through_a_dialog(Qt::Key_Return, Qt::AltModifier, [&](QDialog& dialog) {
        maker.press(Qt::Key_A, Qt::ControlModifier);
        maker.type(QStringLiteral("Puffling"));
        maker.press(Qt::Key_Tab);
        maker.type(QStringLiteral("Harbour workshop"));
        dialog.accept();
    }));
    EXPECT_EQ(maker.session.toy().title, "Puffling");
    EXPECT_EQ(maker.session.toy().designer, "Harbour workshop");
}

TEST_F(TypingTest, NotesAndNamesAreSaidOverWhatIsBeingTyped) {
    maker.click_cell(8);
    maker.type(QStringLiteral("40"));
    ASSERT_TRUE(wait_for_shape(maker.session));
    ASSERT_TRUE(maker.through_a_dialog(Qt::Key_M, Qt::ControlModifier, [&](QDialog& dialog) {
        maker.type(QStringLiteral("turn here"));
        dialog.accept();
    }));
    EXPECT_EQ(maker.round(8).note, "turn here");
    EXPECT_EQ(maker.counts()[8], 40);
    maker.click_cell(9);
    maker.type(QStringLiteral("30"));
    ASSERT_TRUE(maker.through_a_dialog(Qt::Key_F2, Qt::ShiftModifier, [&](QDialog&) {
        maker.press(Qt::Key_A, Qt::ControlModifier);
        maker.type(QStringLiteral("Snout"));
        maker.press(Qt::Key_Return);
    }));
    EXPECT_EQ(maker.session.piece()->name, "Snout");
    EXPECT_EQ(maker.counts()[9], 30);
    EXPECT_EQ(maker.session.undo_stack().count(), 4);
}

}  // namespace
}  // namespace roundwright::app
