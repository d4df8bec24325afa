#include "app/kit/announcer.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QVBoxLayout>
#include <QWidget>

#include "tests/app/app_testing.h"
#include "tests/app/listener.h"

namespace roundwright::app {
namespace {

class AnnouncerTest : public ::testing::Test {
  protected:
    void SetUp() override {
        if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
        auto* layout = new QVBoxLayout(&window);
        for (QLineEdit* line : {field, other}) layout->addWidget(line);
        field->setAccessibleDescription(QStringLiteral("Counts"));
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        field->setFocus();
        (void)listener.take_said();
    }
    [[nodiscard]] QStringList heard() {
        QTest::qWait(300);
        return listener.take_said();
    }

    Listener listener;
    QWidget window;
    QLineEdit* field = new QLineEdit;
    QLineEdit* other = new QLineEdit;
    Announcer announcer{&window};
};

TEST_F(AnnouncerTest, WhatComesTogetherIsOneByItsWeight) {
    announcer.say(QStringLiteral("size"), QStringLiteral("84 mm wide"), Weight::size);
    announcer.say(QStringLiteral("count"), QStringLiteral("Round 3: 16 stitches"), Weight::count);
    announcer.say(QStringLiteral("count"), QStringLiteral("Round 3: 18 stitches"), Weight::count);
    EXPECT_EQ(heard(), QStringList(QStringLiteral("Round 3: 18 stitches. 84 mm wide.")));
}

TEST_F(AnnouncerTest, NewsIsSaidOnceAndAnAnswerAsOftenAsItIsAsked) {
    for (int i = 0; i < 2; ++i) {
        announcer.say(QStringLiteral("size"), QStringLiteral("84 mm wide"), Weight::size);
        EXPECT_EQ(heard().size(), 1 - i);
    }
    for (int i = 0; i < 3; ++i) {
        announcer.say_again();
        EXPECT_EQ(heard(), QStringList(QStringLiteral("84 mm wide.")));
    }
}

TEST_F(AnnouncerTest, AComplaintStaysUntilItIsDealtWith) {
    announcer.complain(QStringLiteral("“x” is not a count."));
    announcer.answer(QStringLiteral("Added"));
    EXPECT_EQ(announcer.shown(), QStringLiteral("“x” is not a count."));
    announcer.dealt_with();
    EXPECT_EQ(announcer.shown(), QStringLiteral("Added."));
}

TEST_F(AnnouncerTest, AFieldHasItsOwnDescriptionBackWhenTheKeyboardLeavesIt) {
    announcer.answer(QStringLiteral("Added"));
    other->setFocus();
    EXPECT_EQ(field->accessibleDescription(), QStringLiteral("Counts"));
}

}  // namespace
}  // namespace roundwright::app
