#pragma once

#include <functional>

#include <QString>
#include <QWidget>

namespace roundwright::app {

class MainWindow;

/// Hands over the window with all panels folded and with each of them open, then whatever the actions of its
/// menus open, one after the other, once each rests. Files are not asked for. The name says which it is.
void for_every_window(MainWindow& window, const std::function<void(QWidget&, const QString&)>& look);

/// The same without the panels; the number of windows that were opened.
int for_every_dialog(MainWindow& window, const std::function<void(QWidget&, const QString&)>& look);

}  // namespace roundwright::app
