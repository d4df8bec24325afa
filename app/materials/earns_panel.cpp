#include "app/materials/earns_panel.h"

#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/measure_spin_box.h"
#include "app/materials/materials_now.h"
#include "core/materials/earnings.h"
#include "render/wording/takes_words.h"

namespace roundwright::app {
namespace {

constexpr double most_money = 1'000'000;
constexpr double most_minutes = 10'000;
constexpr double most_percent = 99;
constexpr int longest_currency = 8;

}  // namespace

EarnsPanel::EarnsPanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      currency_(new QLineEdit),
      other_(new MeasureSpinBox),
      answers_(words_label(tr("What it earns"))) {
    build();
    connect_all();
    show_all();
}

void EarnsPanel::ask(QFormLayout& form, const Asked& asked) {
    auto* box = new MeasureSpinBox;
    box->setRange(0, asked.most);
    box->setDecimals(asked.decimals);
    box->setSuffix(asked.unit);
    box->setSpecialValueText(tr("not said"));
    form.addRow(asked.label, box);
    figures_.push_back({box, asked.part});
    connect(box, &QDoubleSpinBox::valueChanged, this,
            [this, part = asked.part, step = asked.step](double value) {
                const auto set = [part, value](Making& making) {
                    making.*part = value > 0 ? std::optional(value) : std::nullopt;
                };
                change(step, set, step);
            });
}

void EarnsPanel::build() {
    answers_->setFocusPolicy(Qt::StrongFocus);  // for who scrolls with the keys
    currency_->setMaxLength(longest_currency);
    currency_->setPlaceholderText(tr("such as EUR"));
    other_->setRange(0, most_money);
    other_->setDecimals(2);
    other_->setToolTip(tr("Eyes, thread, label, packing"));
    auto* form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->addRow(tr("&Currency"), currency_);
    ask(*form, {tr("Stuffing, a &kilogram"), &Making::stuffing_price_per_kg,
                tr("Change the price of stuffing"), most_money});
    form->addRow(tr("Other costs of a toy"), other_);
    ask(*form, {tr("Se&wing and finishing"), &Making::finishing_minutes, tr("Change the time for finishing"),
                most_minutes, 0, tr(" min")});
    ask(*form, {tr("&My hour"), &Making::hourly_rate, tr("Change my hourly rate"), most_money});
    ask(*form, {tr("Pr&ice"), &Making::price, tr("Change the price"), most_money});
    ask(*form, {tr("Fees"), &Making::fees_percent, tr("Change the fees"), most_percent, 1, tr(" % of it")});
    ask(*form,
        {tr("Price to a shop"), &Making::wholesale_price, tr("Change the price to a shop"), most_money});
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addSpacing(6);
    layout->addWidget(answers_);
    layout->addStretch(1);
}

void EarnsPanel::connect_all() {
    connect(currency_, &QLineEdit::editingFinished, this, [this] {
        const std::string name = currency_->text().trimmed().toStdString();
        if (name == session_.toy().making.currency) return;
        change(tr("Change the currency"), [&name](Making& making) { making.currency = name; }, {});
    });
    connect(other_, &QDoubleSpinBox::valueChanged, this, [this](double cost) {
        change(
            tr("Change other costs"), [cost](Making& making) { making.other_cost = cost; },
            QStringLiteral("other"));
    });
    connect(&session_, &DocumentSession::toy_changed, this, &EarnsPanel::show_all);
    connect(&session_, &DocumentSession::study_ready, this, &EarnsPanel::show_answers);
}

void EarnsPanel::change(const QString& step, const std::function<void(Making&)>& how,
                        const QString& merge_key) {
    session_.edit(
        step,
        [&how](Toy toy) {
            how(toy.making);
            return toy;
        },
        merge_key);
}

void EarnsPanel::show_all() {
    const Making& making = session_.toy().making;
    const QString currency = QString::fromStdString(making.currency);
    if (!currency_->hasFocus() || currency_->text() != currency) currency_->setText(currency);
    show_value(other_, making.other_cost);
    const bool may_change = !session_.read_only();
    for (const Figure& figure : figures_) {
        show_value(figure.box, (making.*figure.part).value_or(0));
        figure.box->setEnabled(may_change);
    }
    currency_->setEnabled(may_change);
    other_->setEnabled(may_change);
    show_answers();
}

void EarnsPanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    show_answers();
}

/// While a shape is being solved the last answer stands. Nothing is added up that nobody sees.
void EarnsPanel::show_answers() {
    if (!isVisible()) return;
    const Toy& toy = session_.toy();
    if (toy.pieces.empty()) return answers_->setText({});
    const auto one = materials_now(session_, TakenFor::toy);
    if (!one) return;
    const Earnings sum = earnings(toy, *one);
    QStringList groups{cost_words(toy, sum),       unpriced_words(toy, sum),
                       retail_words(toy, sum),     wholesale_words(toy, sum),
                       fair_price_words(toy, sum), tr("Taxes are in none of these figures.")};
    groups.removeAll(QString());
    answers_->setText(groups.join(QStringLiteral("\n\n")));
}

}  // namespace roundwright::app
