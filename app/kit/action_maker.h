#pragma once

#include <QAction>
#include <QActionGroup>
#include <QKeySequence>
#include <QMenu>
#include <QString>

namespace roundwright::app {

/// An action of a window: words, shortcut and (may be empty) one of the program's icons.
[[nodiscard]] QAction* make_action(QWidget* window, const QString& text, const QKeySequence& shortcut,
                                   const QString& icon_name = {});

/// The same, to be on or off.
[[nodiscard]] QAction* make_choice(QWidget* window, const QString& text, const QKeySequence& shortcut,
                                   QActionGroup* group = nullptr);

}  // namespace roundwright::app
