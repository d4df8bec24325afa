#include "app/gauge/measurements_form.h"

#include <algorithm>

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QSpinBox>

#include "app/kit/length_spin_box.h"
#include "app/kit/read_out.h"
#include "render/wording/length_text.h"

namespace roundwright::app {

namespace {

constexpr double most_mm = 5'000;
constexpr double least_error_mm = 0.1;
constexpr double most_error_mm = 100;

LengthSpinBox* length_box(const Preferences& preferences, double least_mm, double longest_mm,
                          const QString& name) {
    auto* box = new LengthSpinBox(preferences, least_mm, longest_mm);
    box->setKeyboardTracking(true);  // the answer follows while it is typed
    box->setAccessibleName(name);
    return box;
}

QLabel* column_head(const QString& text) {
    auto* label = new QLabel(text);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace

MeasurementsForm::MeasurementsForm(const Preferences& preferences, int rounds, QWidget* parent)
    : QWidget(parent), preferences_(preferences), grid_(new QGridLayout(this)), round_(new QSpinBox) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(12);
    round_->setRange(1, std::max(1, rounds));
    round_->setValue(std::max(1, rounds / 2));
    round_->setAccessibleName(tr("Round measured around"));
    connect(round_, &QSpinBox::valueChanged, this, &MeasurementsForm::edited);
    add_heads();
    const auto label = [](const QString& text) { return new QLabel(text); };
    add_row(MeasuredOf::width, label(tr("&Width")), tr("Width"));
    add_row(MeasuredOf::height, label(tr("H&eight")), tr("Height"));
    add_row(MeasuredOf::circumference, label(tr("&Around the widest place")), tr("Around the widest place"));
    add_row(MeasuredOf::circumference_of_round, round_head(), tr("Around the round"));
    grid_->setColumnStretch(3, 1);
    connect(&preferences_, &Preferences::units_changed, this, [this] { show_modelled(shown_mm_); });
}

void MeasurementsForm::add_heads() {
    grid_->addWidget(column_head(tr("measured")), 0, 1);
    grid_->addWidget(column_head(tr("give or take")), 0, 2);
    grid_->addWidget(column_head(tr("by this gauge")), 0, 3);
}

QWidget* MeasurementsForm::round_head() {
    auto* head = new QWidget;
    auto* layout = new QHBoxLayout(head);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* label = new QLabel(tr("Around &round"));
    label->setBuddy(round_);
    layout->addWidget(label);
    layout->addWidget(round_);
    layout->addStretch(1);
    return head;
}

void MeasurementsForm::add_row(MeasuredOf of, QWidget* head, const QString& name) {
    Row row{of, length_box(preferences_, 0, most_mm, name),
            length_box(preferences_, least_error_mm, most_error_mm, tr("%1, give or take").arg(name)),
            new ReadOut(tr("%1 by this gauge").arg(name))};
    row.length->setSpecialValueText(tr("not measured"));
    row.error->show_millimetres(Measured{}.error_mm);
    if (auto* label = qobject_cast<QLabel*>(head)) label->setBuddy(row.length);
    const int line = grid_->rowCount();
    grid_->addWidget(head, line, 0);
    grid_->addWidget(row.length, line, 1);
    grid_->addWidget(row.error, line, 2);
    grid_->addWidget(row.modelled, line, 3);
    connect(row.length, &LengthSpinBox::edited, this, &MeasurementsForm::edited);
    connect(row.error, &LengthSpinBox::edited, this, &MeasurementsForm::edited);
    rows_.push_back(row);
}

std::vector<Measured> MeasurementsForm::measured() const {
    std::vector<Measured> measured;
    for (const Row& row : rows_) {
        if (row.length->value() <= 0) continue;
        measured.push_back(
            {row.of, row.length->millimetres(), row.error->millimetres(), round_->value() - 1});
    }
    return measured;
}

void MeasurementsForm::show_modelled(const std::vector<double>& modelled_mm) {
    shown_mm_ = modelled_mm;
    auto next = modelled_mm.begin();
    for (const Row& row : rows_) {
        const bool shown = row.length->value() > 0 && next != modelled_mm.end();
        row.modelled->setText(shown ? fine_length_text(*next++, preferences_.units()) : QString());
    }
}

}  // namespace roundwright::app
