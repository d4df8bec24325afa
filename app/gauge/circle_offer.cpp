#include "app/gauge/circle_offer.h"

#include <QFormLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/length_spin_box.h"
#include "core/gauge/offered_circle.h"
#include "core/gauge/usual_gauge.h"
#include "render/wording/measure_words.h"
#include "render/wording/measurement_words.h"

namespace roundwright::app {

namespace {

constexpr double widest_circle_mm = 1000;

Gauge gauge_now(const Toy& toy) { return gauge_or_usual(toy.gauge, toy.hook_mm); }

}  // namespace

CircleOffer::CircleOffer(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      across_(new LengthSpinBox(session.preferences(), 0, widest_circle_mm)),
      expected_(words_label(tr("What the gauge circle should come to"))),
      help_(words_label(tr("What the gauge circle is good for"))) {
    across_->setSpecialValueText(tr("not measured"));
    across_->setAccessibleName(tr("Across the gauge circle of five rounds"));
    auto* task = words_label(tr("The gauge circle"));
    task->setText(circle_task_words());
    auto* form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->addRow(tr("Measured a&cross"), across_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(task);
    layout->addLayout(form);
    layout->addWidget(expected_);
    layout->addWidget(help_);
    connect(across_, &LengthSpinBox::edited, this, &CircleOffer::take);
}

void CircleOffer::take(double across_mm) {
    if (across_mm <= 0 || session_.read_only()) return;
    CircleGauge circle = offered_circle;
    circle.across_mm = across_mm;
    across_->show_millimetres(0);
    Q_EMIT measured(circle);
}

void CircleOffer::show_study() {
    const LengthUnit units = session_.preferences().units();
    expected_->setText(expected_circle_words(expected_across_mm(gauge_now(session_.toy())), units));
    const auto study = session_.study(session_.current_piece());
    const bool known = study && study->measures().usable() && study->sizes->with_circle;
    const QString words =
        known ? circle_would_help_words(study->size().width_mm, study->sizes->with_circle->width_mm, units)
              : QString();
    help_->setText(sizes_kept_whole(words));
    help_->setVisible(!words.isEmpty());
}

QString CircleOffer::expected() const { return expected_->text(); }
QString CircleOffer::help() const { return help_->text(); }

}  // namespace roundwright::app
