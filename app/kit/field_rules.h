#pragma once

#include <QObject>

class QKeyEvent;
class QWidget;

namespace roundwright::app {

/// The property, set to true, of a line that is empty after what was typed has gone to the toy.
inline constexpr char toy_undo_when_empty[] = "toy_undo_when_empty";

/// How fields behave, in every window and dialog of the program:
/// - The wheel scrolls. It changes no field that has not the keyboard, and gives the keyboard to nothing.
/// - What is being typed is said before anything else is done: by a shortcut, a menu, a button or tab that
///   leaves the keyboard where it is, a dropped file, or closing the window.
/// - Undo and redo are the line's own as long as it has typing to take back, and the toy's otherwise. What
/// Enter has
///   made of the typing in a number's field is the toy's; in a line that is marked by `toy_undo_when_empty`,
///   so is everything once it is empty. Ctrl+Y is redo everywhere, beside the system's own keys.
class FieldRules : public QObject {
    Q_OBJECT
  public:
    /// From now on, for the whole program; more than once is as good as once.
    static void hold();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    explicit FieldRules(QObject* parent);
};

}  // namespace roundwright::app
