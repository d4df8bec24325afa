#pragma once

#include <memory>

#include <QStyledItemDelegate>

namespace roundwright::app {

class LivePreview;
class RoundsModel;
class WordsEdit;

/// Editors of the rounds table: a count is typed and shows on the shape as it is typed, a yarn is picked from
/// the toy's, words are typed.
class RoundsDelegate : public QStyledItemDelegate {
    Q_OBJECT
  public:
    explicit RoundsDelegate(RoundsModel& model, QObject* parent = nullptr);
    ~RoundsDelegate() override;

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const override;
    void destroyEditor(QWidget* editor, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

  private:
    void preview(int row, const QString& text) const;
    void try_next_round(const QString& text) const;
    void try_next_words(const WordsEdit& words) const;
    QWidget* words_edit(QWidget* parent, int row) const;
    void preview_words(int row, const WordsEdit& words) const;

    RoundsModel& model_;
    mutable std::unique_ptr<LivePreview> preview_;  ///< of a round there is; the next is only tried out
};

}  // namespace roundwright::app
