#include "app/reshape/reshape_answers.h"

#include <algorithm>

#include <QHeaderView>
#include <QItemSelectionModel>
#include <QLabel>
#include <QScreen>
#include <QSignalBlocker>
#include <QStyle>
#include <QTableView>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/true_focus.h"
#include "app/reshape/rounds_comparison_model.h"
#include "app/reshape/ways_model.h"
#include "render/wording/measure_words.h"

namespace roundwright::app {
namespace {

constexpr int least_width = 340;

QTableView* quiet_table(const QString& name, QAbstractItemModel* model) {
    auto* table = new TrueFocus<QTableView>;
    table->setModel(model);
    table->setAccessibleName(name);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setTabKeyNavigation(false);
    table->setShowGrid(false);
    table->setWordWrap(false);
    table->setStyleSheet(QStringLiteral("QTableView::item { padding: 0 6px; }"));
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() + 10);
    table->horizontalHeader()->setHighlightSections(false);
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    return table;
}

// Columns are as wide as their words; a scroll bar may stand beside them. Where large type leaves no room on
// the screen for that beside the picture, the table scrolls.
int width_of_columns(QTableView& table) {
    table.resizeColumnsToContents();
    const int wanted = table.horizontalHeader()->length() + 2 * table.frameWidth() +
                       table.style()->pixelMetric(QStyle::PM_ScrollBarExtent, nullptr, &table);
    return std::min(wanted, ReshapeAnswers::most_width(table));
}

}  // namespace

ReshapeAnswers::ReshapeAnswers(const Preferences& preferences, QWidget* parent)
    : QWidget(parent),
      frog_back_(words_label(tr("What to undo"))),
      answer_(words_label(tr("What you get"))),
      remarks_(words_label(tr("Remarks on the new rounds"))),
      now_(words_label(tr("The piece now"))),
      ways_title_(new QLabel(tr("Or undo less and get:"))),
      ways_model_(new WaysModel(preferences, this)),
      rounds_model_(new RoundsComparisonModel(this)) {
    ways_ = quiet_table(tr("Other ways to go on"), ways_model_);
    rounds_ = quiet_table(tr("Rounds, now and new"), rounds_model_);
    rounds_->horizontalHeader()->setStretchLastSection(true);
    frog_back_->setFont(larger_font(frog_back_->font(), 1.2, QFont::DemiBold));
    for (auto* quiet : {remarks_, now_}) quiet->setForegroundRole(QPalette::PlaceholderText);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(frog_back_);
    layout->addWidget(answer_);
    layout->addWidget(remarks_);
    layout->addWidget(now_);
    layout->addWidget(ways_title_);
    layout->addWidget(ways_, 2);
    layout->addWidget(rounds_, 3);
    setMinimumWidth(least_width);
    connect(ways_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) {
                if (!current.isValid()) return;
                Q_EMIT way_chosen(ways_model_->ways()[static_cast<std::size_t>(current.row())]);
            });
    show_ways({});
    show_nothing({});
}

int ReshapeAnswers::most_width(const QWidget& window) {
    constexpr double most_of_screen = 0.46;
    constexpr int always_room = 480;
    return std::max(always_room,
                    static_cast<int>(most_of_screen * window.screen()->availableGeometry().width()));
}

void ReshapeAnswers::stand_under_the_picture() {
    under_the_picture_ = true;
    constexpr int rows_seen = 5;
    setMinimumWidth(0);
    for (auto* table : {ways_, rounds_})
        table->setMinimumHeight(rows_seen * table->verticalHeader()->defaultSectionSize());
}

void ReshapeAnswers::show_now(const QString& words) { now_->setText(sizes_kept_whole(words)); }

void ReshapeAnswers::show_answer(const Words& words, const Comparison& rounds) {
    words_ = words;
    answer_->setText(sizes_kept_whole(words.answer));
    frog_back_->setText(words.frog_back);
    frog_back_->setVisible(!words.frog_back.isEmpty());
    remarks_->setText(words.remarks);
    remarks_->setVisible(!words.remarks.isEmpty());
    rounds_model_->set_comparison(rounds);
}

void ReshapeAnswers::show_nothing(const QString& why) { show_answer({why, {}, {}}, {}); }

void ReshapeAnswers::show_ways(std::vector<WayOn> ways) {
    const QSignalBlocker quiet(ways_->selectionModel());
    const bool choice = !ways.empty();
    ways_model_->set_ways(std::move(ways));
    ways_title_->setVisible(choice);
    ways_->setVisible(choice);
    ways_->setMinimumWidth(choice && !under_the_picture_ ? width_of_columns(*ways_) : 0);
    if (choice) ways_->selectRow(0);
}

QString ReshapeAnswers::answer() const { return words_.answer; }

QString ReshapeAnswers::frog_back() const { return words_.frog_back; }

}  // namespace roundwright::app
