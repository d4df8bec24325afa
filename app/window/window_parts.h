#pragma once

#include <functional>
#include <vector>

#include <QObject>

class QWidget;

namespace roundwright::app {

/// The parts of a window in the order in which they are read: the keys that go round them, and the Tab order.
class WindowParts : public QObject {
    Q_OBJECT
  public:
    explicit WindowParts(QWidget* window);

    /// `take_keyboard` returns false if nothing in the part can have it now.
    void add(QWidget* part, std::function<bool()> take_keyboard);

    /// To the next (+1) or previous (-1) part from where the keyboard is, round and round.
    void go(int by);

    /// Tab goes through the parts one after the other. To be said again when a part has got another field.
    void order_tabs();

  private:
    struct Part {
        QWidget* widget;
        std::function<bool()> take_keyboard;
    };
    /// -1: in none of them.
    [[nodiscard]] int part_with_keyboard() const;

    QWidget* window_;
    std::vector<Part> parts_;
};

}  // namespace roundwright::app
