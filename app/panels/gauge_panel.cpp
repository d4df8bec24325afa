#include "app/panels/gauge_panel.h"

#include <QAction>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/panels/field_widgets.h"
#include "app/panels/gauge_pages.h"
#include "app/wording/calibration_words.h"

namespace roundwright::app {

namespace {

// In the order of the GaugeSource variant, which the combo box and the pages follow.
enum SourceIndex { not_known, swatch, circle, estimate, given };

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

}  // namespace

GaugePanel::GaugePanel(DocumentSession& session, QAction* from_finished_piece, QWidget* parent)
    : QWidget(parent),
      session_(session),
      source_(new QComboBox),
      pages_(new QStackedWidget),
      result_(words_label(tr("Gauge"))),
      swatch_(new SwatchPage(session.preferences())),
      circle_(new CirclePage(session.preferences())),
      given_(new GivenPage(session.preferences())) {
    source_->addItems({tr("Not known yet"), tr("A swatch"), tr("A gauge circle"), tr("Yarn weight and hook"),
                       tr("Given outright")});
    add_pages();
    lay_out(from_finished_piece);
    connect(source_, &QComboBox::activated, this, &GaugePanel::choose_source);
    connect(swatch_, &SwatchPage::edited, this, &GaugePanel::set_source);
    connect(circle_, &CirclePage::edited, this, &GaugePanel::set_source);
    connect(given_, &GivenPage::edited, this, &GaugePanel::set_source);
    connect(&session_, &DocumentSession::toy_changed, this, &GaugePanel::show_toy);
    connect(&session_, &DocumentSession::study_ready, this, &GaugePanel::show_result);
    connect(&session_.preferences(), &Preferences::units_changed, this, &GaugePanel::show_result);
    show_toy();
}

void GaugePanel::add_pages() {
    pages_->addWidget(
        remark(tr("A usual stitch for the hook stands in. Measure a gauge circle: six rounds of six "
                  "increases, laid flat, are the surest.")));
    pages_->addWidget(swatch_);
    pages_->addWidget(circle_);
    pages_->addWidget(remark(tr(
        "From the published range of single crochets in 4 inches for the weight of the first yarn, and the "
        "hook. A first guess only: your own swatch is better.")));
    pages_->addWidget(given_);
}

void GaugePanel::lay_out(QAction* from_finished_piece) {
    auto* layout = new QVBoxLayout(this);
    auto* top = new QFormLayout;
    top->addRow(tr("Gauge &from"), source_);
    layout->addLayout(top);
    layout->addWidget(pages_);
    layout->addWidget(result_);
    if (from_finished_piece != nullptr) {
        auto* button = new QToolButton;
        button->setDefaultAction(from_finished_piece);
        button->setToolButtonStyle(Qt::ToolButtonTextOnly);
        button->setFocusPolicy(Qt::TabFocus);
        layout->addWidget(button, 0, Qt::AlignLeft);
    }
    layout->addStretch(1);
}

void GaugePanel::choose_source(int index) {
    if (static_cast<std::size_t>(index) == session_.toy().gauge.index()) return;
    session_.end_merging();
    const auto study = session_.study(session_.current_piece());
    const auto known = gauge_from(session_.toy().gauge, session_.toy().hook_mm);
    const Gauge now = known ? *known : study != nullptr ? study->gauge : Gauge{5, 5, 0, 0};
    set_source(first_of_kind(index, session_.toy(), now));
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
    const GaugeSource& source = session_.toy().gauge;
    if (const auto* swatch = std::get_if<SwatchGauge>(&source)) swatch_->show_source(*swatch);
    if (const auto* circle = std::get_if<CircleGauge>(&source)) circle_->show_source(*circle);
    if (const auto* given = std::get_if<GivenGauge>(&source)) given_->show_source(*given);
}

void GaugePanel::show_result() {
    const LengthUnit unit = session_.preferences().units();
    const auto known = gauge_from(session_.toy().gauge, session_.toy().hook_mm);
    const auto study = session_.study(session_.current_piece());
    if (!known && study == nullptr) return result_->clear();
    const QString text = gauge_words(known ? *known : study->gauge, unit);
    const bool unread = !known && session_.toy().gauge.index() != not_known;
    result_->setText(unread ? tr("These measures give no gauge yet; a usual one stands in. %1").arg(text)
                            : text);
}

}  // namespace roundwright::app
