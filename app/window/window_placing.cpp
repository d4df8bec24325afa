#include "app/window/window_placing.h"

#include <algorithm>

#include <QApplication>
#include <QBoxLayout>
#include <QEvent>
#include <QFontMetrics>
#include <QShortcut>
#include <QWidget>

#include "app/kit/action_keys.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/scroll_to_fit.h"

namespace roundwright::app {
namespace {

const auto close_keys = QStringLiteral("close-keys");

void close_by_key(QWidget& window) {
    const KeyList keys = ActionKeys::instance().keys(QStringLiteral("beside.close"));
    auto* shortcut = window.findChild<QShortcut*>(close_keys, Qt::FindDirectChildrenOnly);
    if (shortcut != nullptr) return shortcut->setKeys(keys);
    shortcut = new QShortcut(&window);
    shortcut->setKeys(keys);
    shortcut->setObjectName(close_keys);
    QObject::connect(shortcut, &QShortcut::activated, &window, &QWidget::close);
}

/// Some dialogs take their least size from their layout alone.
void widen_for_title(QWidget& window) {
    const int room = room_on_screen(window, {QWIDGETSIZE_MAX, QWIDGETSIZE_MAX}).width();
    const int wanted = std::min(WindowPlacing::title_width(window), room);
    if (window.minimumWidth() >= wanted) return;
    auto* column = qobject_cast<QVBoxLayout*>(window.layout());
    if (column != nullptr && column->sizeConstraint() != QLayout::SetDefaultConstraint) {
        column->addStrut(wanted - column->contentsMargins().left() - column->contentsMargins().right());
        column->activate();
    } else {
        window.setMinimumWidth(wanted);
    }
    if (window.width() < wanted) window.resize(wanted, window.height());
}

/// In the middle of the window it belongs to, unless it has a place of its own.
void place(QWidget& window) {
    if (!window.testAttribute(Qt::WA_Moved)) {
        QRect middle(QPoint(), window.size());
        middle.moveCenter(window.parentWidget()->window()->geometry().center());
        window.setGeometry(middle);
    }
    keep_on_screen(window);
}

}  // namespace

WindowPlacing::WindowPlacing(QWidget& main_window) : QObject(&main_window), main_window_(main_window) {
    qApp->installEventFilter(this);
}

int WindowPlacing::title_width(const QWidget& window) {
    constexpr int icon_and_buttons = 150;
    QFont bold = QApplication::font();
    bold.setBold(true);
    QString title = window.windowTitle().remove(QStringLiteral("[*]"));
    // The platform adds the program's name.
    if (const QString program = QGuiApplication::applicationDisplayName(); !program.isEmpty())
        title += QStringLiteral(" \u2014 ") + program;
    return QFontMetrics(bold).horizontalAdvance(title) + icon_and_buttons;
}

bool WindowPlacing::is_ours(const QWidget& window) const {
    const bool titled = window.windowType() == Qt::Window || window.windowType() == Qt::Dialog;
    const QWidget* owner = window.parentWidget();
    while (owner != nullptr && owner != &main_window_) owner = owner->parentWidget();
    return titled && owner == &main_window_;
}

bool WindowPlacing::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::Show || event->spontaneous() || !watched->isWidgetType()) return false;
    auto& window = *static_cast<QWidget*>(watched);
    if (!is_ours(window)) return false;
    close_by_key(window);
    widen_for_title(window);
    scroll_to_fit(window);
    place(window);
    return false;
}

}  // namespace roundwright::app
