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

bool is_redo_beside_the_systems(const QKeyEvent& key) {
    return key.key() == Qt::Key_Y && key.modifiers() == Qt::ControlModifier;
}

bool has_typing_to_take_back(const QLineEdit& line) {
    return line.isUndoAvailable() && !(line.text().isEmpty() && line.property(toy_undo_when_empty).toBool());
}

/// A line says that Undo and Redo are its own even when it has nothing to take back.
bool is_undo_for_others(QWidget& widget, QKeyEvent& key) {
    const QLineEdit* line = typed_line(&widget);
    if (!line) return false;
    return (key.matches(QKeySequence::Undo) && !has_typing_to_take_back(*line)) ||
           (key.matches(QKeySequence::Redo) && !line->isRedoAvailable());
}

/// The line whose typing the key brings back; null if it does something else.
QLineEdit* redone_by(QWidget& widget, const QKeyEvent& key) {
    QLineEdit* line = is_redo_beside_the_systems(key) ? typed_line(&widget) : nullptr;
    return line && line->isRedoAvailable() && !line->isReadOnly() ? line : nullptr;
}

/// The line as it stands, with nothing to take back in it.
void forget_typing(QLineEdit& line) {
    const int cursor = line.cursorPosition(), start = line.selectionStart();
    const auto selected = line.selectedText().size();
    line.setText(line.text());
    line.setCursorPosition(cursor);
    if (start >= 0) line.setSelection(start, static_cast<int>(selected));
}

void take_up(QWidget& widget) {
    if (widget.focusPolicy() == Qt::WheelFocus) widget.setFocusPolicy(Qt::StrongFocus);
    auto* number = qobject_cast<QAbstractSpinBox*>(&widget);
    if (!number || number->property("is_taken_up").toBool()) return;
    number->setProperty("is_taken_up", true);
    QObject::connect(number, &QAbstractSpinBox::editingFinished, number, [number] {
        if (QLineEdit* line = typed_line(number)) forget_typing(*line);
    });
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
            take_up(*widget);
            return false;
        case QEvent::KeyPress: {
            QLineEdit* line = redone_by(*widget, *static_cast<QKeyEvent*>(event));
            if (line) line->redo();
            return line != nullptr;
        }
        case QEvent::Wheel:
            if (!is_turned_by_the_wheel(*widget) || widget->hasFocus()) return false;
            event->ignore();  // so that what holds the field scrolls
            return true;
        case QEvent::ShortcutOverride: {
            auto& key = *static_cast<QKeyEvent*>(event);
            const bool is_its_own = is_rename(*widget, key) || redone_by(*widget, key) != nullptr;
            if (!is_its_own && !is_undo_for_others(*widget, key)) return false;
            event->setAccepted(is_its_own);
            return true;
        }
        default:
            return false;
    }
}

}  // namespace roundwright::app
