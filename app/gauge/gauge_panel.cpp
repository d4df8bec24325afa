#include "app/gauge/gauge_panel.h"

#include <QAction>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/gauge/gauge_pages.h"
#include "app/kit/field_widgets.h"
#include "render/wording/calibration_words.h"

namespace roundwright::app {

namespace {

// In the order of the GaugeSource variant, which the combo box and the pages follow.
enum SourceIndex { not_known, swatch, circle, estimate, given };

bool is_measured(int kind) { return kind == swatch || kind == circle || kind == given; }

}  // namespace

GaugePanel::GaugePanel(DocumentSession& session, QAction* from_finished_piece, QWidget* parent)
    : QWidget(parent),
      session_(session),
      source_(new QComboBox),
      pages_(new QStackedWidget),
      result_(words_label(tr("Stitch size by this gauge"))),
      swatch_(new SwatchPage(session.preferences())),
      circle_(new CirclePage(session.preferences())),
      given_(new GivenPage(session.preferences())) {
    source_->addItems({tr("Not known yet"), tr("A swatch"), tr("A gauge circle"), tr("Yarn weight and hook"),
                       tr("A known stitch size")});
    add_pages();
    lay_out(from_finished_piece);
    connect(source_, &QComboBox::activated, this, &GaugePanel::choose_source);
    connect(swatch_, &SwatchPage::edited, this, &GaugePanel::take);
    connect(circle_, &CirclePage::edited, this, &GaugePanel::take);
    connect(given_, &GivenPage::edited, this, &GaugePanel::take);
    connect(&session_, &DocumentSession::toy_changed, this, &GaugePanel::show_toy);
    connect(&session_, &DocumentSession::file_changed, this, [this] {
        asked_ = -1;
        measured_.clear();
        show_toy();
    });
    connect(&session_, &DocumentSession::study_ready, this, &GaugePanel::show_result);
    connect(&session_.preferences(), &Preferences::units_changed, this, &GaugePanel::show_result);
    show_toy();
}

void GaugePanel::add_pages() {
    pages_->addWidget(
        remark(tr("Sizes assume a typical stitch for your hook. Work a gauge circle to make them yours: six "
                  "rounds of six increases, laid flat and measured across.")));
    pages_->addWidget(swatch_);
    pages_->addWidget(circle_);
    pages_->addWidget(remark(
        tr("Worked out from the first yarn’s weight and your hook, by the published range of single crochet "
           "stitches in 4 inches (US terms). Only a first guess: your own swatch is better.")));
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

/// What was measured before comes back. What has to be measured first is asked for; the toy's gauge stays
/// until it is.
void GaugePanel::choose_source(int index) {
    session_.end_merging();
    asked_ = -1;
    if (static_cast<std::size_t>(index) == session_.toy().gauge.index()) return show_toy();
    if (measured_.contains(index)) return set_source(measured_.at(index));
    if (!is_measured(index)) return set_source(unmeasured(index));
    asked_ = index;
    show_unmeasured();
    show_page();
    show_result();
}

GaugeSource GaugePanel::unmeasured(int kind) const {
    const Toy& toy = session_.toy();
    if (kind == estimate)
        return EstimatedGauge{toy.yarns.empty() ? YarnWeight::light : toy.yarns.front().weight};
    return {};
}

void GaugePanel::show_unmeasured() {
    if (asked_ == swatch) swatch_->show_source(unmeasured_swatch(session_.preferences().units()));
    if (asked_ == circle) circle_->show_source(unmeasured_circle());
    if (asked_ == given) given_->show_source(unmeasured_stitch());
}

/// A page that is asked for takes over once it gives a gauge.
void GaugePanel::take(const GaugeSource& source) {
    const bool is_own = source.index() == session_.toy().gauge.index();
    if (is_own || gauge_from(source, session_.toy().hook_mm)) set_source(source);
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
    if (session_.toy().gauge != seen_) asked_ = -1;
    seen_ = session_.toy().gauge;
    const int kind = static_cast<int>(seen_.index());
    if (is_measured(kind) && gauge_from(seen_, session_.toy().hook_mm)) measured_[kind] = seen_;
    show_page();
    show_pages();
    show_result();
}

void GaugePanel::show_page() {
    const int index = asked_ >= 0 ? asked_ : static_cast<int>(session_.toy().gauge.index());
    source_->setCurrentIndex(index);
    pages_->setCurrentIndex(index);
    // A page that is not shown takes no room.
    for (int k = 0; k < pages_->count(); ++k) {
        const auto vertical = k == index ? QSizePolicy::Preferred : QSizePolicy::Ignored;
        pages_->widget(k)->setSizePolicy(QSizePolicy::Preferred, vertical);
    }
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
    if (asked_ >= 0)
        result_->setText(tr("The gauge stays as it was until this is measured. %1").arg(text));
    else
        result_->setText(unread ? tr("Nothing measured yet, so a typical stitch is used. %1").arg(text)
                                : text);
}

}  // namespace roundwright::app
