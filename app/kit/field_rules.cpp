#include "app/kit/field_rules.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QScrollBar>
#include <QTabBar>

#include "app/kit/finish_typing.h"

namespace roundwright::app {
namespace {

bool is_turned_by_the_wheel(const QWidget& widget) {
    if (qobject_cast<const QScrollBar*>(&widget)) return false;
    return qobject_cast<const QAbstractSpinBox*>(&widget) || qobject_cast<const QComboBox*>(&widget) ||
           qobject_cast<const QAbstractSlider*>(&widget);
}

bool acts_without_the_keyboard(const QWidget& widget) {
    const bool acts = qobject_cast<const QAbstractButton*>(&widget) || qobject_cast<const QTabBar*>(&widget);
    const QWidget* field = QApplication::focusWidget();
    return acts && !(field && field->isAncestorOf(&widget));
}

/// The menu of a line's own, with Cut and Paste, belongs to the typing.
bool is_menu_of_a_line(const QMenu& menu) { return typed_line(menu.parentWidget()) != nullptr; }

/// Alt goes to the menu bar, which gives the keyboard back to what had it: better not to an editor that is
/// gone.
bool goes_to_the_menus(const QEvent& event) {
    return static_cast<const QKeyEvent&>(event).key() == Qt::Key_Alt;
}

/// Whether what happens comes after what is being typed.
bool ends_typing(const QWidget& widget, const QEvent& event) {
    switch (event.type()) {
        case QEvent::KeyPress:
            return goes_to_the_menus(event);
        case QEvent::MouseButtonPress:
            return acts_without_the_keyboard(widget);
        case QEvent::Show: {
            const auto* menu = qobject_cast<const QMenu*>(&widget);
            return menu && !is_menu_of_a_line(*menu);
        }
        case QEvent::Close:
            return widget.windowType() == Qt::Window || widget.windowType() == Qt::Dialog;  // and no tip
        case QEvent::Drop:
            return true;
        default:
            return false;
    }
}

/// A line says that Undo and Redo are its own even when it has nothing to take back.
bool is_undo_for_others(QWidget& widget, QKeyEvent& key) {
    const QLineEdit* line = typed_line(&widget);
    if (!line) return false;
    return (key.matches(QKeySequence::Undo) && !line->isUndoAvailable()) ||
           (key.matches(QKeySequence::Redo) && !line->isRedoAvailable());
}

/// F2 renames in a list that is edited by it, whatever it does elsewhere in the window.
bool is_rename(const QWidget& widget, const QKeyEvent& key) {
    const auto* view = qobject_cast<const QAbstractItemView*>(&widget);
    return view && key.key() == Qt::Key_F2 && key.modifiers() == Qt::NoModifier &&
           view->editTriggers().testFlag(QAbstractItemView::EditKeyPressed);
}

}  // namespace

FieldRules::FieldRules(QObject* parent) : QObject(parent) { qApp->installEventFilter(this); }

void FieldRules::hold() {
    if (!qApp->findChild<FieldRules*>(QString(), Qt::FindDirectChildrenOnly)) new FieldRules(qApp);
}

bool FieldRules::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Shortcut) finish_typing();
    auto* widget = watched->isWidgetType() ? static_cast<QWidget*>(watched) : nullptr;
    if (!widget) return false;
    if (ends_typing(*widget, *event)) finish_typing();
    switch (event->type()) {
        case QEvent::Polish:
            if (widget->focusPolicy() == Qt::WheelFocus) widget->setFocusPolicy(Qt::StrongFocus);
            return false;
        case QEvent::Wheel:
            if (!is_turned_by_the_wheel(*widget) || widget->hasFocus()) return false;
            event->ignore();  // so that what holds the field scrolls
            return true;
        case QEvent::ShortcutOverride: {
            auto& key = *static_cast<QKeyEvent*>(event);
            const bool rename = is_rename(*widget, key);
            if (!rename && !is_undo_for_others(*widget, key)) return false;
            event->setAccepted(rename);
            return true;
        }
        default:
            return false;
    }
}

}  // namespace roundwright::app
