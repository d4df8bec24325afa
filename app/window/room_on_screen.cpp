#include "app/window/room_on_screen.h"

#include <QScreen>
#include <QWidget>

namespace roundwright::app {

QSize room_on_screen(const QWidget& widget, QSize wanted) {
    constexpr int frame = 8;
    constexpr int title = 40;
    return wanted.boundedTo(widget.screen()->availableGeometry().size() - QSize(frame, title));
}

}  // namespace roundwright::app
