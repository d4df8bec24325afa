#pragma once

#include <QObject>

class QWidget;

namespace roundwright::app {

/// Sees to it that every window and dialog beside the main one opens with its title on the screen and its
/// title's words whole, and that Ctrl+W closes it.
class WindowPlacing : public QObject {
    Q_OBJECT
  public:
    explicit WindowPlacing(QWidget& main_window);

    /// What a window's title takes, with its buttons, in pixels.
    [[nodiscard]] static int title_width(const QWidget& window);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    [[nodiscard]] bool is_ours(const QWidget& window) const;

    QWidget& main_window_;
};

}  // namespace roundwright::app
