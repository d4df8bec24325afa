#include "app/materials/pace_fields.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <QFormLayout>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/measure_spin_box.h"
#include "core/materials/working_time.h"
#include "core/materials/yarn_use.h"
#include "render/wording/amounts.h"

namespace roundwright::app {

namespace {

double single_crochets_of(const Toy& toy, const Piece& piece, const PieceStudy& study) {
    const std::vector<double> by_yarn =
        single_crochets_of_yarn(piece, study.graph().graph, std::max<std::size_t>(toy.yarns.size(), 1));
    return std::accumulate(by_yarn.begin(), by_yarn.end(), 0.0);
}

/// As it is typed and kept: to a tenth.
double rounded(double pace) { return std::round(pace * 10) / 10; }

QString pace_text(double pace) { return QLocale().toString(rounded(pace), 'g', 3); }

}  // namespace

PaceFields::PaceFields(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      time_(words_label(tr("Time to crochet"))),
      pace_(new MeasureSpinBox),
      use_timed_(new QPushButton) {
    pace_->setRange(0, fastest_stitches_per_minute);
    pace_->setDecimals(1);
    pace_->setSuffix(tr(" a minute"));
    pace_->setSpecialValueText(tr("not timed"));
    pace_->setToolTip(tr("How many single crochet stitches (US terms) you work in a minute"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* form = new QFormLayout;
    form->addRow(tr("My pa&ce"), pace_);
    layout->addWidget(time_);
    layout->addLayout(form);
    layout->addWidget(use_timed_, 0, Qt::AlignLeft);
    connect(pace_, &QDoubleSpinBox::valueChanged, this, &PaceFields::set_pace);
    connect(use_timed_, &QPushButton::clicked, this, [this] {
        if (const auto pace = timed_pace()) set_pace(rounded(*pace));
    });
    connect(&session_, &DocumentSession::toy_changed, this, &PaceFields::show_all);
    connect(&session_, &DocumentSession::current_piece_changed, this, &PaceFields::show_all);
    connect(&session_, &DocumentSession::study_ready, this, [this] {
        show_time();
        show_timed();
    });
    show_all();
}

void PaceFields::set_pace(double stitches_per_minute) {
    session_.edit(
        tr("Change my pace"),
        [stitches_per_minute](Toy toy) {
            toy.making.stitches_per_minute =
                stitches_per_minute > 0 ? std::optional(stitches_per_minute) : std::nullopt;
            return toy;
        },
        QStringLiteral("pace"));
}

void PaceFields::show_all() {
    const QSignalBlocker quiet(pace_);
    const double pace = session_.toy().making.stitches_per_minute.value_or(0);
    if (pace_->value() != pace) pace_->setValue(pace);  // which would wipe out what is being typed
    pace_->setEnabled(!session_.read_only());
    show_time();
    show_timed();
}

void PaceFields::show_time() {
    const Piece* piece = session_.piece();
    const auto study = session_.study(session_.current_piece());
    if (piece == nullptr || study == nullptr || piece->rounds.empty()) return time_->setText({});
    const Making& making = session_.toy().making;
    const Estimate minutes = working_minutes(single_crochets_of(session_.toy(), *piece, *study), making);
    const QString likely = time_words(minutes.likely);
    const QString low = time_words(minutes.low);
    const QString high = time_words(minutes.high);
    if (making.stitches_per_minute)
        return time_->setText(
            tr("About %1 to crochet this piece (%2 to %3), at your pace.").arg(likely, low, high));
    time_->setText(tr("Perhaps %1 to crochet this piece, anything from %2 to %3: a guess at %4 stitches a "
                      "minute. Time a few rounds in Work along and it goes by your pace.")
                       .arg(likely, low, high, pace_text(usual_stitches_per_minute.likely)));
}

std::optional<double> PaceFields::timed_pace() const {
    TimedWork all;
    for (std::size_t piece = 0; piece < session_.toy().pieces.size(); ++piece) {
        const auto study = session_.study(static_cast<int>(piece));
        if (study != nullptr) all += timed_work(session_.toy().pieces[piece], study->graph().graph);
    }
    return all.pace();
}

/// Offered where it says something new.
void PaceFields::show_timed() {
    const auto pace = timed_pace();
    const double now = session_.toy().making.stitches_per_minute.value_or(0);
    const bool offered = pace && rounded(*pace) != rounded(now) && !session_.read_only();
    use_timed_->setVisible(offered);
    if (offered) use_timed_->setText(tr("&Use the rounds I timed: %1 a minute").arg(pace_text(*pace)));
}

}  // namespace roundwright::app
