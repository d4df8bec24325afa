#include "app/panels/gauge_panel.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "app/panels/length_spin_box.h"
#include "core/gauge/hook.h"

namespace roundwright::app {

namespace {

// In the order of the GaugeSource variant, which the combo box and the pages follow.
enum SourceIndex { not_known, swatch, circle, estimate, given };

constexpr double most_swatch_mm = 1000;
constexpr double most_stitch_mm = 60;

QDoubleSpinBox* count_box(double most) {
    auto* box = new QDoubleSpinBox;
    box->setRange(0, most);
    box->setDecimals(1);
    box->setKeyboardTracking(false);
    box->setAlignment(Qt::AlignRight);
    return box;
}

QDoubleSpinBox* hook_box() {
    auto* box = new QDoubleSpinBox;
    box->setRange(0, most_hook_mm);
    box->setDecimals(2);
    box->setSingleStep(0.25);
    box->setKeyboardTracking(false);
    box->setSuffix(GaugePanel::tr(" mm"));
    box->setSpecialValueText(GaugePanel::tr("the same"));
    box->setAlignment(Qt::AlignRight);
    return box;
}

QFormLayout* form_on(QWidget* page) {
    auto* form = new QFormLayout(page);
    form->setContentsMargins(0, 0, 0, 0);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    return form;
}

QLabel* remark(const QString& text) {
    auto* label = new QLabel(text);
    label->setWordWrap(true);
    return label;
}

/// What a source starts from when the maker picks its kind: the gauge as it is, put in that kind's words, so
/// that the shape does not jump.
GaugeSource first_of_kind(int kind, const Toy& toy, const Gauge& gauge) {
    constexpr double stitches = 20;
    constexpr int rounds = 6;
    switch (kind) {
        case swatch:
            return SwatchGauge{.stitches = stitches,
                               .width_mm = stitches * gauge.stitch_width_mm,
                               .rounds = stitches,
                               .height_mm = stitches * gauge.round_height_mm};
        case circle:
            return CircleGauge{.rounds = rounds, .across_mm = 2 * rounds * gauge.round_height_mm};
        case estimate:
            return EstimatedGauge{toy.yarns.empty() ? YarnWeight::light : toy.yarns.front().weight};
        case given:
            return GivenGauge{gauge};
        default:
            return {};
    }
}

QString size_with_range(double value, double error, LengthUnit unit) {
    const double scale = unit == LengthUnit::inches ? 1 / 25.4 : 1;
    const int decimals = unit == LengthUnit::inches ? 2 : 1;
    const auto number = [&](double mm) { return QString::number(mm * scale, 'f', decimals); };
    const QString name = unit == LengthUnit::inches ? GaugePanel::tr("in") : GaugePanel::tr("mm");
    return GaugePanel::tr("%1 %2 (%3 to %4)")
        .arg(number(value), name, number(value - error), number(value + error));
}

}  // namespace

GaugePanel::GaugePanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      source_(new QComboBox),
      pages_(new QStackedWidget),
      result_(new QLabel) {
    source_->addItems({tr("Not known yet"), tr("A swatch"), tr("A gauge circle"), tr("Yarn weight and hook"),
                       tr("Given outright")});
    result_->setWordWrap(true);
    result_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    result_->setAccessibleName(tr("Gauge"));
    pages_->addWidget(
        remark(tr("A usual stitch for the hook stands in. Measure a gauge circle: six rounds of six "
                  "increases, laid flat, are the surest.")));
    pages_->addWidget(swatch_page());
    pages_->addWidget(circle_page());
    pages_->addWidget(estimate_page());
    pages_->addWidget(given_page());

    auto* layout = new QVBoxLayout(this);
    auto* top = new QFormLayout;
    top->addRow(tr("Gauge &from"), source_);
    layout->addLayout(top);
    layout->addWidget(pages_);
    layout->addWidget(result_);
    layout->addStretch(1);

    connect(source_, &QComboBox::activated, this, &GaugePanel::choose_source);
    connect(&session_, &DocumentSession::toy_changed, this, &GaugePanel::show_toy);
    connect(&session_, &DocumentSession::study_ready, this, &GaugePanel::show_result);
    connect(&session_.preferences(), &Preferences::units_changed, this, &GaugePanel::show_result);
    show_toy();
}

QWidget* GaugePanel::swatch_page() {
    auto* page = new QWidget;
    auto* form = form_on(page);
    const Preferences& preferences = session_.preferences();
    form->addRow(tr("S&titches"), swatch_stitches_ = count_box(500));
    form->addRow(tr("over a &width of"), swatch_width_ = new LengthSpinBox(preferences, 0, most_swatch_mm));
    form->addRow(tr("R&ounds"), swatch_rounds_ = count_box(500));
    form->addRow(tr("over a &height of"), swatch_height_ = new LengthSpinBox(preferences, 0, most_swatch_mm));
    form->addRow(tr("Hook &used"), swatch_hook_ = hook_box());
    form->addRow(swatch_in_rows_ = new QCheckBox(tr("Worked in ro&ws, turned")));
    for (QDoubleSpinBox* box : {swatch_stitches_, swatch_rounds_, swatch_hook_}) {
        connect(box, &QDoubleSpinBox::valueChanged, this, &GaugePanel::take_swatch);
    }
    for (LengthSpinBox* box : {swatch_width_, swatch_height_}) {
        connect(box, &LengthSpinBox::edited, this, &GaugePanel::take_swatch);
    }
    connect(swatch_in_rows_, &QCheckBox::clicked, this, &GaugePanel::take_swatch);
    return page;
}

QWidget* GaugePanel::circle_page() {
    auto* page = new QWidget;
    auto* form = form_on(page);
    circle_rounds_ = new QSpinBox;
    circle_rounds_->setRange(2, 60);
    circle_increases_ = new QSpinBox;
    circle_increases_->setRange(3, 24);
    circle_lie_ = new QComboBox;
    circle_lie_->addItems({tr("flat"), tr("it cups"), tr("it ruffles")});
    form->addRow(tr("R&ounds"), circle_rounds_);
    form->addRow(tr("&Increases a round"), circle_increases_);
    form->addRow(tr("&Across"),
                 circle_across_ = new LengthSpinBox(session_.preferences(), 0, most_swatch_mm));
    form->addRow(tr("It &lies"), circle_lie_);
    form->addRow(tr("Hook &used"), circle_hook_ = hook_box());
    for (QSpinBox* box : {circle_rounds_, circle_increases_}) {
        box->setKeyboardTracking(false);
        box->setAlignment(Qt::AlignRight);
        connect(box, &QSpinBox::valueChanged, this, &GaugePanel::take_circle);
    }
    connect(circle_across_, &LengthSpinBox::edited, this, &GaugePanel::take_circle);
    connect(circle_lie_, &QComboBox::activated, this, &GaugePanel::take_circle);
    connect(circle_hook_, &QDoubleSpinBox::valueChanged, this, &GaugePanel::take_circle);
    return page;
}

QWidget* GaugePanel::estimate_page() {
    return remark(tr(
        "From the published range of single crochets in 4 inches for the weight of the first yarn, and the "
        "hook. A first guess only: your own swatch is better."));
}

QWidget* GaugePanel::given_page() {
    auto* page = new QWidget;
    auto* form = form_on(page);
    form->addRow(tr("Stitch &width"),
                 given_width_ = new LengthSpinBox(session_.preferences(), 0.1, most_stitch_mm));
    form->addRow(tr("Round h&eight"),
                 given_height_ = new LengthSpinBox(session_.preferences(), 0.1, most_stitch_mm));
    for (LengthSpinBox* box : {given_width_, given_height_}) {
        box->setSingleStep(0.1);
        connect(box, &LengthSpinBox::edited, this, &GaugePanel::take_given);
    }
    return page;
}

void GaugePanel::choose_source(int index) {
    if (static_cast<std::size_t>(index) == session_.toy().gauge.index()) return;
    session_.end_merging();
    const auto study = session_.study(session_.current_piece());
    const auto known = gauge_from(session_.toy().gauge, session_.toy().hook_mm);
    const Gauge now = known ? *known : study != nullptr ? study->gauge : Gauge{5, 5, 0, 0};
    set_source(first_of_kind(index, session_.toy(), now));
}

void GaugePanel::take_swatch() {
    SwatchGauge swatch;
    if (const auto* now = std::get_if<SwatchGauge>(&session_.toy().gauge)) swatch = *now;
    swatch.stitches = swatch_stitches_->value();
    swatch.width_mm = swatch_width_->millimetres();
    swatch.rounds = swatch_rounds_->value();
    swatch.height_mm = swatch_height_->millimetres();
    swatch.worked_in_rows = swatch_in_rows_->isChecked();
    swatch.hook_mm = swatch_hook_->value();
    set_source(swatch);
}

void GaugePanel::take_circle() {
    CircleGauge circle;
    if (const auto* now = std::get_if<CircleGauge>(&session_.toy().gauge)) circle = *now;
    circle.rounds = circle_rounds_->value();
    circle.increases = circle_increases_->value();
    circle.across_mm = circle_across_->millimetres();
    circle.lie = static_cast<CircleLie>(circle_lie_->currentIndex());
    circle.hook_mm = circle_hook_->value();
    set_source(circle);
}

void GaugePanel::take_given() {
    GivenGauge given;
    if (const auto* now = std::get_if<GivenGauge>(&session_.toy().gauge)) given = *now;
    given.gauge.stitch_width_mm = given_width_->millimetres();
    given.gauge.round_height_mm = given_height_->millimetres();
    set_source(given);
}

void GaugePanel::set_source(const GaugeSource& source) {
    session_.edit(
        tr("Change gauge"),
        [&source](Toy toy) {
            toy.gauge = source;
            return toy;
        },
        QStringLiteral("gauge"));
}

void GaugePanel::show_toy() {
    const int index = static_cast<int>(session_.toy().gauge.index());
    source_->setCurrentIndex(index);
    pages_->setCurrentIndex(index);
    // A page that is not shown takes no room.
    for (int k = 0; k < pages_->count(); ++k) {
        const auto vertical = k == index ? QSizePolicy::Preferred : QSizePolicy::Ignored;
        pages_->widget(k)->setSizePolicy(QSizePolicy::Preferred, vertical);
    }
    show_pages();
    show_result();
}

void GaugePanel::show_pages() {
    const auto show = [](auto* box, auto value) {
        const QSignalBlocker quiet(box);
        box->setValue(value);
    };
    const GaugeSource& source = session_.toy().gauge;
    if (const auto* swatch = std::get_if<SwatchGauge>(&source)) {
        show(swatch_stitches_, swatch->stitches);
        swatch_width_->show_millimetres(swatch->width_mm);
        show(swatch_rounds_, swatch->rounds);
        swatch_height_->show_millimetres(swatch->height_mm);
        swatch_in_rows_->setChecked(swatch->worked_in_rows);
        show(swatch_hook_, swatch->hook_mm);
    } else if (const auto* circle = std::get_if<CircleGauge>(&source)) {
        show(circle_rounds_, circle->rounds);
        show(circle_increases_, circle->increases);
        circle_across_->show_millimetres(circle->across_mm);
        circle_lie_->setCurrentIndex(static_cast<int>(circle->lie));
        show(circle_hook_, circle->hook_mm);
    } else if (const auto* given = std::get_if<GivenGauge>(&source)) {
        given_width_->show_millimetres(given->gauge.stitch_width_mm);
        given_height_->show_millimetres(given->gauge.round_height_mm);
    }
}

void GaugePanel::show_result() {
    const LengthUnit unit = session_.preferences().units();
    const auto known = gauge_from(session_.toy().gauge, session_.toy().hook_mm);
    const auto study = session_.study(session_.current_piece());
    if (!known && study == nullptr) return result_->clear();
    const Gauge gauge = known ? *known : study->gauge;
    const QString text = tr("A stitch is %1 wide; a round is %2 tall.")
                             .arg(size_with_range(gauge.stitch_width_mm, gauge.stitch_width_error_mm, unit),
                                  size_with_range(gauge.round_height_mm, gauge.round_height_error_mm, unit));
    const bool unread = !known && session_.toy().gauge.index() != not_known;
    result_->setText(unread ? tr("These measures give no gauge yet; a usual one stands in. %1").arg(text)
                            : text);
}

}  // namespace roundwright::app
