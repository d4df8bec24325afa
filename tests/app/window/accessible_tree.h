#pragma once

#include <QAccessible>
#include <QStringList>
#include <QWidget>

namespace roundwright::app {

/// What is wrong with what assistive technology meets in a window, as far as it is shown: one line each.
/// Controls have a name and, if they hold one, a value; no name is the name of a class; read-outs say their
/// text; no two buttons of one window have one name.
[[nodiscard]] QStringList faults_of_accessible_tree(QWidget& window);

/// The whole tree in words, to see what is there.
[[nodiscard]] QString accessible_tree_in_words(QWidget& window);

/// The names of everything shown in the window's tree.
[[nodiscard]] QStringList accessible_names(QWidget& window);

}  // namespace roundwright::app
