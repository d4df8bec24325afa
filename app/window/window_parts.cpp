#include "app/window/window_parts.h"

#include <QApplication>
#include <QWidget>

namespace roundwright::app {
namespace {

/// What a Tab can stop at within a part, in the order in which it has done so.
std::vector<QWidget*> stops_of(QWidget* part) {
    std::vector<QWidget*> stops;
    QWidget* at = part;
    do {
        const bool within = at == part || part->isAncestorOf(at);
        if (within && at->window() == part->window() && (at->focusPolicy() & Qt::TabFocus) != 0 &&
            at->focusProxy() == nullptr)
            stops.push_back(at);
        at = at->nextInFocusChain();
    } while (at != part);
    return stops;
}

}  // namespace

WindowParts::WindowParts(QWidget* window) : QObject(window), window_(window) {}

void WindowParts::add(QWidget* part, std::function<bool()> take_keyboard) {
    parts_.push_back({part, std::move(take_keyboard)});
}

/// While the 3D window has the keyboard no widget has it, but the window still knows which one had it.
int WindowParts::part_with_keyboard() const {
    const QWidget* field = QApplication::focusWidget() ? QApplication::focusWidget() : window_->focusWidget();
    for (int k = 0; field != nullptr && k < static_cast<int>(parts_.size()); ++k) {
        const QWidget* part = parts_[static_cast<std::size_t>(k)].widget;
        if (part == field || part->isAncestorOf(field)) return k;
    }
    return -1;
}

void WindowParts::go(int by) {
    const int count = static_cast<int>(parts_.size());
    int at = part_with_keyboard();
    if (at < 0) at = by > 0 ? -1 : count;
    for (int tries = 0; tries < count; ++tries) {
        at = (at + by + count) % count;
        const Part& part = parts_[static_cast<std::size_t>(at)];
        if (part.widget->isVisible() && part.take_keyboard()) return;
    }
}

void WindowParts::order_tabs() {
    QWidget* last = nullptr;
    for (const Part& part : parts_) {
        for (QWidget* stop : stops_of(part.widget)) {
            if (last != nullptr) QWidget::setTabOrder(last, stop);
            last = stop;
        }
    }
}

}  // namespace roundwright::app
