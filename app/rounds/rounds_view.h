#pragma once

#include <QTableView>

#include "app/kit/true_focus.h"
#include "app/rounds/rounds_delegate.h"

namespace roundwright::app {

class RoundsModel;

/// The table of rounds and its keyboard: type a number, +6, -6 or = to set a count, letters to write words;
/// Enter goes on to the next round; F2 or Tab goes to the words.
class RoundsView : public TrueFocus<QTableView> {
    Q_OBJECT
  public:
    explicit RoundsView(RoundsModel& model, QWidget* parent = nullptr);

    /// Puts the cursor on the row for the next round.
    void go_to_next_round();
    void edit_words();
    void edit_count();
    /// What is typed into a cell and not entered yet.
    [[nodiscard]] std::optional<TypedCell> typed() const;
    /// What is said of the words that are being typed.
    [[nodiscard]] QString spoken_hint() const;
    /// Puts it back into its cell, ready to be gone on with.
    void bring_back(const TypedCell& typed);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void typed_changed();
    void offer_chosen(const QString& words);

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
    void selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) override;

  private:
    [[nodiscard]] QModelIndex current_in(int column) const;
    bool begin_typing(QKeyEvent* event);
    void go_on();
    void end_edit(QWidget* editor, const QPersistentModelIndex& cell, RoundsDelegate::Ending how);
    /// `put_in`: rounds that the edit put in after the cell.
    void go_on_from(const QModelIndex& cell, RoundsDelegate::Ending how, int put_in);
    void tell_selection();
    void go_to_row(int row, Qt::KeyboardModifiers modifiers = {});
    void open_editor(int column, QEvent* event = nullptr);
    void show_selection(const std::vector<int>& rounds);
    void fit_columns();
    [[nodiscard]] int columns_width() const;

    RoundsModel& model_;
    RoundsDelegate* delegate_;
    bool taking_selection_ = false;
    bool ending_edit_ = false;
    QPersistentModelIndex anchor_;  ///< where a selection with Shift began
};

}  // namespace roundwright::app
