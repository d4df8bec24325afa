#pragma once

#include <QElapsedTimer>
#include <QKeySequence>
#include <QLineEdit>

namespace roundwright::app {

/// A line that shows the keys pressed in it, one or two after each other. Tab goes on as everywhere, Enter
/// and Escape end it, Backspace empties it.
class KeysField : public QLineEdit {
    Q_OBJECT
  public:
    explicit KeysField(QWidget* parent = nullptr);

    [[nodiscard]] QKeySequence keys() const { return keys_; }
    void forget();

  Q_SIGNALS:
    void keys_pressed();
    void ended(bool with_enter);

  protected:
    bool event(QEvent* event) override;

  private:
    void take(const QKeyEvent& key);
    void add(QKeyCombination keys);

    QKeySequence keys_;
    QElapsedTimer since_last_;
};

}  // namespace roundwright::app
