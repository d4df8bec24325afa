#include "app/gauge/gauge_pages.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSpinBox>

#include "app/kit/field_widgets.h"
#include "app/kit/length_spin_box.h"
#include "core/base/units.h"
#include "core/gauge/hook.h"

namespace roundwright::app {

namespace {

constexpr double most_swatch_mm = 1000;
constexpr double most_stitch_mm = 60;
constexpr double most_error_mm = 20;

QDoubleSpinBox* count_box(double most) {
    auto* box = new MeasureSpinBox;
    box->setRange(0, most);
    box->setDecimals(1);
    box->setSpecialValueText(SwatchPage::tr("not counted"));
    return box;
}

QDoubleSpinBox* hook_box() {
    auto* box = new MeasureSpinBox;
    box->setRange(0, most_hook_mm);
    box->setDecimals(2);
    box->setSingleStep(0.25);
    box->setSuffix(SwatchPage::tr(" mm"));
    box->setSpecialValueText(SwatchPage::tr("the same"));
    return box;
}

LengthSpinBox* measure_box(const Preferences& preferences, double most_mm) {
    auto* box = new LengthSpinBox(preferences, 0, most_mm);
    box->setSpecialValueText(SwatchPage::tr("not measured"));
    return box;
}

LengthSpinBox* error_box(const Preferences& preferences, const QString& name) {
    auto* box = new LengthSpinBox(preferences, 0, most_error_mm);
    box->setAccessibleName(name);
    box->setToolTip(SwatchPage::tr("How far off the measurement may be, either way"));
    return box;
}

QFormLayout* form_on(QWidget* page) {
    auto* form = new QFormLayout(page);
    form->setContentsMargins(0, 0, 0, 0);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    return form;
}

void set_quietly(QDoubleSpinBox* box, double value) {
    const QSignalBlocker quiet(box);
    box->setValue(value);
}

void set_quietly(QSpinBox* box, int value) {
    const QSignalBlocker quiet(box);
    box->setValue(value);
}

}  // namespace

QLabel* remark(const QString& text) {
    auto* label = new QLabel(text);
    label->setWordWrap(true);
    return label;
}

// --- what each starts from

SwatchGauge unmeasured_swatch(LengthUnit units) {
    const double side_mm = units == LengthUnit::inches ? 4 * mm_per_inch : 100;
    return {.stitches = 0, .width_mm = side_mm, .rounds = 0, .height_mm = side_mm};
}

CircleGauge unmeasured_circle() { return {.rounds = 6, .increases = 6, .across_mm = 0}; }

GivenGauge unmeasured_stitch() {
    constexpr double read_off_a_ruler_mm = 0.2;
    return {{0, 0, read_off_a_ruler_mm, read_off_a_ruler_mm}};
}

// --- a swatch

SwatchPage::SwatchPage(const Preferences& preferences) {
    auto* form = form_on(this);
    form->addRow(tr("S&titches"), stitches_ = count_box(500));
    form->addRow(tr("over a &width of"), width_ = measure_box(preferences, most_swatch_mm));
    form->addRow(tr("R&ounds"), rounds_ = count_box(500));
    form->addRow(tr("over a he&ight of"), height_ = measure_box(preferences, most_swatch_mm));
    form->addRow(tr("gi&ve or take"), error_ = error_box(preferences, tr("Swatch, give or take")));
    form->addRow(tr("Hook &used"), hook_ = hook_box());
    width_->setAccessibleName(tr("Width those stitches take"));
    height_->setAccessibleName(tr("Height those rounds take"));
    form->addRow(in_rows_ = new QCheckBox(tr("Worked in rows, turne&d")));
    for (QDoubleSpinBox* box : {stitches_, rounds_, hook_})
        connect(box, &QDoubleSpinBox::valueChanged, this, &SwatchPage::take);
    for (LengthSpinBox* box : {width_, height_, error_})
        connect(box, &LengthSpinBox::edited, this, &SwatchPage::take);
    connect(in_rows_, &QCheckBox::clicked, this, &SwatchPage::take);
}

void SwatchPage::show_source(const SwatchGauge& swatch) {
    set_quietly(stitches_, swatch.stitches);
    width_->show_millimetres(swatch.width_mm);
    set_quietly(rounds_, swatch.rounds);
    height_->show_millimetres(swatch.height_mm);
    error_->show_millimetres(swatch.measuring_error_mm);
    in_rows_->setChecked(swatch.worked_in_rows);
    set_quietly(hook_, swatch.hook_mm);
}

void SwatchPage::take() {
    Q_EMIT edited(SwatchGauge{stitches_->value(), width_->millimetres(), rounds_->value(),
                              height_->millimetres(), in_rows_->isChecked(), error_->millimetres(),
                              hook_->value()});
}

// --- a gauge circle

CirclePage::CirclePage(const Preferences& preferences)
    : rounds_(whole_box(2, 60)), increases_(whole_box(3, 24)), lie_(new QComboBox) {
    lie_->addItems({tr("flat"), tr("it cups"), tr("it ruffles")});
    auto* form = form_on(this);
    form->addRow(tr("R&ounds"), rounds_);
    form->addRow(tr("&Increases a round"), increases_);
    form->addRow(tr("A&cross"), across_ = measure_box(preferences, most_swatch_mm));
    form->addRow(tr("gi&ve or take"), error_ = error_box(preferences, tr("Across, give or take")));
    across_->setAccessibleName(tr("Across the gauge circle"));
    form->addRow(tr("How it &lies"), lie_);
    form->addRow(tr("Hook &used"), hook_ = hook_box());
    for (QSpinBox* box : {rounds_, increases_})
        connect(box, &QSpinBox::valueChanged, this, &CirclePage::take);
    for (LengthSpinBox* box : {across_, error_})
        connect(box, &LengthSpinBox::edited, this, &CirclePage::take);
    connect(lie_, &QComboBox::activated, this, &CirclePage::take);
    connect(hook_, &QDoubleSpinBox::valueChanged, this, &CirclePage::take);
}

void CirclePage::show_source(const CircleGauge& circle) {
    set_quietly(rounds_, circle.rounds);
    set_quietly(increases_, circle.increases);
    across_->show_millimetres(circle.across_mm);
    error_->show_millimetres(circle.measuring_error_mm);
    lie_->setCurrentIndex(static_cast<int>(circle.lie));
    set_quietly(hook_, circle.hook_mm);
}

void CirclePage::take() {
    Q_EMIT edited(CircleGauge{rounds_->value(), increases_->value(), across_->millimetres(),
                              static_cast<CircleLie>(lie_->currentIndex()), error_->millimetres(),
                              hook_->value()});
}

// --- a stitch size that is known, or was found on a finished piece

GivenPage::GivenPage(const Preferences& preferences) : found_on_(remark({})) {
    auto* form = form_on(this);
    form->addRow(found_on_);
    form->addRow(tr("Stitch &width"), width_ = measure_box(preferences, most_stitch_mm));
    form->addRow(tr("gi&ve or take"),
                 width_error_ = error_box(preferences, tr("Stitch width, give or take")));
    form->addRow(tr("Round he&ight"), height_ = measure_box(preferences, most_stitch_mm));
    form->addRow(tr("give or ta&ke"),
                 height_error_ = error_box(preferences, tr("Round height, give or take")));
    for (LengthSpinBox* box : {width_, width_error_, height_, height_error_}) {
        box->setSingleStep(0.1);
        connect(box, &LengthSpinBox::edited, this, &GivenPage::take);
    }
}

void GivenPage::show_source(const GivenGauge& given) {
    width_->show_millimetres(given.gauge.stitch_width_mm);
    width_error_->show_millimetres(given.gauge.stitch_width_error_mm);
    height_->show_millimetres(given.gauge.round_height_mm);
    height_error_->show_millimetres(given.gauge.round_height_error_mm);
    found_on_->setVisible(!given.found_on.empty());
    found_on_->setText(tr("Found on the finished %1.").arg(QString::fromStdString(given.found_on)));
}

/// What the maker types is no longer what was found.
void GivenPage::take() {
    Q_EMIT edited(GivenGauge{{width_->millimetres(), height_->millimetres(), width_error_->millimetres(),
                              height_error_->millimetres()}});
}

}  // namespace roundwright::app
