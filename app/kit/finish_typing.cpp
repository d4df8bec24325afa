#include "app/kit/finish_typing.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>

namespace roundwright::app {
namespace {

/// The view that has the widget as the editor of a cell; null where it is none.
QAbstractItemView* view_edited_by(const QWidget& editor) {
    QWidget* viewport = editor.parentWidget();
    auto* view = viewport ? qobject_cast<QAbstractItemView*>(viewport->parentWidget()) : nullptr;
    return view && view->viewport() == viewport ? view : nullptr;
}

/// Of a window that another program has taken the keyboard from, the field that had it.
QWidget* field_being_typed_in() {
    if (QWidget* field = QApplication::focusWidget()) return field;
    for (const QWidget* window : QApplication::topLevelWidgets()) {
        QWidget* field = window->focusWidget();
        if (field && field->isVisible()) return field;
    }
    return nullptr;
}

}  // namespace

QLineEdit* typed_line(QWidget* field) {
    if (auto* line = qobject_cast<QLineEdit*>(field)) return line;
    if (auto* box = qobject_cast<QComboBox*>(field)) return box->lineEdit();
    return qobject_cast<QAbstractSpinBox*>(field) ? field->findChild<QLineEdit*>() : nullptr;
}

void finish_typing() {
    QWidget* field = field_being_typed_in();
    if (!field) return;
    if (auto* view = view_edited_by(*field)) {
        auto* delegate = view->itemDelegate();
        Q_EMIT delegate->commitData(field);
        Q_EMIT delegate->closeEditor(field, QAbstractItemDelegate::NoHint);
    } else if (auto* box = qobject_cast<QAbstractSpinBox*>(field)) {
        box->interpretText();
    } else if (auto* line = typed_line(field)) {
        Q_EMIT line->editingFinished();
    }
}

}  // namespace roundwright::app
