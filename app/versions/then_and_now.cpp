#include "app/versions/then_and_now.h"

#include <algorithm>

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QSignalBlocker>
#include <QTableView>
#include <QVBoxLayout>

#include "app/kit/true_focus.h"
#include "app/reshape/outline_view.h"
#include "core/differences/differences.h"
#include "core/differences/piece_differences.h"
#include "core/study/piece_study.h"
#include "render/wording/piece_name.h"
#include "render/wording/printable.h"

namespace roundwright::app {
namespace {

QTableView* quiet_table(QAbstractItemModel* model, const QString& name) {
    auto* table = new TrueFocus<QTableView>;
    table->setModel(model);
    table->setAccessibleName(name);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->setTabKeyNavigation(false);
    table->setShowGrid(false);
    table->setWordWrap(false);
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() + 10);
    table->horizontalHeader()->setHighlightSections(false);
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->horizontalHeader()->setStretchLastSection(true);
    return table;
}

}  // namespace

ThenAndNow::ThenAndNow(const Preferences& preferences, QWidget* parent)
    : QWidget(parent), rounds_(new RoundsThenAndNowModel(this)) {
    build(preferences);
    connect(pieces_, &QComboBox::currentIndexChanged, this, &ThenAndNow::show_piece);
    connect(pieces_, &QComboBox::activated, this, [this] { looked_at_ = pieces_->currentText(); });
    show_nothing();
}

void ThenAndNow::build(const Preferences& preferences) {
    pieces_ = new QComboBox;
    outline_ = new OutlineView(preferences);
    outline_->setAccessibleName(tr("The outline of the piece then, with that of now behind it"));
    legend_ = new QLabel;
    legend_->setTextFormat(Qt::PlainText);
    legend_->setWordWrap(true);
    legend_->setForegroundRole(QPalette::PlaceholderText);
    auto* table = quiet_table(rounds_, tr("Rounds, then and now"));
    const int room = table->fontMetrics().horizontalAdvance(QLatin1Char('0'));
    table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    table->setMinimumWidth(40 * room);
    auto* choice = new QFormLayout;
    choice->addRow(tr("&Piece"), pieces_);
    auto* picture = new QVBoxLayout;
    picture->addWidget(outline_, 1);
    picture->addWidget(legend_);
    both_ = new QHBoxLayout;
    both_->addWidget(table, 2);
    both_->addLayout(picture, 3);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(choice);
    layout->addLayout(both_, 1);
}

void ThenAndNow::stack() { both_->setDirection(QBoxLayout::TopToBottom); }

void ThenAndNow::show_nothing() {
    then_.reset();
    now_.reset();
    pairs_.clear();
    task_.cancel();
    pieces_->clear();
    pieces_->setEnabled(false);
    rounds_->set_rounds({});
    take({});
    legend_->clear();
}

void ThenAndNow::show_toys(std::shared_ptr<const Toy> then, std::shared_ptr<const Toy> now) {
    then_ = std::move(then);
    now_ = std::move(now);
    find_pairs();
    {
        const QSignalBlocker quiet(pieces_);
        pieces_->clear();
        for (const Pair& pair : pairs_) pieces_->addItem(pair.words);
        const auto differs = std::ranges::find(pairs_, true, &Pair::differs);
        const int first = differs == pairs_.end() ? 0 : static_cast<int>(differs - pairs_.begin());
        const int looked_at = looked_at_.isEmpty() ? -1 : pieces_->findText(looked_at_);
        pieces_->setCurrentIndex(looked_at >= 0 ? looked_at : first);
    }
    pieces_->setEnabled(!pairs_.empty());
    show_piece();
}

void ThenAndNow::find_pairs() {
    const Match match = matched_pieces(*then_, *now_);
    pairs_.clear();
    for (std::size_t k = 0; k < now_->pieces.size(); ++k) {
        const auto i = match.before_of[k];
        const QString name = printable_line(piece_name(*now_, k));
        const bool differs = !i || !(then_->pieces[*i] == now_->pieces[k]);
        pairs_.push_back({i, k, i ? name : tr("%1 (new since then)").arg(name), differs});
    }
    for (std::size_t i = 0; i < then_->pieces.size(); ++i) {
        if (match.after_of[i]) continue;
        const QString name = printable_line(piece_name(*then_, i));
        pairs_.push_back({i, std::nullopt, tr("%1 (gone since then)").arg(name), true});
    }
}

std::optional<Silhouette> ThenAndNow::outline(const Toy& toy, std::size_t piece, const std::stop_token& stop,
                                              bool& round) {
    const PieceStudy study = study_shape(toy, piece, nullptr, stop);
    const Shape& shape = study.revolved();
    round = round && (study.graph().graph.rounds.empty() || shape.usable());
    if (!shape.usable()) return std::nullopt;
    return silhouette_of(shape, study.problem().last);
}

void ThenAndNow::show_piece() {
    if (!then_ || !now_ || pairs_.empty()) return;
    const Pair& pair = pairs_[static_cast<std::size_t>(std::max(pieces_->currentIndex(), 0))];
    const Piece nothing;
    const Piece& then = pair.then ? std::as_const(then_->pieces)[*pair.then] : nothing;
    const Piece& now = pair.now ? std::as_const(now_->pieces)[*pair.now] : nothing;
    rounds_->set_rounds(rounds_then_and_now(then, now));
    outline_->set_starts_at_top(pair.then ? then.starts_at_top : now.starts_at_top);
    task_.start_latest(
        render::Lane::next_key,
        [this, pair, toy_then = then_, toy_now = now_](const render::TaskRun& run) -> render::Delivery {
            Outlines found;
            if (pair.then) found.then = outline(*toy_then, *pair.then, run.stop, found.round);
            if (pair.now) found.now = outline(*toy_now, *pair.now, run.stop, found.round);
            return [this, found] { take(found); };
        });
}

void ThenAndNow::take(const Outlines& outlines) {
    outline_->set_new(outlines.then);
    outline_->set_old(outlines.now);
    legend_->setText(outlines.round ? tr("Filled: then. Dashed: now.")
                                    : tr("An outline cannot show this piece. Its rounds stand on the left."));
}

QString ThenAndNow::legend() const { return legend_->text(); }

}  // namespace roundwright::app
