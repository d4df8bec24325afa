#pragma once

#include <QObject>

class QKeyEvent;
class QWidget;

namespace roundwright::app {

/// How fields behave, in every window and dialog of the program:
/// - The wheel scrolls. It changes no field that has not the keyboard, and gives the keyboard to nothing.
/// - What is being typed is said before anything else is done: by a shortcut, a menu, a button or tab that
///   leaves the keyboard where it is, a dropped file, or closing the window.
/// - Undo and redo are the line's own as long as it has typing to take back, and the toy's otherwise.
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
