#include "app/reshape/reshape_questions.h"

#include <algorithm>
#include <numbers>

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QSignalBlocker>
#include <QSlider>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/length_spin_box.h"
#include "core/gauge/hook.h"
#include "core/gauge/usual_gauge.h"
#include "core/reshape/frog_back.h"
#include "core/reshape/reshape_toy.h"
#include "render/wording/amounts.h"
#include "render/wording/yarn_weight_words.h"

namespace roundwright::app {
namespace {

constexpr double most_mm = 2'000;
constexpr int most_stitches = 100'000;
constexpr int tidiness_steps = 10;
constexpr int least_width = 230;
constexpr double usual_reach = 0.35;  // of the piece's height

// One factor for width and height, that other pieces can follow.
bool scales_alike(Wish wish) {
    return wish == Wish::width || wish == Wish::height || wish == Wish::around || wish == Wish::scale;
}

}  // namespace

ReshapeQuestions::ReshapeQuestions(const Preferences& preferences, const Toy& toy, const PieceForm& form,
                                   QWidget* parent)
    : QWidget(parent), toy_(toy), graph_(form.graph), worked_(form.piece.worked) {
    make_sizes(preferences, form);
    make_yarn_and_hook();
    make_wishes();
    make_fields();
    lay_out(form.piece);
    connect_all();
    show_fields();
}

// --- layout

void ReshapeQuestions::make_sizes(const Preferences& preferences, const PieceForm& form) {
    const Size size = form.size();
    width_ = new LengthSpinBox(preferences, 1, most_mm);
    height_ = new LengthSpinBox(preferences, 1, most_mm);
    around_ = new LengthSpinBox(preferences, 1, most_mm * std::numbers::pi);
    width_->show_millimetres(size.width_mm);
    height_->show_millimetres(size.height_mm);
    around_->show_millimetres(size.width_mm * std::numbers::pi);
    for (auto* box : {width_, height_, around_}) box->setFont(larger_font(box->font(), 1.25));
    scale_ = new QDoubleSpinBox;
    scale_->setRange(1, 10'000);
    scale_->setDecimals(0);
    scale_->setSuffix(tr(" %"));
    scale_->setValue(100);
    scale_->setKeyboardTracking(false);
    all_pieces_ = new QCheckBox(tr("A&ll pieces"));
    all_pieces_->setToolTip(tr("Make the other pieces larger or smaller to match"));
    reach_ = new LengthSpinBox(preferences, 1, most_mm);
    reach_->show_millimetres(std::max(2 * form.gauge.round_height_mm, usual_reach * size.height_mm));
    reach_->setToolTip(tr("How much of the outline moves with a handle"));
}

void ReshapeQuestions::make_yarn_and_hook() {
    weight_ = new QComboBox;
    weight_->setAccessibleName(tr("Yarn"));
    weight_->addItem(tr("the same yarn"));
    weight_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    weight_->setMinimumContentsLength(12);
    for (const YarnStandard& standard : yarn_standards()) {
        if (standard.single_crochets_per_4_inches)
            weight_->addItem(yarn_weight_words(standard), static_cast<int>(standard.weight));
    }
    weight_->setToolTip(tr("For another yarn, the gauge is estimated from its weight"));
    hook_ = new QDoubleSpinBox;
    hook_->setRange(least_hook_mm, most_hook_mm);
    hook_->setDecimals(2);
    hook_->setSingleStep(0.25);
    hook_->setSuffix(tr(" mm"));
    hook_->setValue(toy_.hook_mm);
    hook_->setKeyboardTracking(false);
    keep_size_ = new QRadioButton(tr("Keep the si&ze"));
    keep_rounds_ = new QRadioButton(tr("Keep the roun&ds"));
    keep_size_->setChecked(true);
}

void ReshapeQuestions::make_wishes() {
    wish_ = new QComboBox;
    wish_->addItems({tr("width"), tr("height"), tr("width and height"), tr("distance around"), tr("scale"),
                     tr("yarn or hook"), tr("outline, by hand")});
    wish_->setAccessibleName(tr("What to change"));
    start_over_ = new QPushButton(tr("&Start over"));
    start_over_->setAutoDefault(false);
}

void ReshapeQuestions::make_fields() {
    fields_ = new QFormLayout;
    fields_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    fields_->addRow(tr("&Width"), width_);
    fields_->addRow(tr("Hei&ght"), height_);
    fields_->addRow(tr("A&round it"), around_);
    fields_->addRow(tr("S&cale"), scale_);
    fields_->addRow(all_pieces_);
    fields_->addRow(tr("&Yarn"), weight_);
    fields_->addRow(tr("Hoo&k"), hook_);
    fields_->addRow(keep_size_);
    fields_->addRow(keep_rounds_);
    fields_->addRow(tr("&Reach"), reach_);
    fields_->addRow(start_over_);
}

QWidget* ReshapeQuestions::progress_part(const Piece& piece) {
    worked_rounds_ = new QSpinBox;
    worked_rounds_->setRange(0, static_cast<int>(piece.rounds.size()));
    worked_rounds_->setValue(piece.worked.rounds);
    worked_stitches_ = new QSpinBox;
    worked_stitches_->setRange(0, most_stitches);
    worked_stitches_->setValue(piece.worked.stitches);
    auto* part = new QGroupBox(tr("Worked so far"));
    auto* form = new QFormLayout(part);
    form->addRow(tr("R&ounds"), worked_rounds_);
    form->addRow(tr("Stitches of the &next"), worked_stitches_);
    return part;
}

QWidget* ReshapeQuestions::tidiness_part() {
    tidiness_ = new QSlider(Qt::Horizontal);
    tidiness_->setRange(0, tidiness_steps);
    tidiness_->setValue(tidiness_steps / 2);
    tidiness_->setPageStep(1);
    tidiness_->setAccessibleName(tr("Closer shape or tidier rounds"));
    tidiness_->setToolTip(tr(
        "Left: closest to the shape. Right: counts that are easy to work (multiples of the first round, even "
        "rounds), up to half a round off the size."));
    auto* ends = new QHBoxLayout;
    ends->addWidget(new QLabel(tr("closer shape")));
    ends->addStretch(1);
    ends->addWidget(new QLabel(tr("tidier rounds")));
    auto* part = new QWidget;
    auto* layout = new QVBoxLayout(part);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(tidiness_);
    layout->addLayout(ends);
    return part;
}

void ReshapeQuestions::lay_out(const Piece& piece) {
    question_ = new QLabel;
    question_->setFont(larger_font(question_->font(), 1.25, QFont::DemiBold));
    question_->setWordWrap(true);
    auto* by = new QFormLayout;
    by->addRow(tr("C&hange"), wish_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(question_);
    layout->addLayout(fields_);
    layout->addLayout(by);
    layout->addSpacing(12);
    layout->addWidget(progress_part(piece));
    layout->addSpacing(12);
    layout->addWidget(tidiness_part());
    layout->addStretch(1);
    setFixedWidth(std::max(least_width, sizeHint().width()));
}

void ReshapeQuestions::connect_all() {
    connect(wish_, &QComboBox::currentIndexChanged, this, [this] {
        show_fields();
        Q_EMIT wish_changed();
    });
    for (auto* box : {width_, height_, around_})
        connect(box, &LengthSpinBox::edited, this, &ReshapeQuestions::edited);
    for (auto* box : {scale_, hook_})
        connect(box, &QDoubleSpinBox::valueChanged, this, &ReshapeQuestions::edited);
    for (auto* box : {worked_rounds_, worked_stitches_})
        connect(box, &QSpinBox::valueChanged, this, &ReshapeQuestions::edited);
    connect(weight_, &QComboBox::currentIndexChanged, this, &ReshapeQuestions::choose_weight);
    connect(all_pieces_, &QCheckBox::toggled, this, &ReshapeQuestions::edited);
    connect(keep_rounds_, &QRadioButton::toggled, this, &ReshapeQuestions::edited);
    connect(tidiness_, &QSlider::valueChanged, this, &ReshapeQuestions::edited);
    connect(start_over_, &QPushButton::clicked, this, &ReshapeQuestions::started_over);
}

// --- the wish

Wish ReshapeQuestions::wish() const { return static_cast<Wish>(wish_->currentIndex()); }

void ReshapeQuestions::set_wish(Wish wish) { wish_->setCurrentIndex(static_cast<int>(wish)); }

void ReshapeQuestions::show_fields() {
    const auto show = [this](QWidget* field, bool shown) {
        field->setVisible(shown);
        if (auto* label = fields_->labelForField(field)) label->setVisible(shown);
    };
    const Wish asked = wish();
    show(width_, asked == Wish::width || asked == Wish::width_and_height);
    show(height_, asked == Wish::height || asked == Wish::width_and_height);
    show(around_, asked == Wish::around);
    show(scale_, asked == Wish::scale);
    show(all_pieces_, scales_alike(asked) && toy_.pieces.size() > 1);
    for (QWidget* field : {static_cast<QWidget*>(weight_), static_cast<QWidget*>(hook_),
                           static_cast<QWidget*>(keep_size_), static_cast<QWidget*>(keep_rounds_)})
        show(field, asked == Wish::yarn_and_hook);
    show(reach_, asked == Wish::by_hand);
    show(start_over_, asked == Wish::by_hand);
    const QString questions[] = {tr("How wide should it be?"),
                                 tr("How tall should it be?"),
                                 tr("How wide and how tall?"),
                                 tr("How far around?"),
                                 tr("What scale?"),
                                 tr("Which yarn and hook?"),
                                 tr("Pull the outline.")};
    question_->setText(questions[static_cast<int>(asked)]);
}

QWidget* ReshapeQuestions::first_field() const {
    QWidget* const first[] = {width_, height_, width_, around_, scale_, weight_, nullptr};
    return first[static_cast<int>(wish())];
}

bool ReshapeQuestions::is_choosing() const { return wish_->hasFocus(); }

// Yarn of another weight is worked with another hook.
void ReshapeQuestions::choose_weight() {
    const QVariant weight = weight_->currentData();
    {
        const QSignalBlocker quiet(hook_);
        hook_->setValue(weight.isValid() ? usual_hook_mm(static_cast<YarnWeight>(weight.toInt()))
                                         : toy_.hook_mm);
    }
    Q_EMIT edited();
}

Target ReshapeQuestions::target() const {
    Target target;
    const Wish asked = wish();
    if (asked == Wish::width || asked == Wish::width_and_height) target.width_mm = width_->millimetres();
    if (asked == Wish::height || asked == Wish::width_and_height) target.height_mm = height_->millimetres();
    if (asked == Wish::around) target.circumference_mm = around_->millimetres();
    if (asked == Wish::scale) target.scale = scale_->value() / 100;
    return target;
}

Toy ReshapeQuestions::worked_as() const {
    const QVariant weight = weight_->currentData();
    const Toy other =
        weight.isValid() ? with_yarn_weight(toy_, static_cast<YarnWeight>(weight.toInt())) : toy_;
    return with_hook(other, hook_->value());
}

bool ReshapeQuestions::for_all_pieces() const {
    return scales_alike(wish()) && toy_.pieces.size() > 1 && all_pieces_->isChecked();
}

bool ReshapeQuestions::keeps_rounds() const { return keep_rounds_->isChecked(); }

WorkedSoFar ReshapeQuestions::worked() const {
    WorkedSoFar worked = worked_;
    worked.rounds = worked_rounds_->value();
    worked.stitches = worked_stitches_->value();
    return usable_progress(worked, graph_.graph);
}

double ReshapeQuestions::tidiness() const { return double(tidiness_->value()) / tidiness_steps; }

double ReshapeQuestions::reach_mm() const { return reach_->millimetres(); }

}  // namespace roundwright::app
