#include "app/panels/yarn_panel.h"

#include <algorithm>
#include <array>
#include <cstdint>

#include <QColorDialog>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/kit/cell_delegate.h"
#include "app/panels/yarns_model.h"
#include "app/wording/yarn_weight_words.h"
#include "core/gauge/hook.h"

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

}  // namespace

YarnPanel::YarnPanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      model_(new YarnsModel(session, this)),
      list_(new QListView),
      add_(new QPushButton(tr("&Add yarn"))),
      remove_(new QPushButton(tr("&Remove"))),
      colour_(new QPushButton(tr("Choose…"))),
      weight_(new QComboBox),
      metres_(new QDoubleSpinBox),
      hook_(new QDoubleSpinBox),
      hook_names_(new QLabel) {
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
    layout->addStretch(1);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form->addRow(list_);
    form->addRow(buttons);
    form->addRow(tr("C&olour"), colour_);
    form->addRow(tr("&Weight"), weight_);
    form->addRow(tr("&Length"), metres_);
    form->addRow(tr("&Hook"), hook_);
    form->addRow(tr("also called"), hook_names_);
}

void YarnPanel::connect_all() {
    connect(add_, &QPushButton::clicked, this, &YarnPanel::add_yarn);
    connect(remove_, &QPushButton::clicked, this, &YarnPanel::remove_yarn);
    connect(colour_, &QPushButton::clicked, this, &YarnPanel::choose_colour);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, &YarnPanel::show_yarn);
    connect(weight_, &QComboBox::activated, this, [this](int weight) {
        change_yarn(tr("Change yarn weight"),
                    [weight](Yarn& yarn) { yarn.weight = static_cast<YarnWeight>(weight); });
    });
    connect(metres_, &QDoubleSpinBox::valueChanged, this, [this](double metres) {
        change_yarn(
            tr("Change yarn length"),
            [metres](Yarn& yarn) {
                yarn.metres_per_100_g = metres > 0 ? std::optional<double>(metres) : std::nullopt;
            },
            QStringLiteral("yarn length"));
    });
    connect(hook_, &QDoubleSpinBox::valueChanged, this, [this](double mm) {
        session_.edit(
            tr("Use a %1 mm hook").arg(mm),
            [mm](Toy toy) {
                toy.hook_mm = mm;
                return toy;
            },
            QStringLiteral("hook"));
    });
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
}

void YarnPanel::show_yarn() {
    const int row = current();
    const bool any = row >= 0 && static_cast<std::size_t>(row) < session_.toy().yarns.size();
    for (QWidget* widget :
         {static_cast<QWidget*>(colour_), static_cast<QWidget*>(weight_), static_cast<QWidget*>(metres_)}) {
        widget->setEnabled(any);
    }
    remove_->setEnabled(any && model_->rowCount() > 1);
    if (!any) return;
    const Yarn& yarn = session_.toy().yarns[static_cast<std::size_t>(row)];
    const QSignalBlocker quiet(metres_);
    weight_->setCurrentIndex(static_cast<int>(yarn.weight));
    metres_->setValue(yarn.metres_per_100_g.value_or(0));
}

void YarnPanel::show_hook() {
    const QSignalBlocker quiet(hook_);
    const double mm = session_.toy().hook_mm;
    hook_->setValue(mm);
    const Hook* hook = find_hook(mm);
    QStringList names;
    if (hook != nullptr && !hook->us.empty())
        names << tr("US %1").arg(QLatin1String(hook->us.data(), static_cast<qsizetype>(hook->us.size())));
    if (hook != nullptr && !hook->uk.empty())
        names << tr("UK %1").arg(QLatin1String(hook->uk.data(), static_cast<qsizetype>(hook->uk.size())));
    hook_names_->setText(names.isEmpty() ? tr("no usual letter or number")
                                         : names.join(QStringLiteral(", ")));
}

}  // namespace roundwright::app
