#include "app/rounds/words_edit.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

#include "app/kit/theme.h"
#include "app/rounds/rounds_model.h"
#include "app/rounds/rounds_view.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

/// Words are typed in the table with the keys a person presses.
class WordsEditTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.start(toy_of({6, 12, 18, 24}));
        view.resize(900, 400);
        view.show();
        view.setFocus();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&view));
    }

    void open_words(int round) {
        session.select_rounds({round});
        QTest::keyClick(&view, Qt::Key_F2);
        words = view.findChild<WordsEdit*>();
        ASSERT_NE(words, nullptr);
    }
    /// An open popup has the keyboard, as on the screen.
    QWidget* target() {
        if (!words) return &view;
        return words->popup()->isVisible() ? words->popup() : words.data();
    }
    void type(const QString& text) {
        for (const QChar letter : text) QTest::keyClick(target(), letter.toLatin1());
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(target(), key, modifiers);
        QCoreApplication::processEvents();
    }
    [[nodiscard]] std::vector<int> counts() const { return counts_of(*session.piece()); }

    DocumentSession session;
    RoundsModel model{session};
    RoundsView view{model};
    QPointer<WordsEdit> words;
};

// Without a frame the list's white lay over half letters of the rows under it.
TEST_F(WordsEditTest, TheWordsOfferedStandInAFrame) {
    open_words(2);
    type(QStringLiteral("s"));
    ASSERT_TRUE(words->popup()->isVisible());
    const QImage shown = words->popup()->grab().toImage();
    const QColor rim = Theme::colours().rim;
    const int right = shown.width() - 1, bottom = shown.height() - 1;
    for (const QPoint at :
         {QPoint(0, bottom / 2), QPoint(right, bottom / 2), QPoint(right / 2, 0), QPoint(right / 2, bottom)})
        EXPECT_EQ(shown.pixelColor(at).name(), rim.name()) << at.x() << ", " << at.y();
}

TEST_F(WordsEditTest, OffersWhatComesOutAndEnterTakesWhatIsChosen) {
    open_words(2);
    type(QStringLiteral("[sc, inc]"));
    ASSERT_TRUE(words->popup()->isVisible());
    ASSERT_FALSE(words->offered().isEmpty());
    EXPECT_EQ(words->offered().front(), QStringLiteral("x 6"));
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    ASSERT_TRUE(words) << "Enter took the word, not the round";
    EXPECT_EQ(words->text(), QStringLiteral("[sc, inc] x 6"));
    EXPECT_FALSE(words->popup()->isVisible());
    press(Qt::Key_Return);
    EXPECT_FALSE(words && words->isVisible());
    EXPECT_EQ(view.currentIndex().row(), 3);
}

TEST_F(WordsEditTest, EnterWithNothingChosenEndsTheRound) {
    open_words(2);
    type(QStringLiteral("sc 6, inc 6"));
    press(Qt::Key_Return);
    EXPECT_EQ(view.currentIndex().row(), 3);
    const auto* written = std::get_if<AsWritten>(&session.piece()->rounds[2].working);
    ASSERT_TRUE(written);
    EXPECT_EQ(written->words, "sc 6, inc 6");
}

TEST_F(WordsEditTest, AWordThatIsBegunIsCompletedByEnterOrTab) {
    for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Tab}) {
        open_words(2);
        type(QStringLiteral("[sc 2, in"));
        press(key);
        ASSERT_TRUE(words);
        EXPECT_EQ(words->text(), QStringLiteral("[sc 2, inc"));
        press(Qt::Key_Escape);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
}

TEST_F(WordsEditTest, EscapePutsThePopupAwayFirst) {
    open_words(2);
    type(QStringLiteral("inc"));
    ASSERT_TRUE(words->popup()->isVisible());
    press(Qt::Key_Escape);
    ASSERT_TRUE(words);
    EXPECT_FALSE(words->popup()->isVisible());
    EXPECT_TRUE(words->offered().isEmpty()) << "nothing stale is kept";
    press(Qt::Key_Escape);
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST_F(WordsEditTest, ControlAndSpaceBringThePopupBack) {
    open_words(2);
    type(QStringLiteral("inc"));
    press(Qt::Key_Escape);
    press(Qt::Key_Space, Qt::ControlModifier);
    EXPECT_TRUE(words->popup()->isVisible());
}

TEST_F(WordsEditTest, SaysWhatDoesNotComeOutAndMendsItByAKey) {
    open_words(2);
    type(QStringLiteral("[sc 2, inc] x 6"));
    EXPECT_FALSE(words->popup()->isVisible()) << "nothing goes on from a fault";
    EXPECT_TRUE(words->hint().contains(QStringLiteral("12"))) << words->hint().toStdString();
    EXPECT_TRUE(words->hint().contains(QStringLiteral("18"))) << words->hint().toStdString();
    EXPECT_EQ(words->accessibleDescription(), QString()) << "it would talk over typing";
    EXPECT_EQ(words->spoken_hint(), words->hint());
    press(Qt::Key_F8, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(words->text(), QStringLiteral("[sc 2, inc] x 4")) << "numbers of repeats slip most often";
    EXPECT_TRUE(words->reading().proved());
}

TEST_F(WordsEditTest, WordsThatAreNotDoneYetAreNoFault) {
    open_words(2);
    type(QStringLiteral("sc 4, "));
    EXPECT_TRUE(words->hint().contains(QStringLiteral("so far"))) << words->hint().toStdString();
}

TEST_F(WordsEditTest, CountsFollowWhileWordsAreTyped) {
    open_words(2);
    type(QStringLiteral("inc around"));
    EXPECT_EQ(counts()[2], 24);
    EXPECT_EQ(session.undo_stack().count(), 0);
    press(Qt::Key_Escape);
    press(Qt::Key_Escape);
    EXPECT_EQ(counts()[2], 18);
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST_F(WordsEditTest, TheNextRoundIsWrittenToo) {
    QTest::keyClick(&view, Qt::Key_F2);
    words = view.findChild<WordsEdit*>();
    ASSERT_NE(words, nullptr);
    type(QStringLiteral("dec around"));
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24, 12}));
}

TEST_F(WordsEditTest, AFaultyRoundIsMendedFromTheTableInOneStep) {
    RoundEdits edits(session);
    ASSERT_TRUE(edits.set_words(2, QStringLiteral("[sc 2, inc] x 6")));
    ASSERT_TRUE(edits.mendable(2));
    EXPECT_TRUE(edits.mend(2));
    EXPECT_EQ(counts()[2], 16) << "[sc 2, inc] x 4";
    EXPECT_EQ(session.undo_stack().undoText(), QStringLiteral("Fix round 3"));
    EXPECT_FALSE(edits.mendable(2));
    EXPECT_FALSE(edits.mend(2));
    session.undo_stack().undo();
    EXPECT_TRUE(edits.mendable(2));
}

}  // namespace
}  // namespace roundwright::app
