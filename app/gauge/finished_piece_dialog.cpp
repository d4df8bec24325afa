#include "app/gauge/finished_piece_dialog.h"

#include <QCheckBox>
#include <QDate>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "core/reshape/finished_piece.h"
#include "render/wording/calibration_words.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {

namespace {

/// What else was measured; or else what the gauge is taken to be.
std::optional<Gauge> known_gauge(const Toy& toy, int piece) {
    const auto others = gauge_of_others(toy, static_cast<std::size_t>(piece));
    return others ? others : gauge_from(toy.gauge, toy.hook_mm);
}

/// What was measured besides says something new; a gauge that is estimated, was given, or was found on this
/// piece before would be taken for more than it is.
bool counts_by_itself(const Toy& toy, int piece) {
    const auto* given = std::get_if<GivenGauge>(&toy.gauge);
    if (given != nullptr && given->found_on.empty()) return false;
    return gauge_of_others(toy, static_cast<std::size_t>(piece)).has_value();
}

bool is_settled(const std::optional<Calibration>& found) {
    return found && found->usable() && !found->has(CalibrationCode::not_converged);
}

}  // namespace

FinishedPieceDialog::FinishedPieceDialog(DocumentSession& session, QWidget* parent)
    : QDialog(parent),
      session_(session),
      form_(new MeasurementsForm(session.preferences(), static_cast<int>(session.piece()->rounds.size()))),
      gauge_counts_(new QCheckBox),
      stuffing_is_known_(new QCheckBox),
      answer_(words_label(tr("Gauge found"))),
      notes_(words_label(tr("What these lengths cannot tell"))) {
    setWindowTitle(tr("Gauge from the finished %1").arg(name_in_words(session.piece()->name)));
    make_questions();
    lay_out();
    connect(form_, &MeasurementsForm::edited, this, &FinishedPieceDialog::work_out);
    connect(&task_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) { answer_->setText(why); });
    connect(gauge_counts_, &QCheckBox::toggled, this, &FinishedPieceDialog::work_out);
    connect(stuffing_is_known_, &QCheckBox::toggled, this, &FinishedPieceDialog::work_out);
    connect(&session_.preferences(), &Preferences::units_changed, this, [this] {
        show_known();
        show_answer();
    });
    show_answer();
}

void FinishedPieceDialog::make_questions() {
    const bool has_gauge = known_gauge(session_.toy(), session_.current_piece()).has_value();
    gauge_counts_->setVisible(has_gauge);
    gauge_counts_->setChecked(has_gauge && counts_by_itself(session_.toy(), session_.current_piece()));
    stuffing_is_known_->setVisible(session_.piece()->area_stretch > 0);
    show_known();
}

void FinishedPieceDialog::show_known() {
    if (const auto gauge = known_gauge(session_.toy(), session_.current_piece()))
        gauge_counts_->setText(tr("Use the current &gauge as well: %1")
                                   .arg(gauge_words(*gauge, session_.preferences().units())));
    stuffing_is_known_->setText(tr("The &stuffing is as set for the piece: fabric stretch %1 %")
                                    .arg(QLocale().toString(100 * session_.piece()->area_stretch, 'f', 1)));
}

void FinishedPieceDialog::lay_out() {
    auto* intro = new QLabel(
        tr("Measure the finished piece, worked exactly as in the table. Leave out what you cannot measure."));
    intro->setWordWrap(true);
    for (QLabel* label : {answer_, notes_}) {
        label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        label->setMinimumHeight(3 * fontMetrics().lineSpacing());
    }
    QFont strong = answer_->font();
    strong.setWeight(QFont::DemiBold);
    answer_->setFont(strong);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    apply_ = buttons->addButton(tr("&Use this gauge"), QDialogButtonBox::AcceptRole);
    apply_->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &FinishedPieceDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &FinishedPieceDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(10);
    layout->addWidget(intro);
    layout->addWidget(form_);
    layout->addWidget(gauge_counts_);
    layout->addWidget(stuffing_is_known_);
    layout->addWidget(answer_);
    layout->addWidget(notes_, 1);
    layout->addWidget(buttons);
    resize(560, 440);
}

KnownBefore FinishedPieceDialog::known() const {
    KnownBefore known;
    if (gauge_counts_->isChecked()) known.gauge = known_gauge(session_.toy(), session_.current_piece());
    if (stuffing_is_known_->isChecked()) known.area_stretch = session_.piece()->area_stretch;
    return known;
}

void FinishedPieceDialog::work_out() {
    found_.reset();
    const std::vector<Measured> measured = form_->measured();
    if (measured.empty()) {
        task_.cancel();
        show_answer();
        return;
    }
    apply_->setEnabled(false);
    task_.start_latest(render::Lane::longer,
                       [this, piece = *session_.piece(), measured,
                        known = known()](const render::TaskRun& run) -> render::Delivery {
                           ShapeOptions options;
                           options.stop = run.stop;
                           Calibration found = calibrate_piece(piece, measured, known, options);
                           return [this, found = std::move(found), measured]() mutable {
                               take(std::move(found), measured);
                           };
                       });
}

void FinishedPieceDialog::take(Calibration found, const std::vector<Measured>& measured) {
    found_ = std::move(found);
    measured_ = measured;
    show_answer();
}

void FinishedPieceDialog::show_answer() {
    const LengthUnit units = session_.preferences().units();
    apply_->setEnabled(is_settled(found_) && !session_.read_only());
    apply_->setDefault(true);  // which a dialog takes from a button that is not enabled when it opens
    form_->show_modelled(found_ ? found_->modelled_mm : std::vector<double>{});
    if (!found_) {
        answer_->setText(tr("Type a length above."));
        notes_->setText(
            tr("A width and a height give the gauge. Add a circumference or a swatch to find the stuffing "
               "too."));
        return;
    }
    answer_->setText(calibration_words(*found_, units));
    notes_->setText(calibration_note_words(*found_, measured_, units).join(QLatin1Char('\n')));
}

QString FinishedPieceDialog::answer() const { return answer_->text(); }
QString FinishedPieceDialog::notes() const { return notes_->text(); }

void FinishedPieceDialog::accept() {
    if (!is_settled(found_) || task_.busy()) return;
    const FinishedPiece finished{static_cast<std::size_t>(session_.current_piece()), measured_,
                                 QDate::currentDate().toString(Qt::ISODate).toStdString()};
    session_.end_merging();
    session_.edit(tr("Use the gauge of the finished %1").arg(name_in_words(session_.piece()->name)),
                  with_finished_piece(session_.toy(), finished, *found_, gauge_counts_->isChecked()));
    QDialog::accept();
}

}  // namespace roundwright::app
