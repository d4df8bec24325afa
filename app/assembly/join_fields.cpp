#include "app/assembly/join_fields.h"

#include <algorithm>
#include <type_traits>

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QSignalBlocker>
#include <QSpinBox>

#include "app/assembly/join_edits.h"
#include "app/kit/field_widgets.h"
#include "render/wording/as_sentence.h"
#include "render/wording/join_place.h"

namespace roundwright::app {
namespace {

constexpr double most_stitches_off = 500;
constexpr double half_turn = 180;
constexpr double most_lean = 90;
constexpr double most_sink_mm = 100;
constexpr Seam seams[] = {Seam::edge, Seam::closed, Seam::straight,
                          Seam::hung, Seam::layers, Seam::worked_on};

/// In a narrow column a long choice is cut rather than making the column wide.
QComboBox* narrow_combo() {
    auto* box = new QComboBox;
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(12);
    box->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    return box;
}

std::vector<std::optional<PieceCopy>> places_for(const Toy& toy, const ToyUnit& unit) {
    std::vector<std::optional<PieceCopy>> places{std::nullopt};
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece) {
        for (int number = 0; number < toy.pieces[piece].make; ++number) {
            const PieceCopy copy{toy.pieces.id(piece), number};
            const bool circle = std::ranges::any_of(
                unit.copies, [&](const PieceCopy& own) { return is_sewn_to(toy, copy, own); });
            if (!circle) places.push_back(copy);
        }
    }
    return places;
}

}  // namespace

JoinFields::JoinFields(const Preferences& preferences, QWidget* parent)
    : QWidget(parent),
      form_(new QFormLayout(this)),
      onto_(narrow_combo()),
      pair_(new QCheckBox(tr("A mirrored pair"))),
      end_(narrow_combo()),
      seam_(narrow_combo()),
      round_(new QSpinBox),
      around_(new QCheckBox(tr("All the way round"))),
      right_(degrees_box(most_stitches_off)),
      turn_(degrees_box(half_turn)),
      lean_(degrees_box(most_lean)),
      lean_right_(degrees_box(most_lean)),
      sink_(new LengthSpinBox(preferences, -most_sink_mm, most_sink_mm)) {
    build();
    connect_choices();
    connect_numbers();
}

QDoubleSpinBox* JoinFields::degrees_box(double most) {
    auto* box = new QDoubleSpinBox;
    box->setRange(-most, most);
    box->setDecimals(0);
    box->setSingleStep(5);
    box->setSuffix(tr("°"));
    box->setKeyboardTracking(false);
    box->setAlignment(Qt::AlignRight);
    return box;
}

void JoinFields::build() {
    right_->setSuffix({});
    right_->setDecimals(1);
    right_->setSingleStep(0.5);
    turn_->setWrapping(true);
    round_->setKeyboardTracking(false);
    round_->setAlignment(Qt::AlignRight);
    round_->setSpecialValueText(tr("the start"));
    end_->addItem(tr("Its last round"), static_cast<int>(JoinedEnd::end));
    end_->addItem(tr("Its start"), static_cast<int>(JoinedEnd::start));
    for (const Seam seam : seams) seam_->addItem(seam_name(seam), static_cast<int>(seam));
    form_->setContentsMargins(0, 0, 0, 0);
    form_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    constexpr int shortest_choice = 22;  // "Nothing: it stands by itself" is the longest of the usual ones
    onto_->setMinimumContentsLength(shortest_choice);
    form_->addRow(tr("Sewn to"), onto_);
    form_->addRow(pair_);
    form_->addRow(tr("By"), end_);
    form_->addRow(tr("How"), seam_);
    form_->addRow(tr("After round"), round_);
    form_->addRow(around_);
    form_->addRow(tr("Stitches to the right"), right_);
    form_->addRow(tr("Turned to the left"), turn_);
    form_->addRow(tr("Leaning up"), lean_);
    form_->addRow(tr("Leaning to the right"), lean_right_);
    form_->addRow(tr("Sunk in by"), sink_);
    end_->setAccessibleName(tr("Which end is sewn on"));
    seam_->setAccessibleName(tr("How it is sewn on"));
}

void JoinFields::connect_choices() {
    connect(onto_, &QComboBox::activated, this,
            [this](int row) { Q_EMIT onto_chosen(choices_[static_cast<std::size_t>(row)]); });
    connect(pair_, &QCheckBox::clicked, this, &JoinFields::pair_chosen);
    connect(end_, &QComboBox::activated, this, [this] {
        const auto end = static_cast<JoinedEnd>(end_->currentData().toInt());
        Q_EMIT edited(tr("Sew on by the other end"), [end](Join& join) { join.end = end; }, {});
    });
    connect(seam_, &QComboBox::activated, this, [this] {
        const auto seam = static_cast<Seam>(seam_->currentData().toInt());
        Q_EMIT edited(tr("Change how it is sewn on"), [seam](Join& join) { join.seam = seam; }, {});
    });
    connect(around_, &QCheckBox::clicked, this, [this](bool around) {
        Q_EMIT edited(around ? tr("Sew on all the way round") : tr("Sew on at one place"),
                      [around](Join& join) { join.at.around = around; }, {});
    });
}

void JoinFields::connect_numbers() {
    const auto number = [this](auto* box, const QString& step, const char* key, auto take) {
        using Box = std::remove_pointer_t<decltype(box)>;
        connect(box, &Box::valueChanged, this, [this, step, key, take](auto value) {
            Q_EMIT edited(
                step, [take, value](Join& join) { take(join, value); }, QString::fromLatin1(key));
        });
    };
    const QString moved = tr("Move what is sewn on");
    const QString leant = tr("Lean what is sewn on");
    number(round_, moved, "join-round", [](Join& join, int value) { join.at.round = value - 1; });
    number(right_, moved, "join-right", [](Join& join, double value) { join.at.stitches_right = value; });
    number(turn_, tr("Turn what is sewn on"), "join-turn",
           [](Join& join, double value) { join.turn_degrees = value; });
    number(lean_, leant, "join-lean", [](Join& join, double value) { join.lean_degrees = value; });
    number(lean_right_, leant, "join-lean-right",
           [](Join& join, double value) { join.lean_right_degrees = value; });
    connect(sink_, &LengthSpinBox::edited, this, [this](double mm) {
        Q_EMIT edited(
            tr("Sink in what is sewn on"), [mm](Join& join) { join.sink_mm = mm; },
            QStringLiteral("join-sink"));
    });
}

void JoinFields::show_unit(const Toy& toy, const ToyUnit& unit) {
    show_choices(toy, unit);
    const bool is_sewn = unit.join && *unit.join < toy.joins.size();
    for (QWidget* field :
         {static_cast<QWidget*>(pair_), static_cast<QWidget*>(end_), static_cast<QWidget*>(seam_),
          static_cast<QWidget*>(round_), static_cast<QWidget*>(around_), static_cast<QWidget*>(right_),
          static_cast<QWidget*>(turn_), static_cast<QWidget*>(lean_), static_cast<QWidget*>(lean_right_),
          static_cast<QWidget*>(sink_)})
        form_->setRowVisible(field, is_sewn);
    if (is_sewn) show_join(toy, toy.joins[*unit.join]);
}

void JoinFields::show_choices(const Toy& toy, const ToyUnit& unit) {
    choices_ = places_for(toy, unit);
    std::optional<PieceCopy> now;
    if (unit.join && *unit.join < toy.joins.size()) now = toy.joins[*unit.join].onto;
    if (std::ranges::find(choices_, now) == choices_.end()) choices_.push_back(now);
    QStringList names;
    for (const auto& choice : choices_)
        names << (choice ? as_sentence(copy_name(toy, *choice)) : tr("Nothing: it stands by itself"));
    QStringList shown;
    for (int row = 0; row < onto_->count(); ++row) shown << onto_->itemText(row);
    if (names != shown) {
        onto_->clear();
        onto_->addItems(names);
    }
    onto_->setCurrentIndex(static_cast<int>(std::ranges::find(choices_, now) - choices_.begin()));
}

void JoinFields::show_join(const Toy& toy, const Join& join) {
    const QSignalBlocker quiet[] = {QSignalBlocker(round_), QSignalBlocker(right_), QSignalBlocker(turn_),
                                    QSignalBlocker(lean_), QSignalBlocker(lean_right_)};
    const auto onto = toy.pieces.index_of(join.onto.piece);
    const int rounds = onto ? static_cast<int>(toy.pieces[*onto].rounds.size()) : 0;
    pair_->setChecked(join.pair);
    end_->setCurrentIndex(end_->findData(static_cast<int>(join.end)));
    seam_->setCurrentIndex(seam_->findData(static_cast<int>(join.seam)));
    const int most = std::max(rounds, join.at.round + 1);
    if (round_->maximum() != most) round_->setRange(0, most);
    show_value(round_, join.at.round + 1);
    around_->setChecked(join.at.around);
    const bool at_an_end = join.at.round < 0 || join.at.round >= rounds - 1;
    around_->setEnabled(!at_an_end);
    right_->setEnabled(!at_an_end && !join.at.around);
    show_value(right_, join.at.stitches_right);
    show_value(turn_, join.turn_degrees);
    show_value(lean_, join.lean_degrees);
    show_value(lean_right_, join.lean_right_degrees);
    sink_->show_millimetres(join.sink_mm);
}

}  // namespace roundwright::app
