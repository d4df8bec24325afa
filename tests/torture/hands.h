#pragma once

#include <functional>

#include <QDialog>
#include <QString>
#include <QStringList>
#include <QWidget>

namespace roundwright::torture {

/// Keys and mouse as they reach the program's widgets. Keys go where they would go on the screen: to an open
/// popup, or to what has the keyboard.
class Hands {
  public:
    /// Called before each key.
    std::function<void()> pressing = [] {};

    [[nodiscard]] static QWidget* under_the_keys();
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) const;
    void type(QChar letter) const;
    static void click(QWidget* widget, const QPoint& place);
};

/// A dialog and what can be answered.
struct Question {
    QString kind;  ///< class of the dialog, and its object name
    QString words;
    QStringList answers;  ///< of the buttons: object name, or else the words on them
};

[[nodiscard]] Question question_of(const QDialog& dialog);
/// Presses the first button whose object name or words hold `answer`, whatever the case of its letters.
bool give_answer(const QDialog& dialog, const QString& answer);

}  // namespace roundwright::torture
