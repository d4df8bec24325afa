// The list of shortcuts, by keys alone.

#include "app/keys/shortcuts_dialog.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>

#include "app/keys/keys_field.h"
#include "app/kit/action_keys.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class ShortcutsDialogTest : public ::testing::Test {
  protected:
    void SetUp() override {
        ActionKeys::instance().take_usual_for_all();
        dialog.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
    }
    void TearDown() override { ActionKeys::instance().take_usual_for_all(); }

    static void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    static void type(const char* text) {
        for (const char* at = text; *at != 0; ++at) QTest::keyClick(QApplication::focusWidget(), *at);
    }
    /// From the search to the field for the action's new keys.
    void find(const char* text) {
        type(text);
        press(Qt::Key_Return);
        EXPECT_TRUE(table().hasFocus());
        press(Qt::Key_Return);
    }
    [[nodiscard]] QTableView& table() { return *dialog.findChild<QTableView*>(); }
    [[nodiscard]] bool says(const char* text) {
        for (const auto* label : dialog.findChildren<QLabel*>())
            if (label->text().contains(QString::fromUtf8(text))) return true;
        return false;
    }
    [[nodiscard]] QPushButton* button(const char* words) {
        for (auto* each : dialog.findChildren<QPushButton*>())
            if (each->text().remove(u'&') == QString::fromUtf8(words)) return each;
        return nullptr;
    }
    static QString keys_of(const char* id) {
        return QKeySequence::listToString(ActionKeys::instance().keys(QLatin1String(id)));
    }

    ShortcutsDialog dialog;
};

TEST_F(ShortcutsDialogTest, TheMakerSearchesPressesNewKeysAndHasThem) {
    find("repeat");
    EXPECT_TRUE(says("“Repeat” usually has Ctrl+D."));
    press(Qt::Key_K, Qt::ControlModifier);
    EXPECT_TRUE(says("Ctrl+K is free."));
    press(Qt::Key_Return);
    EXPECT_EQ(keys_of("round.repeat").toStdString(), "Ctrl+K");
    EXPECT_TRUE(says("“Repeat” has Ctrl+K now."));
    EXPECT_TRUE(table().hasFocus());
}

TEST_F(ShortcutsDialogTest, TwoKeysAfterEachOtherAreTakenAndBackspaceEmptiesTheLine) {
    find("repeat");
    press(Qt::Key_B, Qt::ControlModifier);
    EXPECT_TRUE(says("Ctrl+B, P belongs to “Seal pup”") || says("Ctrl+B belongs to"));
    press(Qt::Key_Q);
    EXPECT_TRUE(says("Ctrl+B, Q is free."));
    press(Qt::Key_Backspace);
    EXPECT_TRUE(dialog.findChild<KeysField*>()->text().isEmpty());
    EXPECT_FALSE(button("Use these keys")->isEnabled());
    press(Qt::Key_B, Qt::ControlModifier);
    press(Qt::Key_Q);
    press(Qt::Key_Return);
    EXPECT_EQ(keys_of("round.repeat").toStdString(), "Ctrl+B, Q");
}

TEST_F(ShortcutsDialogTest, AClashIsSaidWithTheOthersNameAndCanBeTakenOver) {
    find("repeat");
    press(Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(says("Ctrl+S belongs to “Save” (File)."));
    EXPECT_EQ(keys_of("round.repeat"), QStringLiteral("Ctrl+D")) << "not before it is meant";
    ASSERT_NE(button("Take them over"), nullptr);
    press(Qt::Key_Return);
    EXPECT_EQ(keys_of("round.repeat"), QStringLiteral("Ctrl+S"));
    EXPECT_EQ(keys_of("file.save"), QString());
}

TEST_F(ShortcutsDialogTest, KeysForTypingAreRefusedWithTheReason) {
    find("repeat");
    press(Qt::Key_A);
    EXPECT_TRUE(says("A is needed for typing"));
    press(Qt::Key_Return);
    EXPECT_EQ(keys_of("round.repeat"), QStringLiteral("Ctrl+D"));
}

TEST_F(ShortcutsDialogTest, EscapeLeavesTheKeysAsTheyWereAndStaysInTheList) {
    find("repeat");
    press(Qt::Key_K, Qt::ControlModifier);
    press(Qt::Key_Escape);
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_TRUE(table().hasFocus());
    EXPECT_EQ(keys_of("round.repeat"), QStringLiteral("Ctrl+D"));
}

TEST_F(ShortcutsDialogTest, TheUsualKeysComeBackOneByOneOrAllAtOnce) {
    ActionKeys& all = ActionKeys::instance();
    all.choose(QStringLiteral("round.repeat"), {QKeySequence(Qt::Key_F3)});
    all.choose(QStringLiteral("shape.fit"), {});
    find("repeat");
    ASSERT_NE(button("Usual keys"), nullptr);
    button("Usual keys")->click();
    EXPECT_EQ(keys_of("round.repeat"), QStringLiteral("Ctrl+D"));
    EXPECT_EQ(keys_of("shape.fit"), QString());
    answer_next_dialog(QStringLiteral("Yes"));
    button("All back to the usual…")->click();
    EXPECT_EQ(keys_of("shape.fit"), QStringLiteral("Ctrl+0"));
}

TEST_F(ShortcutsDialogTest, WhatIsNotFoundChangesNothing) {
    type("no such thing");
    EXPECT_EQ(table().model()->rowCount(), 0);
    EXPECT_TRUE(says("Nothing is called like that."));
    for (const char* words : {"Use these keys", "No keys", "Usual keys"})
        EXPECT_FALSE(button(words)->isEnabled()) << words;
}

TEST_F(ShortcutsDialogTest, TabGoesOutOfTheFieldForKeys) {
    find("repeat");
    auto* field = dialog.findChild<KeysField*>();
    EXPECT_TRUE(field->isAncestorOf(QApplication::focusWidget()) || field->hasFocus());
    press(Qt::Key_Tab);
    EXPECT_FALSE(field->isAncestorOf(QApplication::focusWidget()) || field->hasFocus());
    EXPECT_TRUE(field->keys().isEmpty());
}

}  // namespace
}  // namespace roundwright::app
