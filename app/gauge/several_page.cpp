#include "app/gauge/several_page.h"

#include <utility>

#include <QAction>
#include <QDate>
#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QMenu>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/gauge/gauge_pages.h"
#include "app/gauge/measurement_dialog.h"
#include "app/kit/field_widgets.h"
#include "app/kit/true_focus.h"
#include "core/gauge/offered_circle.h"

namespace roundwright::app {

namespace {

constexpr int lines_of_the_list = 10;

QToolButton* button(const QString& words) {
    auto* made = new QToolButton;
    made->setText(words);
    made->setFocusPolicy(Qt::TabFocus);
    return made;
}

std::string today() { return QDate::currentDate().toString(Qt::ISODate).toStdString(); }

}  // namespace

SeveralPage::SeveralPage(DocumentSession& session, QAction* from_finished_piece, QWidget* parent)
    : QWidget(parent),
      session_(session),
      model_(new MeasurementsModel(session, this)),
      list_(new TrueFocus<QListView>),
      disagreement_(words_label(tr("Which measurement disagrees"))),
      add_(button(tr("A&dd"))),
      edit_(button(tr("&Change…"))),
      delete_(button(tr("De&lete"))) {
    list_->setModel(model_);
    add_->setAccessibleName(tr("Add a measurement"));
    edit_->setAccessibleName(tr("Change the measurement"));
    delete_->setAccessibleName(tr("Delete the measurement"));
    list_->setWordWrap(true);
    list_->setSpacing(2);
    list_->setAccessibleName(tr("Measurements"));
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setResizeMode(QListView::Adjust);
    list_->setFixedHeight(lines_of_the_list * fontMetrics().lineSpacing());
    lay_out(from_finished_piece);
    connect(edit_, &QToolButton::clicked, this, &SeveralPage::edit_current);
    connect(delete_, &QToolButton::clicked, this, &SeveralPage::delete_current);
    connect(list_, &QListView::activated, this, &SeveralPage::edit_current);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, &SeveralPage::update_state);
    for (const auto changed : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
        connect(model_, changed, this, &SeveralPage::update_state);
    connect(model_, &QAbstractItemModel::dataChanged, this, &SeveralPage::update_state);
    connect(&session_, &DocumentSession::file_changed, this, &SeveralPage::update_state);
    update_state();
}

void SeveralPage::lay_out(QAction* from_finished_piece) {
    auto* more = new QMenu(add_);
    connect(more->addAction(tr("A gauge &circle…")), &QAction::triggered, this, &SeveralPage::add_circle);
    connect(more->addAction(tr("A &swatch…")), &QAction::triggered, this, &SeveralPage::add_swatch);
    if (from_finished_piece != nullptr) more->addAction(from_finished_piece);
    add_->setMenu(more);
    add_->setPopupMode(QToolButton::InstantPopup);
    auto* buttons = new QHBoxLayout;
    for (QToolButton* one : {add_, edit_, delete_}) buttons->addWidget(one);
    buttons->addStretch(1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(remark(tr("Each counts by how well it is known. Untick what should not count.")));
    layout->addWidget(list_);
    layout->addLayout(buttons);
    layout->addWidget(disagreement_);
}

void SeveralPage::ask(GaugeMeasurement measurement, std::function<void(const GaugeMeasurement&)> use) {
    auto* dialog = new MeasurementDialog(session_, std::move(measurement), window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [dialog, use = std::move(use)] { use(dialog->measurement()); });
    dialog->open();
}

void SeveralPage::add_circle() {
    ask({offered_circle, {}, today()}, [this](const GaugeMeasurement& made) { model_->add(made); });
}

void SeveralPage::add_swatch() {
    ask({unmeasured_swatch(session_.preferences().units()), {}, today()},
        [this](const GaugeMeasurement& made) { model_->add(made); });
}

void SeveralPage::edit_current() {
    const auto row = static_cast<std::size_t>(list_->currentIndex().row());
    if (row >= model_->measurements().size() || session_.read_only()) return;
    const GaugeMeasurement before = model_->measurements()[row];
    ask(before, [this, row, before](const GaugeMeasurement& made) {
        const auto& now = model_->measurements();  // an undo may have come between
        if (row < now.size() && now[row] == before) model_->replace(static_cast<int>(row), made);
    });
}

void SeveralPage::delete_current() {
    const int row = list_->currentIndex().row();
    if (row >= 0 && static_cast<std::size_t>(row) < model_->measurements().size()) model_->remove(row);
}

void SeveralPage::update_state() {
    const bool may = !session_.read_only();
    const bool has_one = may && list_->currentIndex().isValid();
    add_->setEnabled(may && model_->has_room());
    edit_->setEnabled(has_one);
    delete_->setEnabled(has_one);
    const QString words = model_->disagreement();
    disagreement_->setText(words);
    disagreement_->setVisible(!words.isEmpty());
}

QString SeveralPage::disagreement() const { return disagreement_->text(); }

}  // namespace roundwright::app
