#include "app/kit/room_on_screen.h"

#include <algorithm>

#include <QFontInfo>
#include <QGuiApplication>
#include <QScreen>
#include <QWidget>

namespace roundwright::app {
namespace {

// The frame is there only once the window is on the screen, so these are as much as frames usually take.
constexpr int frame = 4;
constexpr int title = 36;

QRect inner_room(const QRect& available) { return available.adjusted(frame, title, -frame, -frame); }

int overlap(const QRect& a, const QRect& b) {
    const QRect both = a & b;
    return both.isEmpty() ? 0 : both.width() * both.height();
}

QScreen* screen_of(const QRect& place) {
    const auto screens = QGuiApplication::screens();
    const auto most = std::ranges::max_element(
        screens, {}, [&](const QScreen* screen) { return overlap(screen->availableGeometry(), place); });
    return overlap((*most)->availableGeometry(), place) > 0 ? *most : QGuiApplication::primaryScreen();
}

}  // namespace

QSize room_on_screen(const QWidget& widget, QSize wanted) {
    constexpr double usual_pixels = 12;  // of type of 9 points at 96 dots to the inch
    const double larger = std::max(1.0, QFontInfo(widget.font()).pixelSize() / usual_pixels);
    wanted = (QSizeF(wanted) * larger).toSize();
    return wanted.boundedTo(inner_room(widget.screen()->availableGeometry()).size());
}

QRect placed_on_screen(const QRect& inside, const QRect& available) {
    const QRect room = inner_room(available);
    QRect placed(inside.topLeft(), inside.size().boundedTo(room.size()));
    placed.moveRight(std::min(placed.right(), room.right()));
    placed.moveBottom(std::min(placed.bottom(), room.bottom()));
    placed.moveLeft(std::max(placed.left(), room.left()));
    placed.moveTop(std::max(placed.top(), room.top()));
    return placed;
}

void keep_on_screen(QWidget& window) {
    const auto filling = window.windowState() & (Qt::WindowMaximized | Qt::WindowFullScreen);
    const QRect now = filling != 0 ? window.normalGeometry() : window.geometry();
    const QRect placed = placed_on_screen(now, screen_of(now)->availableGeometry());
    if (placed == now) return;
    if (filling == 0) return window.setGeometry(placed);
    window.setWindowState(window.windowState() & ~filling);
    window.setGeometry(placed);
    window.setWindowState(window.windowState() | filling);
}

}  // namespace roundwright::app
