#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QLineEdit>
#include <QPointer>

#include "app/kit/cell_delegate.h"
#include "app/session/typed.h"

namespace roundwright {
struct Toy;
}

namespace roundwright::app {

class LivePreview;
class RoundsModel;
class WordsEdit;

/// Editors of the rounds table: a count is typed and shows on the shape as it is typed, a yarn is picked from
/// the toy's, words are typed. What is given to the toy is what the editor says, if it says something else
/// than it began with; what the shape shows meanwhile has no part in it.
class RoundsDelegate : public CellDelegate {
    Q_OBJECT
  public:
    /// The key that ends an edit, and says where to go on.
    enum class Ending { enter, up, down, tab, backtab };

    explicit RoundsDelegate(RoundsModel& model, QObject* parent = nullptr);
    ~RoundsDelegate() override;

    /// What stands in the cell that is being edited, if it is something else than the cell held.
    [[nodiscard]] std::optional<TypedCell> typed() const;

    /// What is said of the words that are being typed; empty where none are.
    [[nodiscard]] QString spoken_hint() const;

    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const override;
    void destroyEditor(QWidget* editor, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

  Q_SIGNALS:
    void typed_changed();
    void offer_chosen(const QString& words);
    /// The maker asks to end the edit. The view gives it to the model, closes it and goes on, before the next
    /// key.
    void ended(QWidget* editor, QPersistentModelIndex cell, roundwright::app::RoundsDelegate::Ending how);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// The edit that is open, as it was when it began, whatever is selected or shown later.
    struct Open {
        QPersistentModelIndex cell;
        std::vector<int> rounds;               ///< that a count or yarn is for; none: the next round
        QString text;                          ///< what the editor began with
        QPointer<QLineEdit> line;              ///< the editor, if it is a line
        std::unique_ptr<LivePreview> preview;  ///< of a round there is; the next is only tried out
    };

    void say(QWidget* editor, const QModelIndex& index) const;
    void show(Toy toy) const;
    void preview(int row, const QString& text) const;
    void try_next_round(const QString& text) const;
    void try_next_words(const WordsEdit& words) const;
    void follow_line(QLineEdit* line) const;
    QLineEdit* words_edit(QWidget* parent, int row) const;
    void preview_words(int row, const WordsEdit& words) const;

    RoundsModel& model_;
    mutable Open open_;  // mutable: the editors of a delegate come and go by its const functions
};

}  // namespace roundwright::app
