#pragma once

#include <QAbstractButton>
#include <QAccessible>
#include <QWidget>

namespace roundwright::app {

/// Gives a widget of our own its role, which Qt can only tell of its own classes. To be called before
/// anything else is said of the widget.
void speak_as(QWidget& widget, QAccessible::Role role);

/// A checkable button that unfolds something below it while it is checked: expanded and collapsed, not
/// checked and unchecked.
void speak_as_fold(QAbstractButton& title);

/// The picture's role, name and description, on whichever widget of it takes the keyboard.
void speak_as_picture(QWidget& picture, const QString& name);
void describe_picture(QWidget& picture, const QString& words);

}  // namespace roundwright::app
