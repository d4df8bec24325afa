#include "app/kit/cell_delegate.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>

namespace roundwright::app {

namespace {

bool goes_to_another_program(const QEvent& event) {
    return event.type() == QEvent::FocusOut &&
           static_cast<const QFocusEvent&>(event).reason() == Qt::ActiveWindowFocusReason &&
           !QApplication::activeWindow();
}

}  // namespace

bool is_enter(const QKeyEvent& key) {
    const bool plain = (key.modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier)) == 0;
    return plain && (key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter);
}

void CellDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    const auto* line = qobject_cast<const QLineEdit*>(editor);
    if (!line || !line->isModified()) QStyledItemDelegate::setEditorData(editor, index);
}

bool CellDelegate::eventFilter(QObject* watched, QEvent* event) {
    if (goes_to_another_program(*event)) return false;
    auto* editor = qobject_cast<QWidget*>(watched);
    if (!editor || event->type() != QEvent::KeyPress || !is_enter(*static_cast<QKeyEvent*>(event)))
        return QStyledItemDelegate::eventFilter(watched, event);
    Q_EMIT commitData(editor);
    Q_EMIT closeEditor(editor, SubmitModelCache);
    return true;
}

}  // namespace roundwright::app
