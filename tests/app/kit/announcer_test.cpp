#include "app/kit/announcer.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QDBusConnection>
#include <QLineEdit>
#include <QProcess>
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

/// A bus of its own stands for the desktop's, by the name that Qt gives its connection to that.
TEST_F(AnnouncerTest, WhatIsSaidGoesOverTheAccessibilityBus) {
    QProcess bus;
    bus.start(QStringLiteral("dbus-daemon"), {QStringLiteral("--session"), QStringLiteral("--nofork"),
                                              QStringLiteral("--print-address")});
    if (!bus.waitForReadyRead(5000)) GTEST_SKIP() << "no dbus-daemon";
    const QString address = QString::fromLatin1(bus.readLine()).trimmed();
    const QString qts = QStringLiteral("a11y");
    QDBusConnection::disconnectFromBus(qts);
    ASSERT_TRUE(QDBusConnection::connectToBus(address, qts).isConnected());
    QProcess monitor;
    monitor.start(QStringLiteral("dbus-monitor"),
                  {QStringLiteral("--address"), address, QStringLiteral("member='PropertyChange'")});
    if (!monitor.waitForReadyRead(5000)) GTEST_SKIP() << "no dbus-monitor";
    QTest::qWait(300);
    announcer.answer(QStringLiteral("Added"));
    QString heard;
    EXPECT_TRUE(wait_until([&] {
        heard += QString::fromUtf8(monitor.readAllStandardOutput());
        return heard.contains(QStringLiteral("Added."));
    })) << heard.toStdString();
    auto* about = QAccessible::queryAccessibleInterface(field);
    const QString path = QStringLiteral("path=/org/a11y/atspi/accessible/%1;");
    EXPECT_TRUE(heard.contains(path.arg(QAccessible::uniqueId(about)))) << heard.toStdString();
    const QString words = heard.simplified();
    EXPECT_TRUE(words.contains(QStringLiteral(
        "string \"accessible-description\" int32 0 int32 0 variant string \"Added.\" struct {")))
        << words.toStdString();
    QDBusConnection::disconnectFromBus(qts);
    monitor.kill();
    monitor.waitForFinished();
    bus.kill();
    bus.waitForFinished();
}

TEST_F(AnnouncerTest, AFieldHasItsOwnDescriptionBackWhenTheKeyboardLeavesIt) {
    announcer.answer(QStringLiteral("Added"));
    other->setFocus();
    EXPECT_EQ(field->accessibleDescription(), QStringLiteral("Counts"));
}

}  // namespace
}  // namespace roundwright::app
