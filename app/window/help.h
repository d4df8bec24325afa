#pragma once

class QMainWindow;

namespace roundwright::app {

/// Every action of the window's menus with its shortcut, and the keys of the rounds table.
void show_keyboard_help(QMainWindow& window);

void show_about(QMainWindow& window);

}  // namespace roundwright::app
