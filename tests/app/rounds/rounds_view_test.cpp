#include "app/rounds/rounds_view.h"

#include <gtest/gtest.h>

#include <QLineEdit>

#include "app/rounds/rounds_model.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class RoundsViewTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.start(toy_of({6, 12, 18, 24}));
        view.resize(700, 400);
        view.show();
        view.setFocus();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&view));
    }

    /// Keys go to the open editor if there is one, as they do for a person.
    void type(const QString& text) {
        for (const QChar letter : text) {
            if (letter.unicode() < 0x80)
                QTest::keyClick(target(), letter.toLatin1());
            else
                QTest::sendKeyEvent(QTest::Click, target(), Qt::Key_unknown, QString(letter), Qt::NoModifier);
        }
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(target(), key, modifiers);
        QCoreApplication::processEvents();
    }
    QWidget* target() {
        QWidget* focus = QApplication::focusWidget();
        return focus && view.isAncestorOf(focus) ? focus : &view;
    }
    [[nodiscard]] std::vector<int> counts() const { return counts_of(*session.piece()); }
    [[nodiscard]] int row() const { return view.currentIndex().row(); }

    DocumentSession session;
    RoundsModel model{session};
    RoundsView view{model};
};

TEST_F(RoundsViewTest, WaitsOnTheNextRound) { EXPECT_EQ(row(), 4); }

TEST_F(RoundsViewTest, TypingOnTheNextRoundAddsItAndGoesOn) {
    type(QStringLiteral("30"));
    press(Qt::Key_Return);
    type(QStringLiteral("+6"));
    press(Qt::Key_Return);
    type(QStringLiteral("="));
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24, 30, 36, 36}));
    EXPECT_EQ(row(), 7);
    EXPECT_EQ(session.undo_stack().count(), 3);
    EXPECT_EQ(session.undo_stack().undoText(), QStringLiteral("Add round 7 of 36 stitches"));
}

// What the line of next rounds takes, the table takes too.
TEST_F(RoundsViewTest, TheNextRoundMayBeSeveral) {
    type(QStringLiteral("30x2"));
    press(Qt::Key_Return);
    type(QStringLiteral("+6 \u00d7 2"));
    press(Qt::Key_Return);
    type(QStringLiteral("\u20136"));
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24, 30, 30, 36, 42, 36}));
    EXPECT_EQ(session.undo_stack().count(), 3);
    session.undo_stack().undo();
    EXPECT_EQ(session.undo_stack().undoText(), QStringLiteral("Add rounds 7 and 8"));
    session.undo_stack().undo();
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24, 30, 30}));
}

TEST_F(RoundsViewTest, ARoundMayBecomeSeveral) {
    session.select_rounds({2});
    type(QStringLiteral("18*3"));
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 18, 18, 24}));
    EXPECT_EQ(session.undo_stack().undoText(), QStringLiteral("Work round 3 over 3 rounds"));
    session.undo_stack().undo();
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24}));
}

TEST_F(RoundsViewTest, ArrowsHomeAndEndMove) {
    press(Qt::Key_Home);
    EXPECT_EQ(row(), 0);
    press(Qt::Key_Down);
    EXPECT_EQ(row(), 1);
    EXPECT_EQ(session.selection(), (std::vector{1}));
    press(Qt::Key_End);
    EXPECT_EQ(row(), 4);
    press(Qt::Key_Up);
    EXPECT_EQ(row(), 3);
}

TEST_F(RoundsViewTest, TypingSetsTheCountInOneStep) {
    session.select_rounds({1});
    type(QStringLiteral("10"));
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 10, 18, 24}));
    EXPECT_EQ(row(), 2);
    EXPECT_EQ(session.undo_stack().count(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24}));
}

TEST_F(RoundsViewTest, TheShapeFollowsWhileACountIsTyped) {
    session.select_rounds({3});
    type(QStringLiteral("3"));
    EXPECT_EQ(counts()[3], 24) << "3 cannot be worked over 18";
    type(QStringLiteral("0"));
    EXPECT_EQ(counts()[3], 30);
    EXPECT_EQ(session.undo_stack().count(), 0);
    press(Qt::Key_Escape);
    EXPECT_EQ(counts()[3], 24);
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST_F(RoundsViewTest, SeveralRoundsTakeOneChange) {
    session.select_rounds({1, 2, 3});
    type(QStringLiteral("+4"));
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 10, 14, 18}));
    EXPECT_EQ(session.undo_stack().count(), 1);
}

TEST_F(RoundsViewTest, TabGoesToTheWordsAndOn) {
    session.select_rounds({2});
    press(Qt::Key_Tab);
    auto* words = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_TRUE(words);
    EXPECT_TRUE(words->accessibleName().contains(QStringLiteral("3")));
    words->clear();
    type(QStringLiteral("inc 6, sc 6"));
    press(Qt::Key_Return);
    const auto* written = std::get_if<AsWritten>(&session.piece()->rounds[2].working);
    ASSERT_TRUE(written);
    EXPECT_EQ(written->words, "inc 6, sc 6");
}

TEST_F(RoundsViewTest, F2OpensTheWordsAndEscapeLeavesThemAlone) {
    session.select_rounds({2});
    press(Qt::Key_F2);
    type(QStringLiteral("nonsense"));
    press(Qt::Key_Escape);
    EXPECT_EQ(session.undo_stack().count(), 0);
    EXPECT_EQ(QApplication::focusWidget(), &view);
}

TEST_F(RoundsViewTest, ShiftAndArrowsSelectSeveral) {
    session.select_rounds({1});
    press(Qt::Key_Down, Qt::ShiftModifier);
    press(Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(session.selection(), (std::vector{1, 2, 3}));
}

TEST_F(RoundsViewTest, AClickSelectsARound) {
    const auto place = view.visualRect(model.index(2, 1)).center();
    QTest::mouseClick(view.viewport(), Qt::LeftButton, {}, place);
    EXPECT_EQ(session.selection(), (std::vector{2}));
}

}  // namespace
}  // namespace roundwright::app
