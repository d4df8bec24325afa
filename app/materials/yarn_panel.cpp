#include "app/materials/yarn_panel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include <QColorDialog>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QLocale>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/kit/cell_delegate.h"
#include "app/kit/field_widgets.h"
#include "app/kit/measure_spin_box.h"
#include "app/kit/true_focus.h"
#include "app/materials/yarns_model.h"
#include "core/gauge/hook.h"
#include "core/gauge/usual_gauge.h"
#include "core/gauge/yarn_label.h"
#include "core/study/piece_study.h"
#include "render/wording/amounts.h"
#include "render/wording/as_sentence.h"
#include "render/wording/colour_words.h"
#include "render/wording/piece_name.h"
#include "render/wording/shape_words.h"
#include "render/wording/yarn_weight_words.h"

namespace roundwright::app {

namespace {

// Colours a new yarn starts with, in turn: a harbour at dusk, our own choice.
constexpr std::array<Colour, 6> first_colours{{{0xE9, 0xE1, 0xD2},
                                               {0x6F, 0x8F, 0x9E},
                                               {0xD9, 0x8A, 0x5B},
                                               {0x3F, 0x4A, 0x57},
                                               {0xC9, 0x5D, 0x63},
                                               {0x8F, 0xA8, 0x7C}}};

constexpr double most_metres_per_100_g = 3000;
constexpr double most_ball_grams = 5000;
constexpr double most_ball_price = 100'000;

Toy without_yarn(Toy toy, std::size_t gone) {
    toy.yarns.erase(toy.yarns.begin() + static_cast<std::ptrdiff_t>(gone));
    for (Piece& piece : toy.pieces) {
        for (Round& round : piece.rounds) {
            if (round.yarn == gone) round.yarn = 0;
            if (round.yarn > gone) --round.yarn;
        }
    }
    return toy;
}

/// An estimate of the gauge goes by the weight of the first yarn, and follows it.
Toy with_weight(Toy toy, std::size_t row, YarnWeight weight) {
    toy.yarns[row].weight = weight;
    auto* estimate = std::get_if<EstimatedGauge>(&toy.gauge);
    if (row == 0 && estimate != nullptr) estimate->weight = weight;
    return toy;
}

}  // namespace

YarnPanel::YarnPanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      model_(new YarnsModel(session, this)),
      list_(new TrueFocus<QListView>),
      add_(new QPushButton(tr("Add &yarn"))),
      remove_(new QPushButton(tr("Re&move"))),
      colour_(new QPushButton(tr("Choose…"))),
      weight_(new QComboBox),
      metres_(new QDoubleSpinBox),
      label_(new QLineEdit),
      label_says_(words_label(tr("The label in words"))),
      ball_grams_(new MeasureSpinBox),
      ball_price_(new MeasureSpinBox),
      hook_(new QDoubleSpinBox),
      hook_names_(new QLabel),
      offer_(words_label(tr("Hook for this yarn"))),
      take_offer_(new QPushButton) {
    build();
    connect_all();
    show_toy();
}

void YarnPanel::build() {
    list_->setModel(model_);
    list_->setItemDelegate(new CellDelegate(list_));
    list_->setAccessibleName(tr("Yarns"));
    list_->setMaximumHeight(96);
    for (const YarnStandard& standard : yarn_standards()) weight_->addItem(yarn_weight_words(standard));
    metres_->setRange(0, most_metres_per_100_g);
    metres_->setDecimals(0);
    metres_->setKeyboardTracking(false);
    metres_->setSuffix(tr(" m in 100 g"));
    metres_->setSpecialValueText(tr("not known"));
    metres_->setAlignment(Qt::AlignRight);
    label_->setPlaceholderText(tr("such as 50 g = 125 m"));
    label_->setAccessibleName(tr("What the label says of length and weight"));
    label_->setToolTip(tr("Length and weight, tex, wraps per inch, plies or the name of the weight"));
    label_says_->hide();
    build_ball();
    hook_->setRange(least_hook_mm, most_hook_mm);
    hook_->setDecimals(2);
    hook_->setSingleStep(0.25);
    hook_->setKeyboardTracking(false);
    hook_->setSuffix(tr(" mm"));
    hook_->setAlignment(Qt::AlignRight);

    auto* buttons = new QHBoxLayout;
    buttons->addWidget(add_);
    buttons->addWidget(remove_);
    buttons->addStretch(1);
    auto* form = new QFormLayout;
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addWidget(offer_);
    layout->addWidget(take_offer_, 0, Qt::AlignLeft);
    layout->addStretch(1);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->addRow(list_);
    form->addRow(buttons);
    form->addRow(tr("C&olour"), colour_);
    form->addRow(tr("&Weight"), weight_);
    form->addRow(tr("Read its la&bel"), label_);
    form->addRow(label_says_);
    form->addRow(tr("&Length"), metres_);
    form->addRow(tr("Ball weigh&t"), ball_grams_);
    form->addRow(tr("Ball pr&ice"), ball_price_);
    form->addRow(tr("Hoo&k"), hook_);
    form->addRow(tr("also called"), hook_names_);
    remove_->setAccessibleName(tr("Remove the yarn"));
    weight_->setAccessibleName(tr("Weight of the yarn"));
    metres_->setAccessibleName(tr("Length of 100 g of the yarn"));
    withdraw_offer();
}

void YarnPanel::build_ball() {
    ball_grams_->setRange(0, most_ball_grams);
    ball_grams_->setDecimals(0);
    ball_grams_->setSuffix(tr(" g"));
    ball_price_->setRange(0, most_ball_price);
    ball_price_->setDecimals(2);
    for (QDoubleSpinBox* box : {ball_grams_, ball_price_}) box->setSpecialValueText(tr("not known"));
    ball_grams_->setAccessibleName(tr("Weight of a ball of the yarn"));
    ball_price_->setAccessibleName(tr("Price of a ball of the yarn"));
}

void YarnPanel::connect_all() {
    connect(add_, &QPushButton::clicked, this, &YarnPanel::add_yarn);
    connect(remove_, &QPushButton::clicked, this, &YarnPanel::remove_yarn);
    connect(colour_, &QPushButton::clicked, this, &YarnPanel::choose_colour);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        show_yarn();
        show_offer();
    });
    connect(weight_, &QComboBox::activated, this,
            [this](int weight) { choose_weight(static_cast<YarnWeight>(weight)); });
    connect(take_offer_, &QPushButton::clicked, this, [this] { use_hook(offered_hook_mm_); });
    connect(metres_, &QDoubleSpinBox::valueChanged, this, [this](double metres) {
        change_yarn(
            tr("Change yarn length"),
            [metres](Yarn& yarn) {
                yarn.metres_per_100_g = metres > 0 ? std::optional<double>(metres) : std::nullopt;
            },
            QStringLiteral("yarn length"));
    });
    const auto connect_ball = [this](QDoubleSpinBox* box, std::optional<double> Yarn::*part,
                                     const QString& step) {
        connect(box, &QDoubleSpinBox::valueChanged, this, [this, part, step](double value) {
            change_yarn(
                step,
                [part, value](Yarn& yarn) { yarn.*part = value > 0 ? std::optional(value) : std::nullopt; },
                step);
        });
    };
    connect_ball(ball_grams_, &Yarn::ball_grams, tr("Change the weight of a ball"));
    connect_ball(ball_price_, &Yarn::ball_price, tr("Change the price of a ball"));
    connect(label_, &QLineEdit::editingFinished, this, &YarnPanel::read_label);
    connect(label_, &QLineEdit::textEdited, label_says_, &QLabel::hide);
    connect(hook_, &QDoubleSpinBox::valueChanged, this, &YarnPanel::use_hook);
    connect(&session_, &DocumentSession::toy_changed, this, &YarnPanel::show_toy);
}

int YarnPanel::current() const {
    const QModelIndex index = list_->currentIndex();
    return index.isValid() ? index.row() : -1;
}

void YarnPanel::change_yarn(const QString& step, const std::function<void(Yarn&)>& change,
                            const QString& merge_key) {
    const int row = current();
    if (row < 0) return;
    session_.edit(
        step,
        [row, &change](Toy toy) {
            change(toy.yarns[static_cast<std::size_t>(row)]);
            return toy;
        },
        merge_key);
}

/// One step; what is not understood stays to be changed.
void YarnPanel::read_label() {
    const QString text = label_->text().trimmed();
    if (text.isEmpty() || current() < 0 || session_.read_only()) return;
    const auto said = read_yarn_label(text.toStdString());
    if (!said) {
        label_says_->setText(
            tr("That is not understood. Type it like “50 g = 125 m”, “200 tex”, “11 wpi”, “8 ply” or “dk”."));
        label_says_->show();
        return;
    }
    session_.end_merging();
    session_.edit(tr("Read the yarn’s label"), [&said, row = static_cast<std::size_t>(current())](Toy toy) {
        Yarn& yarn = toy.yarns[row];
        if (said->metres_per_100_g) yarn.metres_per_100_g = std::round(*said->metres_per_100_g);
        if (said->ball_grams) yarn.ball_grams = std::round(*said->ball_grams);
        return said->weight ? with_weight(std::move(toy), row, *said->weight) : toy;
    });
    label_->clear();
    label_says_->hide();
    if (current() == 0 && said->weight) offer_hook(*said->weight);
}

void YarnPanel::use_hook(double mm) {
    session_.edit(
        tr("Use a %1 mm hook").arg(mm),
        [mm](Toy toy) {
            toy.hook_mm = mm;
            return toy;
        },
        QStringLiteral("hook"));
}

void YarnPanel::choose_weight(YarnWeight weight) {
    const int row = current();
    if (row < 0) return;
    session_.edit(tr("Change yarn weight"), [row, weight](Toy toy) {
        return with_weight(std::move(toy), static_cast<std::size_t>(row), weight);
    });
    if (row == 0) offer_hook(weight);
}

void YarnPanel::offer_hook(YarnWeight weight) {
    const double usual = usual_hook_mm(weight);
    if (usual == session_.toy().hook_mm || session_.read_only()) return withdraw_offer();
    offered_hook_mm_ = usual;
    offer_->setText(offer_words(weight, usual));
    take_offer_->setText(tr("&Use a %1 mm hook").arg(QLocale().toString(usual)));
    offer_->show();
    take_offer_->show();
}

void YarnPanel::withdraw_offer() {
    offered_hook_mm_ = 0;
    offer_->hide();
    take_offer_->hide();
}

QString YarnPanel::offer_words(YarnWeight weight, double hook_mm) const {
    const std::string_view name = yarn_standard(weight).name;
    const QString words = tr("Toys in %1 yarn are usually worked with a %2 mm hook.")
                              .arg(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())),
                                   QLocale().toString(hook_mm));
    Toy toy = session_.toy();
    const bool measured = gauge_from(toy.gauge, toy.hook_mm) && !std::get_if<EstimatedGauge>(&toy.gauge);
    if (measured) return tr("%1 If the yarn is new, measure the gauge again.").arg(words);
    toy.hook_mm = hook_mm;
    const int piece = session_.current_piece();
    if (piece < 0 || session_.piece()->rounds.empty()) return words;
    const PieceStudy study = study_piece(toy, static_cast<std::size_t>(piece));
    if (!study.measures().usable()) return words;
    return tr("%1 %2 would be %3.")
        .arg(words, piece_name(toy, static_cast<std::size_t>(piece)),
             size_words(study, session_.preferences().units()));
}

void YarnPanel::add_yarn() {
    const std::size_t count = session_.toy().yarns.size();
    Yarn yarn = current() >= 0 ? session_.toy().yarns[static_cast<std::size_t>(current())] : Yarn{};
    yarn.name = tr("Yarn %1").arg(count + 1).toStdString();
    yarn.colour = first_colours[count % first_colours.size()];
    session_.edit(tr("Add yarn"), [&yarn](Toy toy) {
        toy.yarns.push_back(yarn);
        return toy;
    });
    list_->setCurrentIndex(model_->index(static_cast<int>(count)));
    list_->edit(list_->currentIndex());
}

void YarnPanel::remove_yarn() {
    const int row = current();
    if (row < 0 || model_->rowCount() < 2) return;
    session_.edit(tr("Remove yarn"),
                  [row](Toy toy) { return without_yarn(std::move(toy), static_cast<std::size_t>(row)); });
}

void YarnPanel::choose_colour() {
    const int row = current();
    if (row < 0) return;
    const Colour now = session_.toy().yarns[static_cast<std::size_t>(row)].colour;
    const QColor chosen =
        QColorDialog::getColor(QColor(now.red, now.green, now.blue), this, tr("Colour of the yarn"));
    if (!chosen.isValid()) return;
    const auto channel = [](int value) { return static_cast<std::uint8_t>(value); };
    change_yarn(tr("Change yarn colour"), [&](Yarn& yarn) {
        yarn.colour = {channel(chosen.red()), channel(chosen.green()), channel(chosen.blue())};
    });
}

void YarnPanel::show_toy() {
    if (current() < 0 && model_->rowCount() > 0) list_->setCurrentIndex(model_->index(0));
    show_yarn();
    show_hook();
    show_offer();
}

/// An offer stands until it is taken, or no longer fits.
void YarnPanel::show_offer() {
    const Toy& toy = session_.toy();
    const bool stands = offered_hook_mm_ > 0 && current() == 0 && toy.hook_mm != offered_hook_mm_ &&
                        !toy.yarns.empty() && usual_hook_mm(toy.yarns.front().weight) == offered_hook_mm_;
    if (stands)
        offer_->setText(offer_words(toy.yarns.front().weight, offered_hook_mm_));
    else
        withdraw_offer();
}

void YarnPanel::show_yarn() {
    const int row = current();
    const bool any = row >= 0 && static_cast<std::size_t>(row) < session_.toy().yarns.size();
    for (QWidget* widget : {static_cast<QWidget*>(colour_), static_cast<QWidget*>(weight_),
                            static_cast<QWidget*>(metres_), static_cast<QWidget*>(label_),
                            static_cast<QWidget*>(ball_grams_), static_cast<QWidget*>(ball_price_)}) {
        widget->setEnabled(any);
    }
    remove_->setEnabled(any && model_->rowCount() > 1);
    if (!any) return;
    const Yarn& yarn = session_.toy().yarns[static_cast<std::size_t>(row)];
    show_value(ball_grams_, yarn.ball_grams.value_or(0));
    show_value(ball_price_, yarn.ball_price.value_or(0));
    colour_->setText(tr("%1…").arg(as_sentence(colour_name(yarn.colour))));
    colour_->setToolTip(colour_words(yarn.colour));
    colour_->setAccessibleName(tr("Colour of the yarn: %1").arg(colour_words(yarn.colour)));
    weight_->setCurrentIndex(static_cast<int>(yarn.weight));
    show_value(metres_, yarn.metres_per_100_g.value_or(0));
}

void YarnPanel::show_hook() {
    const QSignalBlocker quiet(hook_);
    const double mm = session_.toy().hook_mm;
    hook_->setValue(mm);

    const QString names = hook_names(mm);
    hook_names_->setText(names.isEmpty() ? tr("no usual letter or number") : names);
}

}  // namespace roundwright::app
