#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <memory>

#include <QDir>
#include <QTemporaryDir>

#include "app/versions/versions_dialog.h"
#include "app/window/main_window.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

/// Earlier versions in the whole window, by the keyboard.
class EarlierVersionsInTheWindow : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        ASSERT_FALSE(save_document_file(pup, toy_of({6, 12, 18})));
        start();
    }
    void TearDown() override { window.reset(); }

    void start() {
        window.reset();
        session = std::make_unique<DocumentSession>();
        window = std::make_unique<MainWindow>(*session, folder.filePath(QStringLiteral("state")));
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        window->begin(pup);
    }
    void add_round(int stitches) {
        session->edit_piece(QStringLiteral("Add a round"), [&](Piece& piece) {
            piece.rounds.push_back({WorkedEvenly{stitches}, 0, false, ""});
        });
    }
    static QWidget* focus(QWidget* fallback) {
        return QApplication::focusWidget() != nullptr ? QApplication::focusWidget() : fallback;
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers) {
        QTest::keyClick(focus(window.get()), key, modifiers);
        QCoreApplication::processEvents();
    }
    /// Windows drawn in memory do not get the keyboard back when a dialog closes.
    void come_back() {
        ASSERT_TRUE(wait_until([&] {
            window->activateWindow();
            return QApplication::activeWindow() == window.get() &&
                   window->findChild<VersionsDialog*>() == nullptr;
        }));
    }
    VersionsDialog* open_dialog() {
        press(Qt::Key_H, Qt::ControlModifier | Qt::ShiftModifier);
        auto* dialog = window->findChild<VersionsDialog*>();
        EXPECT_NE(dialog, nullptr);
        if (dialog != nullptr) {
            EXPECT_TRUE(wait_until([&] { return !dialog->busy(); }));
        }
        return dialog;
    }

    QTemporaryDir folder;
    const QString pup = folder.filePath(QStringLiteral("pup.roundwright"));
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
};

TEST_F(EarlierVersionsInTheWindow, SavedTakenBackAndUndoneByKeys) {
    add_round(24);
    press(Qt::Key_S, Qt::ControlModifier);
    ASSERT_FALSE(session->modified());
    auto* dialog = open_dialog();
    ASSERT_NE(dialog, nullptr);
    ASSERT_EQ(dialog->model().rowCount(), 2);
    QTest::keyClick(dialog->focusWidget(), Qt::Key_Down);
    ASSERT_TRUE(wait_until([&] { return !dialog->busy(); }));
    EXPECT_EQ(dialog->changes(), QStringLiteral("Head: round 4 is new (24)"));
    QTest::keyClick(dialog->focusWidget(), Qt::Key_Return);
    EXPECT_THAT(counts_of(*session->piece()), ElementsAre(6, 12, 18));
    come_back();
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_THAT(counts_of(*session->piece()), ElementsAre(6, 12, 18, 24));
}

TEST_F(EarlierVersionsInTheWindow, WhatIsGivenUpIsFoundThereTheNextTime) {
    add_round(24);
    QString asked;
    answer_next_dialog(QStringLiteral("Don’t save"), &asked);
    ASSERT_TRUE(window->close());
    EXPECT_THAT(asked.toStdString(), HasSubstr("stay among the earlier versions"));
    start();
    EXPECT_THAT(counts_of(*session->piece()), ElementsAre(6, 12, 18));
    auto* dialog = open_dialog();
    ASSERT_NE(dialog, nullptr);
    ASSERT_EQ(dialog->model().rowCount(), 2);
    EXPECT_EQ(dialog->model().index(0, 1).data().toString(), QStringLiteral("not saved"));
    QTest::keyClick(dialog->focusWidget(), Qt::Key_Return);
    EXPECT_THAT(counts_of(*session->piece()), ElementsAre(6, 12, 18, 24));
}

TEST_F(EarlierVersionsInTheWindow, EscapeChangesNothing) {
    add_round(24);
    press(Qt::Key_S, Qt::ControlModifier);
    auto* dialog = open_dialog();
    ASSERT_NE(dialog, nullptr);
    QTest::keyClick(dialog->focusWidget(), Qt::Key_Down);
    QTest::keyClick(dialog->focusWidget(), Qt::Key_Escape);
    QCoreApplication::processEvents();
    EXPECT_FALSE(session->modified());
    EXPECT_THAT(counts_of(*session->piece()), ElementsAre(6, 12, 18, 24));
}

/// Pictures to look at, of a toy with some history.
TEST_F(EarlierVersionsInTheWindow, IsDrawnLightAndDark) {
    const auto sample =
        load_document_file(QStringLiteral(ROUNDWRIGHT_SOURCE "/samples/seal-pup.roundwright"));
    ASSERT_FALSE(sample.problem);
    session->edit(QStringLiteral("The sample"), sample.document.toy);
    press(Qt::Key_S, Qt::ControlModifier);
    session->edit(QStringLiteral("Other rounds"), [](Toy toy) {
        auto& rounds = toy.pieces[0].rounds;
        for (std::size_t i = 4; i + 4 < rounds.size(); ++i) rounds[i].working = WorkedEvenly{30};
        rounds.insert(rounds.begin() + 3, Round{WorkedEvenly{21}, 0, false, "a round more"});
        rounds.back().note = "stuff it now";
        toy.pieces.push_back(piece_of({6, 9, 9, 12}, "Left ear"));
        toy.hook_mm = 3;
        return toy;
    });
    press(Qt::Key_S, Qt::ControlModifier);
    ASSERT_TRUE(QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS)));
    for (const auto& [name, look] :
         {std::pair{"light", Appearance::light}, std::pair{"dark", Appearance::dark}}) {
        session->preferences().set_appearance(look);
        auto* dialog = open_dialog();
        ASSERT_NE(dialog, nullptr);
        QTest::keyClick(dialog->focusWidget(), Qt::Key_Down);
        ASSERT_TRUE(wait_until([&] { return !dialog->busy(); }));
        for (const QSize& size : {QSize(1040, 620), QSize(980, 600)}) {
            dialog->resize(size);
            QTest::qWait(20);
            EXPECT_EQ(dialog->size(), size);
            EXPECT_TRUE(dialog->grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/versions-%1-%2.png")
                                                .arg(QLatin1String(name))
                                                .arg(size.width())));
        }
        QTest::keyClick(dialog->focusWidget(), Qt::Key_Escape);
        come_back();
    }
    session->preferences().set_appearance(Appearance::system);
}

}  // namespace
}  // namespace roundwright::app
