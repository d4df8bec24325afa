#include "app/checks/checks_list.h"

#include <algorithm>

#include <QMenu>
#include <QVBoxLayout>

#include "app/checks/checks_delegate.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/true_focus.h"
#include "render/wording/cure_words.h"

namespace roundwright::app {
namespace {

constexpr int rows_shown = 3;
constexpr int lines_of_a_low_screen = 32;  // where the rounds need the height more
constexpr int padding = 6;

}  // namespace

ChecksList::ChecksList(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      model_(session),
      title_(new QLabel(this)),
      view_(new TrueFocus<QListView>(this)),
      nothing_(new QLabel(tr("Nothing to fix."), view_->viewport())) {
    auto* delegate = new ChecksDelegate(view_);
    view_->setModel(&model_);
    view_->setItemDelegate(delegate);
    view_->setAccessibleName(tr("Checks"));
    view_->setResizeMode(QListView::Adjust);
    view_->setFrameShape(QFrame::NoFrame);
    view_->setMouseTracking(true);
    view_->setVerticalScrollMode(QListView::ScrollPerPixel);
    view_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    QFont bold = title_->font();
    bold.setWeight(QFont::DemiBold);
    title_->setFont(bold);
    title_->setMinimumWidth(QFontMetrics(bold).horizontalAdvance(tr("Checks (%1)").arg(888)));
    auto* over_view = new QVBoxLayout(view_->viewport());
    over_view->setContentsMargins(12, 8, 12, 0);
    over_view->addWidget(nothing_, 0, Qt::AlignTop);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(12, padding, 0, padding);
    layout->addWidget(title_, 0, Qt::AlignTop);
    layout->addWidget(view_, 1);
    connect(delegate, &ChecksDelegate::cure_clicked, this, [this](int row) { model_.cure(row); });
    connect(view_, &QListView::clicked, this,
            [this](const QModelIndex& index) { model_.show_place(index.row()); });
    connect(view_, &QListView::activated, this,
            [this](const QModelIndex& index) { model_.show_place(index.row()); });
    view_->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(view_, &QListView::customContextMenuRequested, this, &ChecksList::offer_cures);
    connect(&model_, &QAbstractItemModel::modelAboutToBeReset, this, &ChecksList::keep_current);
    connect(&model_, &QAbstractItemModel::modelReset, this, &ChecksList::follow);
    follow();
}

void ChecksList::follow() {
    const int count = model_.rowCount();
    title_->setText(count == 0 ? tr("Checks") : tr("Checks (%1)").arg(count));
    nothing_->setVisible(count == 0);
    find_current();
}

void ChecksList::keep_current() {
    const QModelIndex current = view_->currentIndex();
    if (!current.isValid()) return;
    current_ = model_.check(current.row());
    current_row_ = current.row();
}

/// The cursor stays on its check while edits bring others and take some away; where that one is gone, it is
/// on what has come into its place.
void ChecksList::find_current() {
    if (!current_ || model_.rowCount() == 0) return;
    int row = 0;
    const auto is_current = [&] {
        const Check& check = model_.check(row);
        return check.code == current_->code && check.piece == current_->piece &&
               check.round == current_->round;
    };
    while (row < model_.rowCount() && !is_current()) ++row;
    if (row == model_.rowCount()) row = std::min(current_row_, row - 1);
    view_->setCurrentIndex(model_.index(row));
}

QSize ChecksList::sizeHint() const {
    const int room = room_on_screen(*this, {QWIDGETSIZE_MAX, QWIDGETSIZE_MAX}).height();
    const bool low = room < lines_of_a_low_screen * fontMetrics().lineSpacing();
    return {view_->sizeHint().width(),
            (low ? 1 : rows_shown) * ChecksDelegate::least_height(fontMetrics()) + 2 * padding};
}

QSize ChecksList::minimumSizeHint() const {
    return {title_->minimumWidth(), ChecksDelegate::least_height(fontMetrics()) + 2 * padding};
}

void ChecksList::offer_cures(const QPoint& place) {
    const QModelIndex under = view_->indexAt(place);
    const QModelIndex index = under.isValid() ? under : view_->currentIndex();
    if (!index.isValid()) return;
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    const Check& check = model_.check(index.row());
    for (const Cure& cure : check.cures) {
        QAction* action = menu->addAction(cure_question(cure).remove(QLatin1Char('?')));
        connect(action, &QAction::triggered, this, [this, check, cure] { model_.apply(check, cure); });
    }
    if (check.cures.empty()) menu->addAction(tr("No fix is known"))->setEnabled(false);
    menu->popup(view_->viewport()->mapToGlobal(place));
}

void ChecksList::step(int by) {
    const int count = model_.rowCount();
    if (count == 0) return;
    const int current = view_->currentIndex().isValid() ? view_->currentIndex().row() : (by > 0 ? -1 : count);
    const int next = (current + by + count) % count;
    view_->setCurrentIndex(model_.index(next));
    model_.show_place(next);
}

bool ChecksList::take_keyboard() {
    view_->setFocus(Qt::ShortcutFocusReason);
    if (!view_->currentIndex().isValid() && model_.rowCount() > 0) view_->setCurrentIndex(model_.index(0));
    return true;
}

void ChecksList::cure_current() {
    if (model_.rowCount() > 0) model_.cure(std::max(0, view_->currentIndex().row()));
}

}  // namespace roundwright::app
