#pragma once

#include <gtest/gtest.h>
#include <map>
#include <string>
#include <vector>

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QGroupBox>
#include <QLabel>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QPointer>
#include <QTest>
#include <QTimer>
#include <QToolButton>

namespace roundwright::test {

using Mnemonics = std::map<QString, QString>;

inline void expect_own_mnemonic(Mnemonics& taken, const QString& text, const std::string& where) {
    const QKeySequence mnemonic = QKeySequence::mnemonic(text);
    if (mnemonic.isEmpty()) return;
    const auto [other, fresh] = taken.emplace(mnemonic.toString(), text);
    EXPECT_TRUE(fresh) << where << ": “" << text.toStdString() << "” and “" << other->second.toStdString()
                       << "”";
}

inline void expect_own_mnemonics(const QMenu& menu, const std::string& where) {
    Mnemonics taken;
    for (const QAction* action : menu.actions()) {
        expect_own_mnemonic(taken, action->text(), where);
        if (action->menu()) expect_own_mnemonics(*action->menu(), where + "/" + action->text().toStdString());
    }
}

/// Of all that stands in a window at once.
inline void expect_own_mnemonics(const QWidget& shown, const std::string& where) {
    Mnemonics taken;
    if (const auto* bar = shown.findChild<QMenuBar*>())
        for (const QAction* action : bar->actions()) expect_own_mnemonic(taken, action->text(), where);
    for (const QWidget* widget : shown.findChildren<QWidget*>()) {
        if (!widget->isVisible() || widget->window() != &shown) continue;
        const auto* label = qobject_cast<const QLabel*>(widget);
        const auto* button = qobject_cast<const QAbstractButton*>(widget);
        const auto* group = qobject_cast<const QGroupBox*>(widget);
        const auto* tool = qobject_cast<const QToolButton*>(widget);
        if (label && label->buddy()) expect_own_mnemonic(taken, label->text(), where);
        if (button && !(tool && tool->defaultAction())) expect_own_mnemonic(taken, button->text(), where);
        if (group) expect_own_mnemonic(taken, group->title(), where);
    }
}

inline void expect_own_mnemonics_in_menus(const QMainWindow& window) {
    for (const QAction* action : window.menuBar()->actions())
        expect_own_mnemonics(*action->menu(), action->text().toStdString());
}

/// Every dialog that an action of the menus opens, and every window.
inline void expect_own_mnemonics_in_dialogs(const QMainWindow& window) {
    std::vector<QPointer<QAction>> asking;
    for (const QMenu* menu : window.menuBar()->findChildren<QMenu*>())
        for (QAction* action : menu->actions())
            if (action->isEnabled() && action->text().contains(QStringLiteral("…")))
                asking.emplace_back(action);
    EXPECT_GT(asking.size(), 8U);
    for (const QPointer<QAction>& action : asking) {
        const std::string name = action->text().toStdString();
        QTimer closer;
        QObject::connect(&closer, &QTimer::timeout, [&] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            if (!dialog->inherits("QFileDialog")) expect_own_mnemonics(*dialog, name);
            dialog->reject();
        });
        closer.start(100);
        action->trigger();
        QTest::qWait(20);
        for (QWidget* top : QApplication::topLevelWidgets()) {
            if (!top->isVisible() || top == &window) continue;
            expect_own_mnemonics(*top, name);
            top->close();
        }
    }
}

}  // namespace roundwright::test
