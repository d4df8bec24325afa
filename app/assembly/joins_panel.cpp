#include "app/assembly/joins_panel.h"

#include <QItemSelectionModel>
#include <QKeyEvent>
#include <QScopedValueRollback>
#include <QScrollArea>
#include <QVBoxLayout>

#include "app/assembly/join_edits.h"
#include "app/kit/field_widgets.h"
#include "app/kit/scroll_to_fit.h"
#include "app/kit/true_focus.h"
#include "render/wording/as_sentence.h"

namespace roundwright::app {
namespace {

constexpr int rows_shown = 7;

}  // namespace

JoinsPanel::JoinsPanel(DocumentSession& session, ToyState& state, QWidget* parent)
    : QWidget(parent),
      session_(session),
      state_(state),
      model_(new UnitsModel(session, state, this)),
      list_(new TrueFocus<QListView>),
      together_(new QPushButton(tr("Put it together"))),
      fault_(words_label()),
      fields_(new JoinFields(session.preferences())) {
    build();
    connect_fields();
    connect(&session_, &DocumentSession::toy_changed, this, &JoinsPanel::follow);
    connect(&session_, &DocumentSession::assembled_changed, this, &JoinsPanel::follow);
    connect(&session_, &DocumentSession::file_changed, this, &JoinsPanel::follow);
    connect(&state_, &ToyState::picked_changed, this, &JoinsPanel::follow);
    follow();
}

void JoinsPanel::build() {
    list_->setModel(model_);
    list_->setAccessibleName(tr("Pieces of the toy and what they are sewn to"));
    list_->setToolTip(tr("A tick shows a piece. Enter goes to its rounds."));
    list_->setUniformItemSizes(true);
    list_->installEventFilter(this);
    list_->setMinimumHeight(rows_shown * (list_->fontMetrics().height() + 6) / 2);
    together_->setToolTip(tr("Gives every piece a first place to move from"));
    auto* below = new QWidget;
    auto* column = new QVBoxLayout(below);
    column->setContentsMargins(8, 4, 8, 8);
    column->addWidget(together_, 0, Qt::AlignLeft);
    column->addWidget(fault_);
    column->addWidget(fields_);
    column->addStretch(1);
    auto* scroll = scrolled_column(below);
    scroll->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(list_, 2);
    layout->addWidget(scroll, 3);
}

void JoinsPanel::connect_fields() {
    connect(together_, &QPushButton::clicked, this, &JoinsPanel::put_together);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& index) { pick_row(index.row()); });
    connect(list_, &QListView::doubleClicked, this, &JoinsPanel::opened);
    connect(fields_, &JoinFields::onto_chosen, this, [this](const std::optional<PieceCopy>& onto) {
        if (const ToyUnit* now = unit()) JoinEdits(session_).sew(ToyUnit(*now), onto);
    });
    connect(fields_, &JoinFields::pair_chosen, this, [this](bool pair) {
        const ToyUnit* now = unit();
        if (now != nullptr && now->join) JoinEdits(session_).set_pair(*now->join, pair);
    });
    connect(fields_, &JoinFields::edited, this,
            [this](const QString& step, const JoinFields::Edit& edit, const QString& merge_key) {
                const ToyUnit* now = unit();
                if (now != nullptr && now->join)
                    JoinEdits(session_).change(*now->join, step, edit, merge_key);
            });
}

bool JoinsPanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched == list_ && event->type() == QEvent::KeyPress) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        const bool enter = key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
        if (enter && (key.modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier) {
            Q_EMIT opened();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

bool JoinsPanel::take_keyboard() {
    list_->setFocus(Qt::ShortcutFocusReason);
    return true;
}

const ToyUnit* JoinsPanel::unit() const {
    const int row = model_->row_of(state_.picked());
    return row < 0 ? nullptr : &model_->units()[static_cast<std::size_t>(row)];
}

void JoinsPanel::pick_row(int row) {
    if (showing_ || row < 0 || static_cast<std::size_t>(row) >= model_->units().size()) return;
    const ToyUnit& unit = model_->units()[static_cast<std::size_t>(row)];
    if (!unit.has(state_.picked())) state_.pick(unit.copies.front());
    follow();
}

void JoinsPanel::put_together() { JoinEdits(session_).put_together(); }

void JoinsPanel::follow() {
    const QScopedValueRollback guard(showing_, true);
    const int row = model_->row_of(state_.picked());
    if (row >= 0 && row != list_->currentIndex().row()) list_->setCurrentIndex(model_->index(row));
    together_->setVisible(model_->standing() > 1);
    together_->setEnabled(!session_.read_only());
    const QString fault = model_->fault(row);
    fault_->setVisible(!fault.isEmpty());
    fault_->setText(fault.isEmpty() ? QString() : tr("%1.").arg(as_sentence(fault)));
    const ToyUnit* now = unit();
    fields_->setVisible(now != nullptr && model_->rowCount() > 1);
    fields_->setEnabled(!session_.read_only());
    if (now != nullptr) fields_->show_unit(session_.toy(), *now);
}

}  // namespace roundwright::app
