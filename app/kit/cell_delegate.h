#pragma once

#include <QStyledItemDelegate>

class QKeyEvent;

namespace roundwright::app {

/// Edits a cell of a list or table. Enter gives the cell to the model and closes it at once, where
/// QStyledItemDelegate does so by way of the event queue: keys that wait while the program is busy would go
/// to the cell that is done. What is being typed is not replaced by what the model says meanwhile. A cell stays
/// open while another program has the keyboard, where QStyledItemDelegate closes it: whoever comes back types
/// on, and would have begun the cell anew.
class CellDelegate : public QStyledItemDelegate {
    Q_OBJECT
  public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void setEditorData(QWidget* editor, const QModelIndex& index) const override;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

/// Enter of either kind, without a key that makes something else of it.
[[nodiscard]] bool is_enter(const QKeyEvent& key);

}  // namespace roundwright::app
