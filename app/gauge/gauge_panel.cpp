#include "app/gauge/gauge_panel.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/gauge/circle_offer.h"
#include "app/gauge/gauge_pages.h"
#include "app/gauge/several_page.h"
#include "app/kit/field_widgets.h"
#include "app/kit/length_spin_box.h"
#include "app/kit/still_label.h"
#include "core/study/next_measurement.h"
#include "render/wording/calibration_words.h"
#include "render/wording/measurement_words.h"

namespace roundwright::app {

namespace {

// In the order of the GaugeSource variant, which the combo box and the pages follow.
enum SourceIndex { not_known, swatch, circle, estimate, given, several };

constexpr int lines_of_next = 4;
constexpr int at_rest_ms = 400;

bool is_measured(int kind) { return kind != not_known && kind != estimate; }

/// Every piece worked out as far as its shape; empty where it was stopped.
std::vector<PieceStudy> shapes_of(const Toy& toy, const std::stop_token& stop) {
    std::vector<PieceStudy> studies;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece) {
        if (stop.stop_requested()) return {};
        studies.push_back(study_shape(toy, piece, nullptr, stop));
    }
    return studies;
}

}  // namespace

GaugePanel::GaugePanel(DocumentSession& session, QAction* from_finished_piece, QWidget* parent)
    : QWidget(parent),
      session_(session),
      source_(new QComboBox),
      pages_(new QStackedWidget),
      result_(words_label(tr("Stitch size by this gauge"))),
      next_(new StillLabel(tr("What to measure next"))),
      swatch_(new SwatchPage(session.preferences())),
      circle_(new CirclePage(session.preferences())),
      given_(new GivenPage(session.preferences())),
      several_(new SeveralPage(session, from_finished_piece)),
      offer_unknown_(new CircleOffer(session)),
      offer_estimate_(new CircleOffer(session)) {
    source_->addItems({tr("Not known yet"), tr("A swatch"), tr("A gauge circle"), tr("Yarn weight and hook"),
                       tr("A known stitch size"), tr("Several together")});
    add_pages();
    lay_out(from_finished_piece);
    connect(source_, &QComboBox::activated, this, &GaugePanel::choose_source);
    connect(swatch_, &SwatchPage::edited, this, &GaugePanel::take);
    connect(circle_, &CirclePage::edited, this, &GaugePanel::take);
    connect(given_, &GivenPage::edited, this, &GaugePanel::take);
    next_->set_lines(lines_of_next);
    next_later_.setSingleShot(true);
    next_later_.setInterval(at_rest_ms);
    connect(&next_later_, &QTimer::timeout, this, &GaugePanel::work_out_next);
    for (CircleOffer* offer : {offer_unknown_, offer_estimate_})
        connect(offer, &CircleOffer::measured, this, &GaugePanel::take_circle);
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

QWidget* GaugePanel::page_with_offer(const QString& words, CircleOffer* offer) {
    auto* page = new QWidget;
    auto* layout = new QVBoxLayout(page);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(remark(words));
    layout->addWidget(offer);
    return page;
}

void GaugePanel::add_pages() {
    pages_->addWidget(page_with_offer(
        tr("Sizes assume a typical stitch for your hook. A gauge circle makes them yours."), offer_unknown_));
    pages_->addWidget(swatch_);
    pages_->addWidget(circle_);
    pages_->addWidget(page_with_offer(
        tr("A first guess from the weight of your first yarn and the hook. A gauge circle makes it yours."),
        offer_estimate_));
    pages_->addWidget(given_);
    pages_->addWidget(several_);
}

void GaugePanel::lay_out(QAction* from_finished_piece) {
    auto* layout = new QVBoxLayout(this);
    auto* top = new QFormLayout;
    top->addRow(tr("Gauge fro&m"), source_);
    layout->addLayout(top);
    layout->addWidget(pages_);
    layout->addWidget(result_);
    layout->addWidget(next_);
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

CircleOffer* GaugePanel::offer() const {
    const int shown = pages_->currentIndex();
    if (shown == not_known) return offer_unknown_;
    return shown == estimate ? offer_estimate_ : nullptr;
}

void GaugePanel::ask_for_circle() {
    if (session_.read_only()) return;
    asked_ = -1;
    show_page();
    if (offer() != nullptr) return offer()->across()->setFocus(Qt::ShortcutFocusReason);
    several_->add_circle();
}

void GaugePanel::take_circle(const GaugeSource& source) {
    const bool had_keyboard = isAncestorOf(QApplication::focusWidget());
    session_.end_merging();
    session_.edit(tr("Measure the gauge circle"), [&source](Toy toy) {
        toy.gauge = source;
        return toy;
    });
    session_.end_merging();
    if (had_keyboard) Q_EMIT circle_measured();
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
    show_next_later();
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

void GaugePanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    show_next_later();
}

/// For every state of the toy, once it rests, and only while somebody can see it.
void GaugePanel::show_next_later() {
    task_.cancel();
    next_->say({});
    next_->setVisible(offer() == nullptr);
    if (isVisible() && offer() == nullptr && asked_ < 0)
        next_later_.start();
    else
        next_later_.stop();
}

void GaugePanel::work_out_next() {
    task_.start_latest(render::Lane::longer,
                       [this, toy = session_.toy()](const render::TaskRun& run) -> render::Delivery {
                           const auto next = next_measurements(toy, shapes_of(toy, run.stop));
                           return [this, words = next_measurement_words(next, toy)] { next_->say(words); };
                       });
}

QString GaugePanel::next() const { return next_->words(); }

void GaugePanel::show_result() {
    for (CircleOffer* one : {offer_unknown_, offer_estimate_}) one->show_study();
    const LengthUnit unit = session_.preferences().units();
    const auto known = gauge_from(session_.toy().gauge, session_.toy().hook_mm);
    const auto study = session_.study(session_.current_piece());
    if (!known && study == nullptr) return result_->setText({});
    const QString text = gauge_words(known ? *known : study->gauge, unit);
    const bool unread = !known && session_.toy().gauge.index() != not_known;
    if (asked_ >= 0)
        result_->setText(tr("The gauge stays as it was until this is measured. %1").arg(text));
    else
        result_->setText(unread ? tr("Nothing measured yet, so a typical stitch is used. %1").arg(text)
                                : text);
}

}  // namespace roundwright::app
