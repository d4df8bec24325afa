#include "app/gauge/measurement_dialog.h"

#include <utility>

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/gauge/gauge_pages.h"
#include "render/wording/as_sentence.h"
#include "render/wording/measurement_words.h"

namespace roundwright::app {

namespace {

constexpr int longest_name = 80;

/// Usable alone, whether it counts or not.
bool is_usable(GaugeMeasurement measurement, double hook_mm) {
    measurement.counts = true;
    return combined_gauge({{std::move(measurement)}}, hook_mm).has_value();
}

}  // namespace

MeasurementDialog::MeasurementDialog(DocumentSession& session, GaugeMeasurement measurement, QWidget* parent)
    : QDialog(parent),
      session_(session),
      measurement_(std::move(measurement)),
      name_(new QLineEdit(QString::fromStdString(measurement_.name))) {
    setWindowTitle(as_sentence(measurement_name(measurement_)));
    name_->setMaxLength(longest_name);
    name_->setPlaceholderText(tr("if you like"));
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(10);
    QWidget* what = page();
    layout->addWidget(what);
    auto* form = qobject_cast<QFormLayout*>(what->layout());
    if (form == nullptr) layout->addLayout(form = new QFormLayout);
    form->addRow(tr("&Name"), name_);
    layout->addStretch(1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    use_ = buttons->addButton(tr("&Use it"), QDialogButtonBox::AcceptRole);
    use_->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &MeasurementDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &MeasurementDialog::reject);
    layout->addWidget(buttons);
    update_state();
}

QWidget* MeasurementDialog::page() {
    const auto shown = [this](auto* page, const auto& what) -> QWidget* {
        page->show_source(what);
        using Page = std::remove_pointer_t<decltype(page)>;
        connect(page, &Page::edited, this, &MeasurementDialog::take);
        return page;
    };
    if (const auto* circle = std::get_if<CircleGauge>(&measurement_.what))
        return shown(new CirclePage(session_.preferences()), *circle);
    if (const auto* swatch = std::get_if<SwatchGauge>(&measurement_.what))
        return shown(new SwatchPage(session_.preferences()), *swatch);
    return remark(as_sentence(measurement_words(measurement_, session_.preferences().units())));
}

void MeasurementDialog::take(const GaugeSource& source) {
    if (const auto* circle = std::get_if<CircleGauge>(&source)) measurement_.what = *circle;
    if (const auto* swatch = std::get_if<SwatchGauge>(&source)) measurement_.what = *swatch;
    update_state();
}

void MeasurementDialog::update_state() {
    use_->setEnabled(!session_.read_only() && is_usable(measurement_, session_.toy().hook_mm));
    use_->setDefault(true);  // which a dialog takes from a button that is not enabled when it opens
}

void MeasurementDialog::accept() {
    measurement_.name = name_->text().trimmed().toStdString();
    if (use_->isEnabled()) QDialog::accept();
}

}  // namespace roundwright::app
