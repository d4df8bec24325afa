#pragma once

#include <QAction>
#include <QActionGroup>
#include <QKeySequence>
#include <QMenu>
#include <QString>

namespace roundwright::app {

/// An action of a window, as the catalogue has it: its words, icon and keys, which follow the maker's choice.
/// Its object name is `id`.
[[nodiscard]] QAction* make_action(QWidget* window, const char* id);

/// The same, to be on or off.
[[nodiscard]] QAction* make_choice(QWidget* window, const char* id, QActionGroup* group = nullptr);

}  // namespace roundwright::app
