#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QKeyEvent>
#include <QWindow>

#include "app/checks/checks_list.h"
#include "app/rounds/words_edit.h"
#include "tests/app/listener.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

class HeardTest : public ::testing::Test {
  protected:
    void SetUp() override {
        if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
    }
    void settle() { ASSERT_TRUE(wait_for_shape(maker.session)); }
    [[nodiscard]] std::string phantoms() const {
        return listener.phantoms().join(QStringLiteral("; ")).toStdString();
    }

    Listener listener;
    MakerAtTheWindow maker{toy_of({6, 12, 18, 40, 40, 84, 84})};
};

TEST_F(HeardTest, ARecheckTakesTheFocusNowhere) {
    maker.press(Qt::Key_F8);  // a check is current from now on
    maker.click_cell(1);
    const int before = listener.focus_events();
    for (const auto* count : {"14", "15", "12"}) {
        maker.click_cell(1);
        maker.type(QLatin1String(count));
        settle();
        maker.press(Qt::Key_Return);
        settle();
    }
    EXPECT_GT(listener.focus_events(), before) << "nothing was heard at all";
    EXPECT_EQ(phantoms(), "");
}

TEST_F(HeardTest, TheWordsOfferedTakeTheFocusNowhere) {
    maker.begin_words(2);
    maker.type(QStringLiteral("[s"));
    auto* words = maker.table().findChild<WordsEdit*>();
    ASSERT_NE(words, nullptr);
    ASSERT_TRUE(words->popup()->isVisible());
    EXPECT_EQ(phantoms(), "");
    maker.put_popup_away();
    maker.press(Qt::Key_Escape);
}

TEST_F(HeardTest, TheChecksTellTheirCurrentOneWhileTheyHaveTheKeyboard) {
    maker.window->checks().view()->setFocus();
    const int before = listener.focus_events();
    maker.press(Qt::Key_Down);
    maker.press(Qt::Key_Down);
    EXPECT_GE(listener.focus_events(), before + 2);
    EXPECT_EQ(phantoms(), "");
}

/// As Qt's bridge does once a screen reader has seen the keys.
TEST_F(HeardTest, AShortcutWithAltOpensNoMenu) {
    maker.click_cell(1);
    const QWidget* table = QApplication::focusWidget();
    QWindow* window = maker.window->windowHandle();
    for (const auto type : {QEvent::KeyPress, QEvent::KeyRelease})
        QCoreApplication::postEvent(window, new QKeyEvent(type, Qt::Key_Alt, Qt::NoModifier));
    QTest::qWait(50);
    EXPECT_EQ(QApplication::focusWidget(), table);
}

class NewsTest : public HeardTest {
  protected:
    void SetUp() override {
        HeardTest::SetUp();
        if (IsSkipped()) return;
        maker.session.start(toy_of({6, 12, 18, 18, 18, 18}));
        (void)said();
    }
    /// What was said until the hand has rested.
    [[nodiscard]] QStringList said() {
        EXPECT_TRUE(wait_for_shape(maker.session));
        QTest::qWait(900);
        return listener.take_said();
    }
    [[nodiscard]] std::string said_in_one() { return said().join(QStringLiteral(" | ")).toStdString(); }
};

TEST_F(NewsTest, ACountIsSaidOnceWithWhatItMakesOfTheShape) {
    maker.click_cell(3);
    (void)said();
    maker.type(QStringLiteral("24x4"));
    const QString heard = said().join(u' ');
    EXPECT_TRUE(heard.startsWith(QStringLiteral("Rounds 4 to 7: 24, 24, 24, 24."))) << heard.toStdString();
    EXPECT_EQ(heard.count(QStringLiteral("mm wide")), 1) << heard.toStdString();
    maker.press(Qt::Key_Return);
    EXPECT_FALSE(said_in_one().starts_with("Rounds 4")) << "it was said while it was typed";
    EXPECT_EQ(phantoms(), "");
}

TEST_F(NewsTest, TypingFastIsNotTalkedOver) {
    maker.window->fast_entry().focus_line();
    (void)said();
    for (const QChar letter : QStringLiteral("6, 12, 18, 24")) {
        maker.type(letter);
        QTest::qWait(60);
    }
    EXPECT_EQ(listener.take_said(), QStringList());
    EXPECT_TRUE(said_in_one().starts_with("Rounds 7 to 10: 6, 12, 18, 24"));
    maker.press(Qt::Key_Return);
    EXPECT_TRUE(said_in_one().starts_with("Added: "));
    EXPECT_EQ(phantoms(), "");
}

TEST_F(NewsTest, AnEntryTypedInOneGoIsSaidToBeAdded) {
    maker.window->fast_entry().focus_line();
    (void)said();
    maker.type(QStringLiteral("24x2"));
    maker.press(Qt::Key_Return);
    const std::string heard = said_in_one();
    EXPECT_TRUE(heard.starts_with("Added: Rounds 7 to 8: 2 rounds of 24.")) << heard;
    EXPECT_EQ(heard.find("Round 7:"), std::string::npos) << "said twice: " << heard;
}

TEST_F(NewsTest, WhatWasOnlyTypedIsNotSaidToBeRemoved) {
    maker.window->fast_entry().focus_line();
    maker.type(QStringLiteral("24x2"));
    (void)said();
    maker.press(Qt::Key_Escape);
    EXPECT_EQ(said_in_one().find("removed"), std::string::npos);
    maker.type(QStringLiteral("24x2"));
    (void)said();
    maker.press(Qt::Key_8, Qt::AltModifier);
    EXPECT_EQ(said_in_one().find("removed"), std::string::npos);
}

TEST_F(NewsTest, WordsAreSaidOnceTheHandRests) {
    maker.begin_words(2);
    (void)said();
    for (const QChar letter : QStringLiteral("[sc 2, inc] x 6")) {
        maker.type(letter);
        QTest::qWait(60);
    }
    EXPECT_EQ(listener.take_said(), QStringList());
    const std::string heard = said_in_one();
    EXPECT_TRUE(heard.starts_with("There are 12 stitches below and the words use 18")) << heard;
    maker.press(Qt::Key_F8, Qt::ControlModifier | Qt::ShiftModifier);
    const std::string fixed = said_in_one();
    EXPECT_TRUE(fixed.starts_with("16 stitches; all 12 below are used.")) << fixed;
    EXPECT_EQ(fixed.find("Round 3:"), std::string::npos) << "said twice: " << fixed;
    EXPECT_EQ(phantoms(), "");
    maker.press(Qt::Key_Escape);
}

TEST_F(NewsTest, OfWhatIsOfferedTheChosenOneIsSaid) {
    maker.begin_words(2);
    maker.type(QStringLiteral("[i"));
    const std::string heard = said_in_one();
    EXPECT_NE(heard.find("Tab for “inc”."), std::string::npos) << heard;
    const QStringList offered = maker.table().findChild<WordsEdit*>()->offered();
    ASSERT_GT(offered.size(), 1);
    maker.press(Qt::Key_Down);
    EXPECT_EQ(said_in_one(), joined_sentences({offered[1]}).toStdString());
    maker.put_popup_away();
    maker.press(Qt::Key_Escape);
}

TEST_F(NewsTest, OpeningAndSavingAreSaid) {
    EXPECT_FALSE(maker.session.save(maker.file()));
    maker.window->rounds_view().setFocus();
    maker.session.edit_piece(QStringLiteral("Set"), [](Piece& piece) { piece.rounds.pop_back(); });
    (void)said();
    maker.press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(said_in_one().starts_with("Saved."));
    maker.press(Qt::Key_N, Qt::ControlModifier);
    EXPECT_TRUE(said_in_one().starts_with("New toy."));
}

TEST_F(NewsTest, AnEntryThatIsNotUnderstoodStaysSaidUntilItIsDealtWith) {
    maker.window->fast_entry().focus_line();
    maker.type(QStringLiteral("6, zz"));
    (void)said();
    maker.press(Qt::Key_Return);
    const QStringList why = said();
    ASSERT_EQ(why.size(), 1);
    EXPECT_EQ(maker.window->announcer().shown(), why.front());
    maker.press(Qt::Key_F7);
    EXPECT_EQ(said(), why);
    maker.press(Qt::Key_A, Qt::ControlModifier);
    maker.press(Qt::Key_Backspace);
    EXPECT_NE(maker.window->announcer().shown(), why.front());
}

TEST_F(NewsTest, ARoundThatBeginsToRuffleAndAMovedEyeAreSaid) {
    maker.session.start(toy_of({6, 12, 18}));
    maker.table().setFocus();
    (void)said();
    maker.session.edit_piece(QStringLiteral("Set"),
                             [](Piece& piece) { piece.rounds[2].working = WorkedEvenly{24}; });
    const std::string heard = said_in_one();
    EXPECT_NE(heard.find("Round 3 begins to ruffle."), std::string::npos) << heard;
    maker.session.edit_piece(QStringLiteral("Eyes"), [](Piece& piece) { piece.features.push_back({}); });
    EXPECT_NE(said_in_one().find("between rounds"), std::string::npos);
    EXPECT_EQ(phantoms(), "");
}

}  // namespace
}  // namespace roundwright::app
