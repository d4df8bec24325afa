#include "app/checks/checks_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QMenu>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class ChecksListTest : public ::testing::Test {
  protected:
    void open(const Toy& toy, int width = 900) {
        session.start(toy);
        list.resize(width, 300);
        list.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&list));
        ASSERT_TRUE(wait_for_shape(session));
        QCoreApplication::processEvents();
    }
    /// "Round 5 ruffles"
    [[nodiscard]] std::string current() {
        return list.view()->currentIndex().data().toString().section(u':', 0, 0).toStdString();
    }
    void set_count(std::size_t round, int stitches) {
        session.edit_piece(QStringLiteral("Set"),
                           [&](Piece& piece) { piece.rounds[round].working = WorkedEvenly{stitches}; });
        ASSERT_TRUE(wait_for_shape(session));
        QCoreApplication::processEvents();
    }
    /// The words of the menu of cures, asked for by its key; the one that holds `choose` is taken.
    QStringList ask_for_cures(const QString& choose) {
        const QPoint place = list.view()->visualRect(list.view()->currentIndex()).center();
        QContextMenuEvent asked(QContextMenuEvent::Keyboard, place,
                                list.view()->viewport()->mapToGlobal(place));
        QCoreApplication::sendEvent(list.view()->viewport(), &asked);
        QStringList words;
        auto* menu = list.findChild<QMenu*>();
        if (menu == nullptr) return words;
        for (QAction* action : menu->actions()) {
            words << action->text();
            if (!choose.isEmpty() && action->text().contains(choose)) action->trigger();
        }
        menu->close();
        return words;
    }

    DocumentSession session;
    ChecksList list{session};
};

TEST_F(ChecksListTest, TheCursorStaysOnItsCheckWhileOthersComeAndGo) {
    open(toy_of({6, 12, 18, 40, 40, 84, 84}));
    const int before = list.view()->model()->rowCount();
    ASSERT_GE(before, 2);
    list.step(+1);
    list.step(+1);
    const std::string second = current();
    ASSERT_FALSE(second.empty());
    set_count(1, 13);  // an error comes first
    EXPECT_GT(list.view()->model()->rowCount(), before);
    EXPECT_EQ(current(), second);
    set_count(1, 12);
    EXPECT_EQ(current(), second);
}

TEST_F(ChecksListTest, AfterACureTheCursorIsOnWhatIsNext) {
    open(toy_of({6, 13, 18, 37, 40}));
    const int before = list.view()->model()->rowCount();
    ASSERT_GE(before, 2);
    // A list that has the focus stands on its first row of itself.
    list.view()->setCurrentIndex(list.view()->model()->index(0, 0));
    list.cure_current();
    ASSERT_TRUE(wait_for_shape(session));
    QCoreApplication::processEvents();
    EXPECT_LT(list.view()->model()->rowCount(), before);
    EXPECT_EQ(list.view()->currentIndex().row(), 0);
}

TEST_F(ChecksListTest, ALongSentenceIsShownWhole) {
    open(toy_of({6, 12, 18, 24, 60}), 1200);
    const int wide = list.view()->sizeHintForRow(0);
    list.resize(420, 300);
    QCoreApplication::processEvents();
    const int narrow = list.view()->sizeHintForRow(0);
    EXPECT_GT(narrow, wide);
    EXPECT_EQ(list.view()->visualRect(list.view()->model()->index(0, 0)).height(), narrow);
    EXPECT_GE(list.view()->height(), narrow);
}

TEST_F(ChecksListTest, EveryCureCanBeChosenFromTheMenu) {
    Toy disc = toy_of({8, 16, 24, 32, 40, 48});
    disc.pieces[0].area_stretch = 0;
    open(disc);
    ASSERT_GE(list.view()->model()->rowCount(), 1);
    list.step(+1);
    const QStringList words = ask_for_cures(QStringLiteral("Spread"));
    ASSERT_GE(words.size(), 2) << words.join(u'|').toStdString() << current();
    EXPECT_THAT(words[0].toStdString(), ::testing::StartsWith("Start with 6"));
    EXPECT_GT(session.piece()->rounds.size(), 6u);  // spread over more rounds
    EXPECT_EQ(session.undo_stack().count(), 1);
}

}  // namespace
}  // namespace roundwright::app
