#include "app/rounds/rounds_view.h"

#include <algorithm>

#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QScopedValueRollback>

#include "app/rounds/rounds_delegate.h"
#include "app/rounds/rounds_model.h"
#include "app/rounds/words_edit.h"

namespace roundwright::app {
namespace {

constexpr int cell_padding = 14;  // left and right
constexpr int beside_sign = 6;    // between a sign and its word

constexpr int column(RoundColumn column) { return static_cast<int>(column); }

bool starts_a_count(const QString& typed) {
    return typed.size() == 1 &&
           (typed.front().isDigit() || QStringLiteral("+-=\u2212").contains(typed.front()));
}

bool starts_words(const QString& typed) {
    return typed.size() == 1 && (typed.front().isLetter() || QStringLiteral("[(*").contains(typed.front()));
}

}  // namespace

RoundsView::RoundsView(RoundsModel& model, QWidget* parent)
    : TrueFocus(parent), model_(model), delegate_(new RoundsDelegate(model, this)) {
    setModel(&model_);
    connect(delegate_, &RoundsDelegate::ended, this, &RoundsView::end_edit);
    connect(delegate_, &RoundsDelegate::typed_changed, this, &RoundsView::typed_changed);
    connect(delegate_, &RoundsDelegate::offer_chosen, this, &RoundsView::offer_chosen);
    setItemDelegate(delegate_);
    setSelectionBehavior(SelectRows);
    setSelectionMode(ExtendedSelection);
    setEditTriggers(DoubleClicked | AnyKeyPressed);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setAlternatingRowColors(true);
    setWordWrap(false);
    setTextElideMode(Qt::ElideRight);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);  // so that the columns stay where they are
    setHorizontalScrollMode(ScrollPerPixel);
    setVerticalScrollMode(ScrollPerPixel);
    setAccessibleName(tr("Rounds"));
    verticalHeader()->hide();
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionsClickable(false);
    horizontalHeader()->setMinimumSectionSize(20);
    fit_columns();
    connect(&model_.session(), &DocumentSession::selection_changed, this, &RoundsView::show_selection);
    connect(&model_, &QAbstractItemModel::modelReset, this, [this] {
        show_selection(model_.session().selection());
        if (!currentIndex().isValid()) go_to_next_round();
    });
    go_to_next_round();
}

QSize RoundsView::sizeHint() const {
    return {columns_width() + fontMetrics().horizontalAdvance(QStringLiteral("[3 sc, inc] x 6, sc in 12")),
            400};
}

QSize RoundsView::minimumSizeHint() const {
    constexpr int rows_always_seen = 2;
    return {
        columns_width() + fontMetrics().horizontalAdvance(QStringLiteral("[3 sc, inc] x 6")) +
            cell_padding / 2 - beside_sign,
        horizontalHeader()->sizeHint().height() + rows_always_seen * verticalHeader()->defaultSectionSize()};
}

/// All columns but the words.
int RoundsView::columns_width() const {
    int width = style()->pixelMetric(QStyle::PM_ScrollBarExtent);
    for (int at = 0; at < round_columns; ++at) {
        if (at != column(RoundColumn::words)) width += columnWidth(at);
    }
    return width;
}

void RoundsView::fit_columns() {
    const QFontMetrics metrics = fontMetrics();
    const int sign = metrics.height() + 4;
    const auto fit = [&](RoundColumn which, const QString& widest, int more = 0) {
        const QString head = model_.headerData(column(which), Qt::Horizontal, Qt::DisplayRole).toString();
        const int text = std::max(metrics.horizontalAdvance(widest), metrics.horizontalAdvance(head));
        setColumnWidth(column(which), text + cell_padding + more);
    };
    verticalHeader()->setDefaultSectionSize(metrics.height() + 12);
    setIconSize({metrics.height(), metrics.height()});
    fit(RoundColumn::number, QStringLiteral("\u2713 888"), sign);
    fit(RoundColumn::stitches, QStringLiteral("8888"));
    fit(RoundColumn::change, QStringLiteral("+888"));
    fit(RoundColumn::yarn, QStringLiteral("A"), sign);
    fit(RoundColumn::lie, tr("lies flat"), sign + beside_sign);
    fit(RoundColumn::width, QStringLiteral("888"));
    horizontalHeader()->setSectionResizeMode(column(RoundColumn::words), QHeaderView::Stretch);
}

void RoundsView::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) fit_columns();
}

void RoundsView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    if (currentIndex().isValid()) scrollTo(currentIndex());
}

// --- selection: the session's, shown here

void RoundsView::selectionChanged(const QItemSelection& selected, const QItemSelection& deselected) {
    QTableView::selectionChanged(selected, deselected);
    tell_selection();
}

void RoundsView::tell_selection() {
    if (taking_selection_) return;
    const QScopedValueRollback guard(taking_selection_, true);
    if (selectionModel()->selectedRows().size() == 1) anchor_ = selectionModel()->selectedRows().front();
    std::vector<int> rounds;
    for (const auto& index : selectionModel()->selectedRows()) {
        if (!model_.is_next_round(index)) rounds.push_back(index.row());
    }
    model_.session().select_rounds(std::move(rounds));
}

void RoundsView::show_selection(const std::vector<int>& rounds) {
    if (taking_selection_) return;
    const QScopedValueRollback guard(taking_selection_, true);
    QItemSelection selection;
    for (const int round : rounds)
        selection.select(model_.index(round, 0), model_.index(round, round_columns - 1));
    selectionModel()->select(selection, QItemSelectionModel::ClearAndSelect);
    if (rounds.empty()) return;
    const auto first = model_.index(rounds.front(), column(RoundColumn::stitches));
    selectionModel()->setCurrentIndex(first, QItemSelectionModel::NoUpdate);
    anchor_ = first;
    scrollTo(first);
}

// --- keyboard

QModelIndex RoundsView::current_in(int column) const {
    return currentIndex().isValid() ? currentIndex().siblingAtColumn(column) : QModelIndex();
}

/// With Shift the selection reaches from where it began to the row, without it the row alone is selected.
void RoundsView::go_to_row(int row, Qt::KeyboardModifiers modifiers) {
    row = std::clamp(row, 0, model_.rowCount() - 1);
    const auto target = model_.index(row, column(RoundColumn::stitches));
    if (!target.isValid()) return;
    const bool extend = (modifiers & Qt::ShiftModifier) != 0 && anchor_.isValid();
    if (!extend) anchor_ = target;
    const auto [first, last] = std::minmax({anchor_.row(), row});
    selectionModel()->setCurrentIndex(target, QItemSelectionModel::NoUpdate);
    selectionModel()->select({model_.index(first, 0), model_.index(last, round_columns - 1)},
                             QItemSelectionModel::ClearAndSelect);
    scrollTo(target);
}

void RoundsView::go_to_next_round() { go_to_row(model_.rowCount() - 1); }

void RoundsView::go_on() {
    if (!currentIndex().isValid()) return go_to_next_round();
    go_to_row(currentIndex().row() + 1);
}

void RoundsView::open_editor(int column, QEvent* event) {
    const auto target = current_in(column);
    if (!target.isValid() || (model_.flags(target) & Qt::ItemIsEditable) == 0) return;
    selectionModel()->setCurrentIndex(target, QItemSelectionModel::NoUpdate);
    edit(target, event ? AnyKeyPressed : AllEditTriggers, event);
}

void RoundsView::edit_words() { open_editor(column(RoundColumn::words)); }

void RoundsView::edit_count() { open_editor(column(RoundColumn::stitches)); }

std::optional<TypedCell> RoundsView::typed() const { return delegate_->typed(); }

QString RoundsView::spoken_hint() const { return delegate_->spoken_hint(); }

void RoundsView::bring_back(const TypedCell& typed) {
    setFocus(Qt::OtherFocusReason);
    go_to_row(typed.round);
    typed.words ? edit_words() : edit_count();
    QWidget* cell = viewport()->focusWidget();
    if (auto* words = qobject_cast<WordsEdit*>(cell)) return words->bring_back(typed.text);
    auto* line = qobject_cast<QLineEdit*>(cell);
    if (!line) return;
    line->selectAll();
    line->insert(typed.text);  // as if it had been typed
}

/// A number or sign begins a count, a letter or bracket begins words.
bool RoundsView::begin_typing(QKeyEvent* event) {
    const auto others = Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier;
    if ((event->modifiers() & others) != 0) return false;
    if (starts_a_count(event->text())) {
        open_editor(column(RoundColumn::stitches), event);
    } else if (starts_words(event->text())) {
        open_editor(column(RoundColumn::words), event);
    } else {
        return false;
    }
    return true;
}

/// Tab would leave the table before keyPressEvent saw it.
bool RoundsView::event(QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const auto words = current_in(column(RoundColumn::words));
        const bool can_edit = words.isValid() && (model_.flags(words) & Qt::ItemIsEditable) != 0;
        if (key->key() == Qt::Key_Tab && key->modifiers() == Qt::NoModifier && can_edit) {
            edit_words();
            return true;
        }
    }
    return QTableView::event(event);
}

void RoundsView::keyPressEvent(QKeyEvent* event) {
    if (state() == EditingState) return;  // keys that the editor has no use for
    if (begin_typing(event)) return;
    const bool plain = (event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier)) == 0;
    switch (plain ? event->key() : Qt::Key_unknown) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return go_on();
        case Qt::Key_F2:
            return edit_words();
        case Qt::Key_Up:
            return go_to_row(currentIndex().row() - 1, event->modifiers());
        case Qt::Key_Down:
            return go_to_row(currentIndex().row() + 1, event->modifiers());
        case Qt::Key_Home:
            return go_to_row(0, event->modifiers());
        case Qt::Key_End:
            return go_to_row(model_.rowCount() - 1, event->modifiers());
        default:
            QTableView::keyPressEvent(event);
    }
}

// --- the end of an edit

/// All at once, so that the next key, however long it has waited, finds the next cell.
void RoundsView::end_edit(QWidget* editor, const QPersistentModelIndex& cell, RoundsDelegate::Ending how) {
    const int rounds = model_.rounds();
    const bool next_round = cell.row() >= rounds;
    {
        const QScopedValueRollback guard(ending_edit_, true);
        commitData(editor);
        closeEditor(editor, QAbstractItemDelegate::NoHint);
    }
    const int put_in = model_.rounds() - rounds - (next_round ? 1 : 0);
    go_on_from(cell, how, std::max(put_in, 0));
}

void RoundsView::go_on_from(const QModelIndex& cell, RoundsDelegate::Ending how, int put_in) {
    const bool from_words = cell.column() == column(RoundColumn::words);
    const bool from_count =
        cell.column() == column(RoundColumn::stitches) || cell.column() == column(RoundColumn::change);
    switch (how) {
        case RoundsDelegate::Ending::enter:
        case RoundsDelegate::Ending::down:
            return go_to_row(cell.row() + 1 + put_in);
        case RoundsDelegate::Ending::up:
            return go_to_row(cell.row() - 1);
        case RoundsDelegate::Ending::tab:
            go_to_row(cell.row());
            if (from_count) return edit_words();
            if (from_words) focusNextChild();
            return;
        case RoundsDelegate::Ending::backtab:
            return go_to_row(cell.row());
    }
}

/// However an edit ends, the cursor stays in its cell; what moves it on are the keys. (QAbstractItemView
/// moves on when its current cell changes under an editor, which then is somewhere else already.)
void RoundsView::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    if (hint == QAbstractItemDelegate::RevertModelCache) setFocus();
    if (!ending_edit_) tell_selection();  // the next round is a round now
}

}  // namespace roundwright::app
