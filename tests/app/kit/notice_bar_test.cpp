#include "app/kit/notice_bar.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QVBoxLayout>

#include "app/kit/theme.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

const auto changed = QStringLiteral("changed");
const auto keeping = QStringLiteral("keeping");

class NoticeBarTest : public ::testing::Test {
  protected:
    NoticeBarTest() {
        auto* layout = new QVBoxLayout(&window);
        layout->addWidget(&bar);
        layout->addWidget(&line);
        layout->addStretch(1);
        QObject::connect(&bar, &NoticeBar::left, &line, [this] { line.setFocus(); });
        window.resize(900, 400);
        window.show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
        line.setFocus();
    }
    Notice question(NoticeRank rank = NoticeRank::caution) {
        return {rank,
                QStringLiteral("“pup” was changed by another program."),
                {{QStringLiteral("Take &theirs"), [this] { answered << QStringLiteral("theirs"); }},
                 {QStringLiteral("Keep &mine"), [this] { answered << QStringLiteral("mine"); }}}};
    }

    QWidget window;
    NoticeBar bar;
    QLineEdit line;
    QStringList answered;
};

TEST_F(NoticeBarTest, TakesNoRoomWhileThereIsNothingToSay) {
    EXPECT_FALSE(bar.isVisible());
    bar.put_up(changed, question());
    EXPECT_TRUE(bar.isVisible());
    EXPECT_EQ(bar.words(changed), QStringLiteral("“pup” was changed by another program."));
    bar.take_down(changed);
    EXPECT_FALSE(bar.isVisible());
    EXPECT_EQ(bar.words(changed), QString());
    bar.take_down(changed);
}

TEST_F(NoticeBarTest, WhatMattersMoreStandsHigher) {
    bar.put_up(QStringLiteral("a"), {NoticeRank::remark, QStringLiteral("A")});
    bar.put_up(QStringLiteral("b"), {NoticeRank::danger, QStringLiteral("B")});
    bar.put_up(QStringLiteral("c"), {NoticeRank::caution, QStringLiteral("C")});
    bar.put_up(QStringLiteral("d"), {NoticeRank::caution, QStringLiteral("D")});
    EXPECT_EQ(bar.causes().join(QString()), QStringLiteral("bcda"));
    bar.put_up(QStringLiteral("a"), {NoticeRank::danger, QStringLiteral("A")});
    EXPECT_EQ(bar.causes().join(QString()), QStringLiteral("bacd"));
    bar.take_down(QStringLiteral("b"));
    EXPECT_EQ(bar.causes().join(QString()), QStringLiteral("acd"));
}

TEST_F(NoticeBarTest, IsAnsweredByMouseAndByKeys) {
    bar.put_up(changed, question());
    QTest::mouseClick(bar.button(changed, QStringLiteral("Keep mine")), Qt::LeftButton);
    EXPECT_TRUE(wait_until([&] { return answered == QStringList{QStringLiteral("mine")}; }));
    EXPECT_TRUE(line.hasFocus()) << "a click on a notice takes the keyboard from nobody";
    ASSERT_TRUE(bar.take_keyboard());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    EXPECT_TRUE(wait_until([&] { return answered.size() == 3; }));
    EXPECT_EQ(answered.join(u' '), QStringLiteral("mine theirs mine"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_TRUE(line.hasFocus());
}

TEST_F(NoticeBarTest, AButtonThatStaysKeepsThePressThatIsOnIt) {
    bar.put_up(changed, question());
    auto* theirs = bar.button(changed, QStringLiteral("Take theirs"));
    QTest::mousePress(theirs, Qt::LeftButton);
    Notice more = question(NoticeRank::danger);
    more.words = QStringLiteral("Other words");
    more.answers.push_back({QStringLiteral("Keep &both"), [] {}});
    bar.put_up(changed, more);
    EXPECT_EQ(bar.answers(changed).size(), 3);
    ASSERT_EQ(bar.button(changed, QStringLiteral("Take theirs")), theirs);
    QTest::mouseRelease(theirs, Qt::LeftButton);
    EXPECT_TRUE(wait_until([&] { return answered == QStringList{QStringLiteral("theirs")}; }))
        << "once, though it was put up twice";
}

TEST_F(NoticeBarTest, TheKeyboardGoesBackWhenItsNoticeGoes) {
    bar.put_up(keeping, {NoticeRank::danger, QStringLiteral("Keeping is impossible.")});
    EXPECT_FALSE(bar.take_keyboard()) << "there is nothing to press";
    bar.put_up(changed, question());
    ASSERT_TRUE(bar.take_keyboard());
    bar.take_down(changed);
    EXPECT_TRUE(line.hasFocus());
}

TEST_F(NoticeBarTest, NothingIsCutHoweverNarrowTheWindow) {
    Notice notice = question();
    notice.words = QStringLiteral(
        "“pup” was changed by another program since it was opened here, and there are changes of yours that "
        "are not saved. Nothing is lost, whatever you choose.");
    notice.answers.push_back({QStringLiteral("Keep &both"), [] {}});
    bar.put_up(changed, notice);
    for (const int width : {360, 480, 640, 1000, 1600}) {
        window.resize(width, 600);
        QTest::qWait(20);
        EXPECT_EQ(window.width(), width) << "it makes no window wider than it is";
        auto* label = bar.findChild<QLabel*>();
        EXPECT_GE(label->height(), label->heightForWidth(label->width())) << width;
        for (const auto* button : bar.findChildren<QPushButton*>()) {
            EXPECT_GE(button->width(), button->sizeHint().width()) << width;
            EXPECT_LE(button->mapTo(&bar, button->rect().bottomRight()).x(), bar.width()) << width;
        }
    }
}

TEST_F(NoticeBarTest, TheFirstNoticeMakesNoWindowHigher) {
    Notice notice = question(NoticeRank::danger);
    for (int more = 0; more < 6; ++more)
        notice.words += QStringLiteral(" Unsaved changes cannot be kept safe at the moment.");
    bar.put_up(keeping, notice);
    QTest::qWait(50);
    EXPECT_EQ(window.height(), 400);
    EXPECT_LT(bar.height(), 100);
}

TEST_F(NoticeBarTest, WordsAreTextAndAScreenReaderGetsThemWithEachButton) {
    Notice notice = question();
    notice.words = QStringLiteral("“<b>pup</b>” was changed.");
    bar.put_up(changed, notice);
    EXPECT_EQ(bar.findChild<QLabel*>()->textFormat(), Qt::PlainText);
    EXPECT_EQ(bar.button(changed, QStringLiteral("Keep mine"))->accessibleDescription(), notice.words);
    EXPECT_EQ(bar.findChild<QLabel*>()->parentWidget()->accessibleName(), notice.words);
}

}  // namespace
}  // namespace roundwright::app
