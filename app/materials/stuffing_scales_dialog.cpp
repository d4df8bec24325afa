#include "app/materials/stuffing_scales_dialog.h"

#include <array>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/measure_spin_box.h"
#include "core/assembly/worked_pieces.h"
#include "core/materials/materials.h"
#include "render/wording/amounts.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {

namespace {

constexpr double most_grams = 10'000;
constexpr std::array scale_steps_g{5.0, 1.0, 0.1};
constexpr int whole_grams = 1;  // what most kitchen scales show

QDoubleSpinBox* grams_box(const QString& name) {
    auto* box = new MeasureSpinBox;
    box->setRange(0, most_grams);
    box->setDecimals(1);
    box->setSuffix(StuffingScalesDialog::tr(" g"));
    box->setSpecialValueText(StuffingScalesDialog::tr("not weighed"));
    box->setKeyboardTracking(true);  // the answer follows while it is typed
    box->setAccessibleName(name);
    return box;
}

/// One of the pieces without its stuffing, by the yarn it takes.
Estimate yarn_in_one(const Toy& toy, const Piece& piece, const PieceStudy& study) {
    Piece one = piece;
    one.make = 1;
    Estimate grams;
    for (const YarnUse& use : materials(toy, {{&one, &study.graph().graph, study.gauge, 0}}).yarns)
        grams += use.grams;
    return grams;
}

}  // namespace

StuffingScalesDialog::StuffingScalesDialog(DocumentSession& session, QWidget* parent)
    : QDialog(parent),
      session_(session),
      study_(session.study(session.current_piece())),
      empty_(grams_box(tr("Before stuffing"))),
      stuffed_(grams_box(tr("After stuffing"))),
      scales_(new QComboBox),
      answer_(words_label(tr("Stuffing by weight"))) {
    if (study_ != nullptr) yarn_g_ = yarn_in_one(session.toy(), *session.piece(), *study_);
    setWindowTitle(tr("Weigh the stuffed %1").arg(name_in_words(session.piece()->name)));
    for (const double step : scale_steps_g) scales_->addItem(grams_text(step));
    scales_->setItemText(whole_grams, tr("whole grams"));
    scales_->setCurrentIndex(whole_grams);
    lay_out();
    connect(empty_, &QDoubleSpinBox::valueChanged, this, &StuffingScalesDialog::work_out);
    connect(stuffed_, &QDoubleSpinBox::valueChanged, this, &StuffingScalesDialog::work_out);
    connect(scales_, &QComboBox::currentIndexChanged, this, &StuffingScalesDialog::work_out);
    work_out();
    empty_->setFocus();
}

void StuffingScalesDialog::lay_out() {
    auto* intro = words_label();
    intro->setText(
        tr("Put the piece on kitchen scales before you stuff it and again after. Stuff it as firmly as the "
           "panel says."));
    auto* form = new QFormLayout;
    form->addRow(tr("&Before stuffing"), empty_);
    form->addRow(tr("&After stuffing"), stuffed_);
    form->addRow(tr("The &scales show"), scales_);
    answer_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    answer_->setMinimumHeight(4 * fontMetrics().lineSpacing());
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    apply_ = buttons->addButton(tr("&Use this"), QDialogButtonBox::AcceptRole);
    connect(buttons, &QDialogButtonBox::accepted, this, &StuffingScalesDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &StuffingScalesDialog::reject);
    if (session_.toy().making.stuffing_density_kg_per_m3) {
        auto* guess = buttons->addButton(tr("Back to the &guess"), QDialogButtonBox::ResetRole);
        guess->setAutoDefault(false);
        connect(guess, &QPushButton::clicked, this, &StuffingScalesDialog::use_guess);
    }
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(10);
    layout->addWidget(intro);
    layout->addLayout(form);
    layout->addWidget(answer_, 1);
    layout->addWidget(buttons);
    resize(440, 300);
}

std::optional<WeighedPiece> StuffingScalesDialog::weighed() const {
    if (stuffed_->value() <= 0) return std::nullopt;
    WeighedPiece weighed{stuffed_->value(), std::nullopt,
                         scale_steps_g[static_cast<std::size_t>(scales_->currentIndex())]};
    if (empty_->value() > 0) weighed.empty_g = empty_->value();
    return weighed;
}

void StuffingScalesDialog::work_out() {
    density_.reset();
    const auto on_scales = weighed();
    if (on_scales && study_ != nullptr) {
        const Estimate grams = stuffing_weighed(*on_scales, yarn_g_);
        density_ = medium_density(grams, stuffed_volume_mm3(*session_.piece(), *study_),
                                  session_.piece()->area_stretch);
        answer_->setText(answer_words(*on_scales, grams));
    } else {
        answer_->setText(tr("Type what the scales show."));
    }
    apply_->setEnabled(density_ && !session_.read_only());
    apply_->setDefault(true);
}

QString StuffingScalesDialog::answer_words(const WeighedPiece& weighed, const Estimate& grams) const {
    if (!density_)
        return weighed.empty_g ? tr("That leaves too little stuffing for these scales to show. Weigh a "
                                    "larger piece, or several together.")
                               : tr("The yarn alone weighs %1 to %2, so this does not say how much is "
                                    "stuffing. Weigh the next piece before you stuff it too.")
                                     .arg(grams_text(yarn_g_.low), grams_text(yarn_g_.high));
    const QString words =
        tr("%1 of stuffing (%2 to %3) in %4 ml.")
            .arg(grams_text(grams.likely), grams_text(grams.low), grams_text(grams.high),
                 QLocale().toString(stuffed_volume_mm3(*session_.piece(), *study_) / 1000, 'f', 0));
    return weighed.empty_g ? words
                           : words + QLatin1Char(' ') +
                                 tr("The weight of the yarn is an estimate. Weigh the next piece before you "
                                    "stuff it too, and the figure gets sharper.");
}

QString StuffingScalesDialog::answer() const { return answer_->text(); }

void StuffingScalesDialog::keep(const QString& step, const Making& making) {
    session_.end_merging();
    session_.edit(step, [&making](Toy toy) {
        toy.making = making;
        return toy;
    });
    QDialog::accept();
}

void StuffingScalesDialog::accept() {
    if (!density_) return;
    keep(tr("Use the weighed stuffing"), with_stuffing_density(session_.toy().making, *density_));
}

void StuffingScalesDialog::use_guess() {
    Making making = session_.toy().making;
    making.stuffing_density_kg_per_m3.reset();
    making.stuffing_density_error_kg_per_m3.reset();
    keep(tr("Guess the stuffing"), making);
}

}  // namespace roundwright::app
