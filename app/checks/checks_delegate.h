#pragma once

#include <QStyledItemDelegate>

namespace roundwright::app {

/// A check as its sign, its sentence and a button for its first cure.
class ChecksDelegate : public QStyledItemDelegate {
    Q_OBJECT
  public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    /// Of a sentence of one line, with room for its button.
    [[nodiscard]] static int least_height(const QFontMetrics& metrics);
    /// Room for the whole sentence.
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    bool editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                     const QModelIndex& index) override;

  Q_SIGNALS:
    void cure_clicked(int row);
};

}  // namespace roundwright::app
