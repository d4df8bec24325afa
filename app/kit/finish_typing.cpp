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

void finish(QWidget* field) {
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

}  // namespace

QLineEdit* typed_line(QWidget* field) {
    if (auto* line = qobject_cast<QLineEdit*>(field)) return line;
    if (auto* box = qobject_cast<QComboBox*>(field)) return box->lineEdit();
    return qobject_cast<QAbstractSpinBox*>(field) ? field->findChild<QLineEdit*>() : nullptr;
}

void finish_typing() {
    if (QWidget* field = QApplication::focusWidget()) return finish(field);
    // Another program has the keyboard: each window has the field that it will go back to.
    for (const QWidget* window : QApplication::topLevelWidgets()) {
        QWidget* field = window->focusWidget();
        if (field && field->isVisible()) finish(field);
    }
}

}  // namespace roundwright::app
