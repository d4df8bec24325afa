#include <gtest/gtest.h>
#include <memory>

#include <QApplication>
#include <QDir>
#include <QLineEdit>

#include "app/files/document_files.h"
#include "app/pieces/piece_edits.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/window/main_window.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

/// A program that is begun, ended and begun again, with the files between.
class StartingAgain : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        ASSERT_FALSE(save_document_file(pup, toy_of({6, 12, 18})));
        ASSERT_TRUE(QDir().mkpath(state));
    }
    void TearDown() override { window.reset(); }

    void start(const QString& path = {}) {
        window.reset();
        session = std::make_unique<DocumentSession>();
        window = std::make_unique<MainWindow>(*session, state);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        window->begin(path);
    }
    void end() { ASSERT_TRUE(window->close()); }
    /// The window goes without a word, and its lock with it.
    void crash() { window.reset(); }
    void type(const QString& text) {
        window->fast_entry().focus_line();
        QTest::keyClicks(window->fast_entry().line(), text);
    }
    [[nodiscard]] QString line() const { return window->fast_entry().line()->text(); }

    QTemporaryDir folder;
    QString state = folder.filePath(QStringLiteral("state"));
    QString pup = folder.filePath(QStringLiteral("pup.roundwright"));
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
};

TEST_F(StartingAgain, TheLastToyIsOpenAgainWithThePieceThatWasOnShow) {
    start(pup);
    PieceEdits(*session).add();
    ASSERT_TRUE(window->files().save());
    end();
    start();
    EXPECT_EQ(session->path(), pup);
    EXPECT_EQ(session->current_piece(), 1);
    EXPECT_FALSE(session->modified());
    EXPECT_TRUE(window->fast_entry().line()->hasFocus());
}

TEST_F(StartingAgain, AToyThatWasNeverSavedLeavesTheOneBeforeIt) {
    start(pup);
    end();
    start();
    session->start(empty_toy());
    end();
    start();
    EXPECT_EQ(session->path(), pup);
}

TEST_F(StartingAgain, AFileThatIsGoneBeginsANewToy) {
    start(pup);
    end();
    ASSERT_TRUE(QFile::remove(pup));
    start();
    EXPECT_TRUE(session->path().isEmpty());
    ASSERT_TRUE(session->piece());
    EXPECT_TRUE(session->piece()->rounds.empty());
}

TEST_F(StartingAgain, ASecondWindowBeginsANewToy) {
    start(pup);
    end();
    DocumentSession other;
    const Autosave running(other, state);
    start();
    EXPECT_TRUE(session->path().isEmpty());
}

TEST_F(StartingAgain, AFileThatIsAskedForComesBeforeTheLastOne) {
    start(pup);
    end();
    const QString fin = folder.filePath(QStringLiteral("fin.roundwright"));
    ASSERT_FALSE(save_document_file(fin, toy_of({8})));
    start(fin);
    EXPECT_EQ(session->path(), fin);
}

TEST_F(StartingAgain, WhatIsTypedAndNotEnteredIsThereAfterACrash) {
    start();
    type(QStringLiteral("6, 12, 18, 24x"));
    crash();
    answer_next_dialog(QStringLiteral("Bring it back"));
    start();
    EXPECT_EQ(line(), QStringLiteral("6, 12, 18, 24x"));
    QTest::keyClicks(window->fast_entry().line(), QStringLiteral("3"));
    QTest::keyClick(window->fast_entry().line(), Qt::Key_Return);
    EXPECT_EQ(counts_of(*session->piece()), (std::vector{6, 12, 18, 24, 24, 24}));
}

TEST_F(StartingAgain, WordsInACellComeBackWithTheKeyboardAndAreSaved) {
    start(pup);
    window->rounds_view().bring_back({QStringLiteral("sc 2, i"), 1, true});
    crash();
    answer_next_dialog(QStringLiteral("Bring it back"));
    start(pup);
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr) << "would keep the keyboard away from the cell";
    auto* cell = qobject_cast<QLineEdit*>(window->rounds_view().viewport()->focusWidget());
    ASSERT_TRUE(cell);
    EXPECT_EQ(cell->text(), QStringLiteral("sc 2, i"));
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    EXPECT_TRUE(cell->hasFocus());
    QTest::keyClick(cell, Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(load_document_file(pup).document.toy, session->toy());
    EXPECT_TRUE(std::holds_alternative<AsWritten>(session->piece()->rounds[1].working));
}

TEST_F(StartingAgain, WhatIsTypedForASavedToyComesBackWithTheToyAsItWasSaved) {
    start(pup);
    type(QStringLiteral("24, 30"));
    crash();
    answer_next_dialog(QStringLiteral("Bring it back"));
    start(pup);
    EXPECT_EQ(session->path(), pup);
    EXPECT_EQ(line(), QStringLiteral("24, 30"));
    EXPECT_FALSE(session->modified()) << "nothing of the toy itself was lost";
}

TEST_F(StartingAgain, WhatIsTypedComesBackWithChangesAndForItsPiece) {
    start(pup);
    PieceEdits(*session).add();
    type(QStringLiteral("8, 16"));
    crash();
    answer_next_dialog(QStringLiteral("Bring it back"));
    start();
    EXPECT_EQ(session->toy().pieces.size(), 2u);
    EXPECT_EQ(session->current_piece(), 1);
    EXPECT_EQ(line(), QStringLiteral("8, 16"));
    EXPECT_TRUE(session->modified());
}

TEST_F(StartingAgain, WhatWasEnteredIsNotBroughtBackTwice) {
    start(pup);
    type(QStringLiteral("24, 30"));
    window->autosave().keep_now();
    QTest::keyClick(window->fast_entry().line(), Qt::Key_Return);
    crash();
    answer_next_dialog(QStringLiteral("Bring it back"));
    start();
    EXPECT_EQ(counts_of(*session->piece()), (std::vector{6, 12, 18, 24, 30}));
    EXPECT_TRUE(line().isEmpty());
}

TEST_F(StartingAgain, AnEmptiedLineLeavesNothingToAskAbout) {
    start(pup);
    type(QStringLiteral("24, 30"));
    window->autosave().keep_now();
    window->fast_entry().line()->clear();
    crash();
    start(pup);  // would wait for an answer
    EXPECT_EQ(session->path(), pup);
}

TEST_F(StartingAgain, WhatIsTypedIsThereAfterACleanEndToo) {
    start(pup);
    type(QStringLiteral("24, 30"));
    end();
    start();
    EXPECT_EQ(session->path(), pup);
    EXPECT_EQ(line(), QStringLiteral("24, 30"));
    window->fast_entry().line()->clear();
    end();
    start();
    EXPECT_TRUE(line().isEmpty());
}

TEST_F(StartingAgain, WhatIsTypedIsThereWhenItsToyIsAskedForByName) {
    start(pup);
    type(QStringLiteral("24, 30"));
    end();
    start(pup);
    EXPECT_EQ(line(), QStringLiteral("24, 30"));
    end();
    const QString other = folder.filePath(QStringLiteral("other.roundwright"));
    ASSERT_TRUE(QFile::copy(pup, other));
    start(other);
    EXPECT_EQ(line(), QString());
}

TEST_F(StartingAgain, WhatWasEnteredAfterACleanEndIsNotBroughtBackTwice) {
    for (const QString& by : {pup, QString()}) {
        start(pup);
        type(QStringLiteral("24"));
        end();
        start(by);
        EXPECT_EQ(line(), QStringLiteral("24"));
        QTest::keyClick(window->fast_entry().line(), Qt::Key_Return);
        ASSERT_TRUE(window->files().save());
        crash();
        start(by);
        EXPECT_EQ(line(), QString());
        end();
    }
}

TEST_F(StartingAgain, WhatWasTypedIntoANewToyIsThereToo) {
    start();
    type(QStringLiteral("6, 12"));
    end();
    start();
    EXPECT_TRUE(session->path().isEmpty());
    EXPECT_EQ(line(), QStringLiteral("6, 12"));
}

TEST_F(StartingAgain, ACopyThatIsLeftForLaterIsAskedAboutOnce) {
    start(pup);
    PieceEdits(*session).add();
    crash();
    int asked = 0;
    QTimer answers;
    QObject::connect(&answers, &QTimer::timeout, [&asked] {
        auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        if (dialog == nullptr) return;
        ++asked;
        dialog->reject();
    });
    answers.start(5);
    QSettings().setValue(QStringLiteral("last-toy/path"), pup);
    start();
    EXPECT_EQ(asked, 1);
    EXPECT_TRUE(session->path().isEmpty());
}

}  // namespace
}  // namespace roundwright::app
