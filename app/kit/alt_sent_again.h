#pragma once

#include <QObject>

namespace roundwright::app {

/// Keeps a shortcut with Alt from opening the menu bar while a screen reader runs. Qt holds each press and
/// release back until the reader has seen it, and sends it again afterwards. The key of a shortcut is not
/// among these, so that the menu bar sees Alt go down and up with nothing between, as if it was meant. What
/// the keyboard itself sent has reached the menu bar before: Alt alone still opens it.
class AltSentAgain : public QObject {
    Q_OBJECT
  public:
    /// From now on, for the whole program; more than once is as good as once.
    static void pass_over();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    explicit AltSentAgain(QObject* parent);
};

}  // namespace roundwright::app
