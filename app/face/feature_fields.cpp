#include "app/face/feature_fields.h"

#include <cstdint>
#include <tuple>
#include <utility>

#include <QCheckBox>
#include <QColorDialog>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>

#include "app/kit/field_widgets.h"
#include "core/base/limits.h"
#include "core/face/feature_fit.h"
#include "core/face/first_feature.h"
#include "render/wording/colour_words.h"

namespace roundwright::app {

namespace {

constexpr double least_feature_mm = 0.5;
constexpr double most_feature_mm = 200;
constexpr double most_stitches_off = 500;

QDoubleSpinBox* half_stitch_box() {
    auto* box = new QDoubleSpinBox;
    box->setRange(-most_stitches_off, most_stitches_off);
    box->setDecimals(1);
    box->setSingleStep(0.5);
    box->setKeyboardTracking(false);
    box->setAlignment(Qt::AlignRight);
    return box;
}

QString width_text(const Feature& feature) {
    return FeatureFields::tr("%1 mm").arg(QLocale().toString(feature.width_mm, 'g', 4));
}

QSpinBox* round_box() { return whole_box(1, static_cast<int>(max_rounds_per_piece)); }

}  // namespace

FeatureFields::FeatureFields(QWidget* parent)
    : QWidget(parent),
      form_(new QFormLayout(this)),
      round_(round_box()),
      pair_(new QCheckBox(tr("A pair, &mirrored"))),
      apart_(whole_box(1, static_cast<int>(most_stitches_off))),
      right_(half_stitch_box()),
      end_round_(round_box()),
      end_right_(half_stitch_box()),
      width_(new QComboBox),
      height_(new QDoubleSpinBox),
      colour_(new QPushButton(tr("&Colour…"))),
      lids_(new QCheckBox(tr("With &lids"))),
      spacings_(spacing_buttons()) {
    build();
    connect_place();
    connect_size();
    connect_looks();
}

QWidget* FeatureFields::spacing_buttons() {
    auto* buttons = new QWidget;
    auto* row = new QHBoxLayout(buttons);
    row->setContentsMargins(0, 0, 0, 0);
    for (const auto& [name, spoken, spacing] :
         {std::tuple{tr("Close"), tr("Close together"), EyeSpacing::close},
          std::tuple{tr("Middle"), tr("Middle distance apart"), EyeSpacing::middle},
          std::tuple{tr("Wide"), tr("Wide apart"), EyeSpacing::wide}}) {
        auto* button = new QPushButton(name);
        // Narrower than the usual least width of a button: the three stand side by side in the panels'
        // column.
        button->setMinimumWidth(button->fontMetrics().horizontalAdvance(name) + 24);
        button->setAccessibleName(spoken);
        button->setAccessibleDescription(tr("Distance between the two"));
        connect(button, &QPushButton::clicked, this,
                [this, spacing = spacing] { Q_EMIT spacing_wanted(spacing); });
        row->addWidget(button);
    }
    return buttons;
}

void FeatureFields::build() {
    for (const int mm : safety_eye_sizes_mm) width_->addItem(tr("%1 mm").arg(mm), mm);
    width_->setEditable(true);
    width_->setInsertPolicy(QComboBox::NoInsert);
    height_->setRange(least_feature_mm, most_feature_mm);
    height_->setDecimals(1);
    height_->setSuffix(tr(" mm"));
    height_->setKeyboardTracking(false);
    height_->setAlignment(Qt::AlignRight);
    form_->setContentsMargins(0, 0, 0, 0);
    form_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form_->addRow(tr("After r&ound"), round_);
    form_->addRow(pair_);
    form_->addRow(tr("S&titches between"), apart_);
    form_->addRow(spacings_);
    form_->addRow(tr("S&titches to the right"), right_);
    form_->addRow(tr("End after round"), end_round_);
    form_->addRow(tr("End, stitches to the right"), end_right_);
    form_->addRow(tr("&Width"), width_);
    form_->addRow(tr("He&ight"), height_);
    width_->setAccessibleName(tr("Width on the face"));
    height_->setAccessibleName(tr("Height on the face"));
    auto* looks = new QHBoxLayout;
    looks->addWidget(colour_);
    looks->addWidget(lids_);
    form_->addRow(looks);
}

void FeatureFields::connect_place() {
    const auto move = [this](auto* box, const QString& step, const QString& merge_key, auto take) {
        using Box = std::remove_pointer_t<decltype(box)>;
        connect(box, &Box::valueChanged, this, [this, step, merge_key, take](auto value) {
            Q_EMIT edited(
                step, [take, value](Feature& feature) { take(feature, value); }, merge_key);
        });
    };
    const QString moved = tr("Move on the face");
    const QString end_moved = tr("Move the line's end");
    move(round_, moved, QStringLiteral("feature round"), [](Feature& f, int round) { f.round = round - 1; });
    move(apart_, moved, QStringLiteral("feature apart"), [](Feature& f, int n) { f.stitches_apart = n; });
    move(right_, moved, QStringLiteral("feature right"), [](Feature& f, double n) { f.stitches_right = n; });
    move(end_round_, end_moved, QStringLiteral("end round"),
         [](Feature& f, int round) { f.end_round = round - 1; });
    move(end_right_, end_moved, QStringLiteral("end right"),
         [](Feature& f, double n) { f.end_stitches_right = n; });
    connect(pair_, &QCheckBox::clicked, this, [this](bool pair) {
        Q_EMIT edited(pair ? tr("Make it a pair") : tr("Make it single"),
                      [pair](Feature& f) { f.pair = pair; }, {});
    });
}

void FeatureFields::connect_size() {
    connect(width_, &QComboBox::activated, this, &FeatureFields::take_width);
    connect(width_->lineEdit(), &QLineEdit::editingFinished, this, &FeatureFields::take_width);
    connect(height_, &QDoubleSpinBox::valueChanged, this, [this](double mm) {
        Q_EMIT edited(
            tr("Change size on the face"), [mm](Feature& f) { f.height_mm = mm; },
            QStringLiteral("feature height"));
    });
}

/// An oval stays one. The text shows fewer digits than the width may have, so text that stands says nothing.
void FeatureFields::take_width() {
    if (width_->currentText() == width_text(shown_)) return;
    const double mm = QLocale().toDouble(width_->currentText().section(QLatin1Char(' '), 0, 0));
    if (!(mm >= least_feature_mm && mm <= most_feature_mm)) return show_feature(shown_);
    Q_EMIT edited(tr("Change size on the face"),
                  [mm](Feature& f) {
                      const double oval = f.width_mm > 0 ? f.height_mm / f.width_mm : 1;
                      f.width_mm = mm;
                      if (f.kind != FeatureKind::stitched_line) f.height_mm = mm * oval;
                  },
                  {});
}

void FeatureFields::connect_looks() {
    connect(colour_, &QPushButton::clicked, this, &FeatureFields::choose_colour);
    connect(lids_, &QCheckBox::clicked, this, [this](bool lids) {
        Q_EMIT edited(lids ? tr("Add lids") : tr("Take the lids off"), [lids](Feature& f) { f.lids = lids; },
                      {});
    });
}

void FeatureFields::choose_colour() {
    const QColor before(shown_.colour.red, shown_.colour.green, shown_.colour.blue);
    const QColor chosen = QColorDialog::getColor(before, this, tr("Colour"));
    if (!chosen.isValid()) return;
    const auto channel = [](int value) { return static_cast<std::uint8_t>(value); };
    const Colour colour{channel(chosen.red()), channel(chosen.green()), channel(chosen.blue())};
    Q_EMIT edited(tr("Change colour"), [colour](Feature& f) { f.colour = colour; }, {});
}

void FeatureFields::show_feature(const Feature& feature) {
    shown_ = feature;
    const QSignalBlocker quiet[] = {QSignalBlocker(round_),     QSignalBlocker(apart_),
                                    QSignalBlocker(right_),     QSignalBlocker(end_round_),
                                    QSignalBlocker(end_right_), QSignalBlocker(height_),
                                    QSignalBlocker(width_)};
    round_->setValue(feature.round + 1);
    pair_->setChecked(feature.pair);
    apart_->setValue(feature.stitches_apart);
    right_->setValue(feature.stitches_right);
    end_round_->setValue(feature.end_round + 1);
    end_right_->setValue(feature.end_stitches_right);
    width_->setEditText(width_text(feature));
    height_->setValue(feature.height_mm);
    lids_->setChecked(feature.lids);
    colour_->setToolTip(colour_words(feature.colour));
    colour_->setAccessibleName(tr("Colour: %1").arg(colour_words(feature.colour)));
    show_rows(feature);
}

void FeatureFields::show_rows(const Feature& feature) {
    const bool line = feature.kind == FeatureKind::stitched_line;
    lids_->setVisible(has_washer(feature.kind));
    form_->setRowVisible(apart_, feature.pair);
    form_->setRowVisible(spacings_, feature.pair);
    form_->setRowVisible(right_, !feature.pair);
    form_->setRowVisible(end_round_, line);
    form_->setRowVisible(end_right_, line);
    form_->setRowVisible(width_, !line);
}

}  // namespace roundwright::app
