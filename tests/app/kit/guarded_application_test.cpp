#include "app/kit/guarded_application.h"

#include <gtest/gtest.h>
#include <new>
#include <stdexcept>

#include <QLineEdit>
#include <QMessageBox>

#include "tests/app/app_testing.h"
#include "tests/support/unjudged_leaks.h"

namespace roundwright::app {
namespace {

/// The messages that are open; they go with the test.
QList<QMessageBox*> messages() {
    QList<QMessageBox*> found;
    for (QWidget* top : QApplication::topLevelWidgets()) {
        auto* message = qobject_cast<QMessageBox*>(top);
        if (message && message->isVisible()) found << message;
    }
    return found;
}

class Guarded : public ::testing::Test {
  protected:
    void TearDown() override {
        for (QMessageBox* message : messages()) message->reject();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    static GuardedApplication& application() { return *qobject_cast<GuardedApplication*>(qApp); }
    static QString only_message() {
        EXPECT_TRUE(wait_until([] { return !messages().isEmpty(); }));
        EXPECT_EQ(messages().size(), 1);
        return messages().isEmpty() ? QString() : messages().front()->text();
    }

  private:
    // Qt does not free what its functions hold when an exception passes through them.
    [[maybe_unused]] const test::UnjudgedLeaks unjudged_;
};

TEST_F(Guarded, ASlotThatThrowsIsToldAndTheProgramGoesOn) {
    QTimer::singleShot(0, qApp, [] { throw std::runtime_error("a slot"); });
    EXPECT_EQ(only_message(), QStringLiteral("This could not be finished: a slot"));
    bool later = false;
    QTimer::singleShot(0, qApp, [&] { later = true; });
    EXPECT_TRUE(wait_until([&] { return later; }));
}

TEST_F(Guarded, SoIsTheLackOfMemory) {
    QTimer::singleShot(0, qApp, [] { throw std::bad_alloc(); });
    EXPECT_EQ(only_message(), QStringLiteral("There is not enough memory for this."));
}

TEST_F(Guarded, WhatIsTypedStays) {
    QLineEdit line;
    bool runs_out = true;
    QObject::connect(&line, &QLineEdit::textEdited, &line, [&](const QString& text) {
        if (runs_out && text.size() == 2) throw std::runtime_error("while typing");
    });
    line.show();
    QTest::keyClicks(&line, QStringLiteral("24"));
    EXPECT_EQ(line.text(), QStringLiteral("24"));
    EXPECT_EQ(only_message(), QStringLiteral("This could not be finished: while typing"));
    for (QMessageBox* message : messages()) message->reject();
    runs_out = false;
    QTest::keyClicks(&line, QStringLiteral("x4"));
    EXPECT_EQ(line.text(), QStringLiteral("24x4"));
}

class ThrowsWhenPressed : public QWidget {
  protected:
    void mousePressEvent(QMouseEvent*) override { throw 7; }
    void keyPressEvent(QKeyEvent*) override { throw std::runtime_error("<b>a key</b>"); }
};

TEST_F(Guarded, SoIsWhatAKeyOrTheMouseThrows) {
    ThrowsWhenPressed widget;
    widget.show();
    QTest::mouseClick(&widget, Qt::LeftButton);
    EXPECT_EQ(only_message(), QStringLiteral("This could not be finished."));
    messages().front()->reject();
    QTest::keyClick(&widget, Qt::Key_A);
    EXPECT_TRUE(wait_until([] {
        return !messages().isEmpty() &&
               messages().front()->text() == QStringLiteral("This could not be finished: <b>a key</b>");
    }));
}

TEST_F(Guarded, WhatComesBackAgainAndAgainIsToldOnce) {
    int thrown = 0, met = 0;
    QObject here;
    QObject::connect(&application(), &GuardedApplication::fault_met, &here, [&met] { ++met; });
    QTimer again;
    QObject::connect(&again, &QTimer::timeout, qApp, [&thrown] {
        ++thrown;
        throw std::runtime_error("every tick");
    });
    again.start(1);
    EXPECT_TRUE(wait_until([&] { return thrown > 20; }));
    EXPECT_EQ(only_message(), QStringLiteral("This could not be finished: every tick"));
    messages().front()->reject();
    EXPECT_TRUE(wait_until([&] { return thrown > 60; }));
    EXPECT_EQ(messages().size(), 0);
    again.stop();
    EXPECT_GT(met, 1);
}

TEST_F(Guarded, WhatNoEventCallsIsHeldToTheSameRule) {
    EXPECT_FALSE(application().guard([] { throw std::runtime_error("the beginning"); }));
    EXPECT_EQ(only_message(), QStringLiteral("This could not be finished: the beginning"));
    EXPECT_TRUE(application().guard([] {}));
}

}  // namespace
}  // namespace roundwright::app
