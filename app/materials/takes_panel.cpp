#include "app/materials/takes_panel.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLocale>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/measure_spin_box.h"
#include "core/materials/yarn_use.h"
#include "render/wording/amounts.h"
#include "render/wording/takes_words.h"

namespace roundwright::app {
namespace {

constexpr int most_toys = 999;
constexpr double most_spare_percent = 200;
constexpr double most_undone_mm = 5000;

YarnUse times_of(YarnUse use, double times) {
    use.metres = use.metres * times;
    use.grams = use.grams * times;
    return use;
}

}  // namespace

TakesPanel::TakesPanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      what_(new QComboBox),
      times_(whole_box(1, most_toys)),
      amounts_(words_label(tr("What it takes"))),
      spare_(new MeasureSpinBox),
      undone_(new MeasureSpinBox),
      undone_words_(words_label(tr("Length of yarn in a stitch"))) {
    build();
    connect_all();
    show_all();
}

void TakesPanel::build() {
    what_->addItem(tr("This piece"));
    what_->addItem(tr("The whole toy"));
    what_->setCurrentIndex(1);
    amounts_->setFocusPolicy(Qt::StrongFocus);  // for who scrolls with the keys
    spare_->setRange(0, most_spare_percent);
    spare_->setDecimals(0);
    spare_->setSingleStep(5);
    spare_->setSuffix(tr(" %"));
    spare_->setSpecialValueText(tr("none"));
    undone_->setRange(0, most_undone_mm);
    undone_->setDecimals(0);
    undone_->setSuffix(tr(" mm"));
    undone_->setSpecialValueText(tr("not measured"));
    undone_->setToolTip(tr("Undo ten single crochet stitches (US terms) and measure the yarn"));
    auto* of = new QFormLayout;
    of->addRow(tr("F&or"), what_);
    of->addRow(tr("How man&y"), times_);
    auto* form = new QFormLayout;
    form->addRow(tr("Yarn &to spare"), spare_);
    form->addRow(tr("Ten stitches &undone"), undone_);
    for (QFormLayout* fields : {of, form}) fields->setRowWrapPolicy(QFormLayout::WrapLongRows);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(of);
    layout->addWidget(amounts_);
    layout->addSpacing(6);
    layout->addLayout(form);
    layout->addWidget(undone_words_);
    layout->addStretch(1);
}

void TakesPanel::connect_all() {
    connect(what_, &QComboBox::currentIndexChanged, this, &TakesPanel::show_amounts);
    connect(times_, &QSpinBox::valueChanged, this, &TakesPanel::show_amounts);
    connect(spare_, &QDoubleSpinBox::valueChanged, this, [this](double percent) {
        change_making(tr("Change the yarn to spare"), &Making::spare_yarn_percent, percent,
                      QStringLiteral("spare"));
    });
    connect(undone_, &QDoubleSpinBox::valueChanged, this, [this](double mm) {
        change_making(tr("Measure ten stitches undone"), &Making::yarn_per_ten_stitches_mm, mm,
                      QStringLiteral("undone"));
    });
    connect(&session_, &DocumentSession::toy_changed, this, &TakesPanel::show_all);
    connect(&session_, &DocumentSession::current_piece_changed, this, &TakesPanel::show_all);
    connect(&session_, &DocumentSession::study_ready, this, &TakesPanel::show_amounts);
    connect(&session_.preferences(), &Preferences::units_changed, this, &TakesPanel::show_amounts);
}

void TakesPanel::change_making(const QString& step, std::optional<double> Making::*part, double value,
                               const QString& merge_key) {
    session_.edit(
        step,
        [part, value](Toy toy) {
            toy.making.*part = value > 0 ? std::optional(value) : std::nullopt;
            return toy;
        },
        merge_key);
}

TakenFor TakesPanel::what() const { return what_->currentIndex() == 0 ? TakenFor::piece : TakenFor::toy; }

void TakesPanel::show_all() {
    const Making& making = session_.toy().making;
    show_value(spare_, making.spare_yarn_percent.value_or(0));
    show_value(undone_, making.yarn_per_ten_stitches_mm.value_or(0));
    spare_->setEnabled(!session_.read_only());
    undone_->setEnabled(!session_.read_only());
    undone_words_->setText(
        making.yarn_per_ten_stitches_mm
            ? tr("Yarn goes by your own stitches.")
            : tr("Yarn goes by the width of the stitches: each takes five to eight times its own. Undo ten, "
                 "measure the yarn, and the range gets much smaller."));
    show_amounts();
}

QString TakesPanel::amounts_words(const Materials& one) const {
    const Toy& toy = session_.toy();
    const int times = times_->value();
    const auto balls = balls_for(toy, one, times);
    QStringList lines;
    for (std::size_t i = 0; i < toy.yarns.size() && i < one.yarns.size(); ++i) {
        if (one.yarns[i].metres.high <= 0) continue;
        lines << yarn_taken_words(toy.yarns[i], times_of(one.yarns[i], times), balls[i],
                                  session_.preferences().units());
    }
    if (one.stuffing_g.high > 0) lines << stuffing_taken_words(one.stuffing_g * times);
    if (one.pellets_g > 0) lines << pellets_taken_words(one.pellets_g * times);
    if (one.minutes.high > 0) lines << time_taken_words(one.minutes * times);
    return lines.join(QLatin1Char('\n'));
}

void TakesPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    show_amounts();
}

/// While a shape is being solved the last answer stands. Nothing is added up that nobody sees.
void TakesPanel::show_amounts() {
    if (!isVisible()) return;
    if (session_.toy().pieces.empty()) return amounts_->setText({});
    if (const auto one = materials_now(session_, what())) amounts_->setText(amounts_words(*one));
}

}  // namespace roundwright::app
