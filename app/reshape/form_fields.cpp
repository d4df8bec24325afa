#include "app/reshape/form_fields.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QLabel>
#include <QSignalBlocker>

#include "app/kit/length_spin_box.h"

namespace roundwright::app {
namespace {

constexpr double least_mm = 5;
constexpr double most_mm = 2'000;
constexpr double usual_width_mm = 60;

bool has_top(FormKind kind) {
    return kind == FormKind::pear || kind == FormKind::gourd || kind == FormKind::bell ||
           kind == FormKind::cone;
}

bool may_be_open(FormKind kind) {
    return kind == FormKind::cone || kind == FormKind::cylinder || kind == FormKind::bell ||
           kind == FormKind::half_ball;
}

}  // namespace

FormFields::FormFields(const Preferences& preferences, QWidget* parent)
    : QWidget(parent), form_(usual_form(FormKind::ball, usual_width_mm)) {
    build(preferences);
    for (auto* box : {width_, height_, top_, waist_})
        connect(box, &LengthSpinBox::edited, this, &FormFields::edited);
    connect(closed_, &QCheckBox::toggled, this, &FormFields::edited);
    connect(tip_, &QCheckBox::toggled, this, [this] {
        show_fields();
        Q_EMIT edited();
    });
    choose(form_.kind);
}

void FormFields::build(const Preferences& preferences) {
    width_ = new LengthSpinBox(preferences, least_mm, most_mm);
    height_ = new LengthSpinBox(preferences, least_mm, most_mm);
    top_ = new LengthSpinBox(preferences, least_mm, most_mm);
    waist_ = new LengthSpinBox(preferences, least_mm, most_mm);
    width_->show_millimetres(form_.width_mm);
    tip_ = new QCheckBox(tr("Comes to a po&int"));
    closed_ = new QCheckBox(tr("Close the flat &end"));
    layout_ = new QFormLayout(this);
    layout_->setContentsMargins(0, 0, 0, 0);
    layout_->addRow(tr("&Width"), width_);
    layout_->addRow(tr("Hei&ght"), height_);
    layout_->addRow(tip_);
    layout_->addRow(tr("T&op width"), top_);
    layout_->addRow(tr("Wai&st"), waist_);
    layout_->addRow(closed_);
}

void FormFields::choose(FormKind kind) {
    form_ = usual_form(kind, width_->millimetres());
    show_sizes();
    show_fields();
    Q_EMIT edited();
}

void FormFields::show_sizes() {
    const QSignalBlocker quiet_tip(tip_);
    const QSignalBlocker quiet_closed(closed_);
    width_->show_millimetres(form_.width_mm);
    height_->show_millimetres(form_.height_mm);
    tip_->setChecked(form_.kind == FormKind::cone);
    top_->show_millimetres(form_.top_width_mm > 0 ? form_.top_width_mm : form_.width_mm / 3);
    waist_->show_millimetres(form_.waist_width_mm);
    closed_->setChecked(form_.closed);
}

void FormFields::show_fields() {
    const auto show = [this](QWidget* field, bool shown) {
        field->setVisible(shown);
        if (auto* label = layout_->labelForField(field)) label->setVisible(shown);
    };
    const bool ends_in_tip = form_.kind == FormKind::cone && tip_->isChecked();
    show(height_, form_.kind != FormKind::half_ball);
    show(tip_, form_.kind == FormKind::cone);
    show(top_, has_top(form_.kind) && !ends_in_tip);
    show(waist_, form_.kind == FormKind::gourd);
    show(closed_, may_be_open(form_.kind));
}

Form FormFields::form() const {
    Form form = form_;
    form.width_mm = width_->millimetres();
    form.height_mm = height_->millimetres();
    form.top_width_mm = top_->millimetres();
    if (form.kind == FormKind::cone && tip_->isChecked()) form.top_width_mm = 0;
    form.waist_width_mm = waist_->millimetres();
    form.closed = closed_->isChecked();
    return form;
}

}  // namespace roundwright::app
