#include "app/face/face_panel.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QAction>
#include <QCheckBox>
#include <QColorDialog>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QItemSelectionModel>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QMenu>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/face/face_scene.h"
#include "app/face/feature_words.h"
#include "app/face/features_model.h"
#include "app/panels/field_widgets.h"
#include "core/base/limits.h"
#include "core/face/feature_fit.h"
#include "core/face/opening.h"
#include "core/face/place_feature.h"

namespace roundwright::app {

namespace {

/// Diameters that safety eyes are sold in, mm: from memory.
constexpr std::array<int, 15> eye_sizes_mm{4, 5, 6, 7, 8, 9, 10, 12, 14, 15, 16, 18, 20, 24, 30};
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

/// The gap nearest to a share of the piece's height, seen from the base.
int gap_at_height(const FaceSurface& surface, double share) {
    int best = 0;
    const auto off = [&](int round) {
        return std::abs(surface.at({surface.along_of_loop(round + 1), 0}).height_mm -
                        share * surface.height_mm());
    };
    for (int round = 0; has_gap(surface, round); ++round) {
        if (off(round) < off(best)) best = round;
    }
    return best;
}

/// Where a new feature sits at first, and how large it is beside the piece.
Feature first_feature(FeatureKind kind, const FaceSurface& surface, const std::vector<int>& counts) {
    Feature feature;
    feature.kind = kind;
    feature.pair = kind != FeatureKind::safety_nose;
    const bool below_eyes = kind == FeatureKind::safety_nose || kind == FeatureKind::stitched_line;
    feature.round = gap_at_height(surface, below_eyes ? 0.42 : 0.55);
    if (feature.round < static_cast<int>(counts.size())) {
        feature.stitches_apart = stitches_apart_for(EyeSpacing::middle, feature.round, counts);
    }
    const double wanted = surface.width_mm() / 7;
    feature.width_mm = *std::min_element(eye_sizes_mm.begin(), eye_sizes_mm.end(), [wanted](int a, int b) {
        return std::abs(a - wanted) < std::abs(b - wanted);
    });
    feature.height_mm = feature.width_mm;
    if (kind == FeatureKind::stitched_line) {
        feature.height_mm = 1.5;
        feature.end_round = feature.round;
        feature.end_stitches_right = feature.stitches_apart / 2.0 + 3;
    }
    return feature;
}

}  // namespace

FacePanel::FacePanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      model_(new FeaturesModel(session, this)),
      list_(new QListView),
      add_(new QPushButton(tr("&Add"))),
      remove_(new QPushButton(tr("&Remove"))),
      place_(new QPushButton(tr("&Place with a click"))),
      fields_(new QWidget),
      form_(new QFormLayout(fields_)),
      round_(whole_box(1, static_cast<int>(max_rounds_per_piece))),
      pair_(new QCheckBox(tr("A &pair, mirrored"))),
      apart_(whole_box(1, static_cast<int>(most_stitches_off))),
      right_(half_stitch_box()),
      width_(new QComboBox),
      height_(new QDoubleSpinBox),
      end_round_(whole_box(1, static_cast<int>(max_rounds_per_piece))),
      end_right_(half_stitch_box()),
      colour_(new QPushButton(tr("&Colour…"))),
      lids_(new QCheckBox(tr("With &lids"))),
      spacings_(new QWidget),
      direction_(new QDoubleSpinBox),
      guides_(new QCheckBox(tr("Show &guide lines"))),
      embroider_(new QPushButton(tr("&Embroider instead"))),
      place_words_(words_label()),
      time_words_(words_label()),
      safety_words_(words_label()) {
    build();
    add_shortcuts();
    connect_all();
    show_features();
}

void FacePanel::build() {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(list_part());
    layout->addWidget(place_part());
    layout->addWidget(place_words_);
    layout->addWidget(time_words_);
    layout->addWidget(safety_words_);
    layout->addWidget(embroider_, 0, Qt::AlignLeft);
    auto* face = new QFormLayout;
    direction_->setRange(-180, 180);
    direction_->setSingleStep(5);
    direction_->setDecimals(0);
    direction_->setSuffix(tr("°"));
    direction_->setWrapping(true);
    direction_->setKeyboardTracking(false);
    direction_->setAlignment(Qt::AlignRight);
    face->addRow(tr("&Direction of the face"), direction_);
    face->addRow(guides_);
    layout->addLayout(face);
    layout->addStretch(1);
}

QWidget* FacePanel::list_part() {
    auto* part = new QWidget;
    auto* layout = new QVBoxLayout(part);
    layout->setContentsMargins(0, 0, 0, 0);
    list_->setModel(model_);
    list_->setAccessibleName(tr("Features"));
    list_->setMaximumHeight(96);
    auto* menu = new QMenu(add_);
    for (auto kind : {FeatureKind::safety_eye, FeatureKind::safety_nose, FeatureKind::embroidered_eye,
                      FeatureKind::felt_disc, FeatureKind::stitched_line}) {
        menu->addAction(feature_kind_name(kind, kind != FeatureKind::safety_nose), this,
                        [this, kind] { add(kind); });
    }
    add_->setMenu(menu);
    place_->setCheckable(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(add_);
    buttons->addWidget(remove_);
    layout->addWidget(list_);
    layout->addLayout(buttons);
    layout->addWidget(place_);
    return part;
}

QWidget* FacePanel::place_part() {
    for (int mm : eye_sizes_mm) width_->addItem(tr("%1 mm").arg(mm), mm);
    width_->setEditable(true);
    width_->setInsertPolicy(QComboBox::NoInsert);
    height_->setRange(0.5, most_feature_mm);
    height_->setDecimals(1);
    height_->setSuffix(tr(" mm"));
    height_->setKeyboardTracking(false);
    height_->setAlignment(Qt::AlignRight);
    auto* row = new QHBoxLayout(spacings_);
    row->setContentsMargins(0, 0, 0, 0);
    const std::array<QString, 3> names{tr("Close"), tr("Middle"), tr("Wide")};
    for (int k = 0; k < 3; ++k) {
        auto* button = new QPushButton(names[static_cast<std::size_t>(k)]);
        button->setAccessibleDescription(tr("Distance between the two"));
        connect(button, &QPushButton::clicked, this, [this, k] { space(k); });
        row->addWidget(button);
    }
    form_->setContentsMargins(0, 0, 0, 0);
    form_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form_->addRow(tr("After r&ound"), round_);
    form_->addRow(pair_);
    form_->addRow(tr("S&titches apart"), apart_);
    form_->addRow(spacings_);
    form_->addRow(tr("S&titches to the right"), right_);
    form_->addRow(tr("Ends after roun&d"), end_round_);
    form_->addRow(tr("Ends stitches to the r&ight"), end_right_);
    form_->addRow(tr("&Width"), width_);
    form_->addRow(tr("&Height"), height_);
    auto* looks = new QHBoxLayout;
    looks->addWidget(colour_);
    looks->addWidget(lids_);
    form_->addRow(looks);
    return fields_;
}

void FacePanel::add_shortcuts() {
    struct Key {
        const char* text;
        QKeySequence keys;
        int rounds;
        int stitches;
    };
    for (const Key& key :
         {Key{QT_TR_NOOP("Feature up by one round"), Qt::CTRL | Qt::Key_Up, -1, 0},
          Key{QT_TR_NOOP("Feature down by one round"), Qt::CTRL | Qt::Key_Down, 1, 0},
          Key{QT_TR_NOOP("Feature closer, or to the left, by one stitch"), Qt::CTRL | Qt::Key_Left, 0, -1},
          Key{QT_TR_NOOP("Feature wider, or to the right, by one stitch"), Qt::CTRL | Qt::Key_Right, 0, 1}}) {
        auto* action = new QAction(tr(key.text), this);
        action->setShortcut(key.keys);
        action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
        connect(action, &QAction::triggered, this, [this, key] { nudge(key.rounds, key.stitches); });
        addAction(action);
    }
    setToolTip(tr("Ctrl and the arrow keys move a feature by one round or one stitch."));
}

void FacePanel::connect_all() {
    connect(remove_, &QPushButton::clicked, this, &FacePanel::remove);
    connect(colour_, &QPushButton::clicked, this, &FacePanel::choose_colour);
    connect(embroider_, &QPushButton::clicked, this, &FacePanel::embroider_instead);
    connect(place_, &QPushButton::toggled, this, [this](bool placing) {
        if (scene_ != nullptr) scene_->place_by_click(placing ? current() : -1);
    });
    connect(guides_, &QCheckBox::toggled, this, [this](bool shown) {
        if (scene_ != nullptr) scene_->set_guides(shown);
    });
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        place_->setChecked(false);
        show_fields();
    });
    connect_place();
    connect_looks();
    connect(direction_, &QDoubleSpinBox::valueChanged, this, [this](double degrees) {
        session_.edit_piece(
            tr("Turn the face"), [degrees](Piece& piece) { piece.face_degrees = degrees; },
            QStringLiteral("face direction"));
    });
    connect(&session_, &DocumentSession::toy_changed, this, &FacePanel::show_features);
    connect(&session_, &DocumentSession::current_piece_changed, this, &FacePanel::show_features);
    connect(&session_, &DocumentSession::study_ready, this, &FacePanel::show_words);
    connect(&session_.preferences(), &Preferences::units_changed, this, &FacePanel::show_words);
}

void FacePanel::connect_place() {
    connect(round_, &QSpinBox::valueChanged, this, [this](int round) {
        change(
            tr("Move feature"), [round](Feature& f) { f.round = round - 1; },
            QStringLiteral("feature round"));
    });
    connect(pair_, &QCheckBox::clicked, this, [this](bool pair) {
        change(pair ? tr("Make it a pair") : tr("Make it a single one"),
               [pair](Feature& f) { f.pair = pair; });
    });
    connect(apart_, &QSpinBox::valueChanged, this, [this](int apart) {
        change(
            tr("Move feature"), [apart](Feature& f) { f.stitches_apart = apart; },
            QStringLiteral("feature apart"));
    });
    connect(right_, &QDoubleSpinBox::valueChanged, this, [this](double right) {
        change(
            tr("Move feature"), [right](Feature& f) { f.stitches_right = right; },
            QStringLiteral("feature right"));
    });
    connect(end_round_, &QSpinBox::valueChanged, this, [this](int round) {
        change(
            tr("Move the line's end"), [round](Feature& f) { f.end_round = round - 1; },
            QStringLiteral("end round"));
    });
    connect(end_right_, &QDoubleSpinBox::valueChanged, this, [this](double right) {
        change(
            tr("Move the line's end"), [right](Feature& f) { f.end_stitches_right = right; },
            QStringLiteral("end right"));
    });
}

void FacePanel::connect_looks() {
    const auto take_width = [this] {
        const double mm = QLocale().toDouble(width_->currentText().section(QLatin1Char(' '), 0, 0));
        if (!(mm >= 0.5 && mm <= most_feature_mm)) return show_fields();
        change(tr("Change feature size"), [mm](Feature& f) {
            const double oval = f.width_mm > 0 ? f.height_mm / f.width_mm : 1;
            f.width_mm = mm;
            if (f.kind != FeatureKind::stitched_line) f.height_mm = mm * oval;
        });
    };
    connect(width_, &QComboBox::activated, this, take_width);
    connect(width_->lineEdit(), &QLineEdit::editingFinished, this, take_width);
    connect(height_, &QDoubleSpinBox::valueChanged, this, [this](double mm) {
        change(
            tr("Change feature size"), [mm](Feature& f) { f.height_mm = mm; },
            QStringLiteral("feature height"));
    });
    connect(lids_, &QCheckBox::clicked, this, [this](bool lids) {
        change(lids ? tr("Add lids") : tr("Take the lids off"), [lids](Feature& f) { f.lids = lids; });
    });
}

void FacePanel::set_scene(FaceScene* scene) {
    scene_ = scene;
    scene_->set_guides(guides_->isChecked());
    connect(scene_, &FaceScene::feature_picked, this, &FacePanel::select);
    connect(scene_, &FaceScene::placing_ended, this, [this] { place_->setChecked(false); });
}

int FacePanel::current() const {
    const QModelIndex index = list_->currentIndex();
    return index.isValid() ? index.row() : -1;
}

void FacePanel::select(int feature) { list_->setCurrentIndex(model_->index(feature)); }

const Feature* FacePanel::feature() const {
    const Piece* piece = session_.piece();
    const int row = current();
    if (piece == nullptr || row < 0 || static_cast<std::size_t>(row) >= piece->features.size())
        return nullptr;
    return &piece->features[static_cast<std::size_t>(row)];
}

std::vector<int> FacePanel::counts() const {
    const auto study = session_.study(session_.current_piece());
    return study == nullptr ? std::vector<int>() : stitch_counts(study->graph.graph);
}

void FacePanel::change(const QString& step, const std::function<void(Feature&)>& edit,
                       const QString& merge_key) {
    if (feature() == nullptr) return;
    const auto row = static_cast<std::size_t>(current());
    session_.edit_piece(
        step, [&](Piece& piece) { edit(piece.features[row]); }, merge_key);
}

void FacePanel::add(FeatureKind kind) {
    const Piece* piece = session_.piece();
    const auto study = session_.study(session_.current_piece());
    if (piece == nullptr || study == nullptr) return;
    const Feature feature = first_feature(kind, FaceSurface(*piece, study->shape), counts());
    const auto row = static_cast<int>(piece->features.size());
    session_.edit_piece(tr("Add %1").arg(feature_kind_name(kind, feature.pair).toLower()),
                        [&](Piece& changed) { changed.features.push_back(feature); });
    select(row);
    list_->setFocus();
}

void FacePanel::remove() {
    if (feature() == nullptr) return;
    const int row = current();
    session_.edit_piece(tr("Remove feature"),
                        [row](Piece& piece) { piece.features.erase(piece.features.begin() + row); });
}

void FacePanel::embroider_instead() {
    change(tr("Embroider instead"), [](Feature& f) { f = embroidered(f); });
}

void FacePanel::nudge(int rounds, int stitches) {
    const std::vector<int> around = counts();
    if (around.size() < 2) return;
    change(
        tr("Move feature"), [&](Feature& f) { f = nudged(f, rounds, stitches, around); },
        QStringLiteral("nudge"));
}

void FacePanel::space(int spacing) {
    const std::vector<int> around = counts();
    change(tr("Space the pair"), [&](Feature& f) {
        if (static_cast<std::size_t>(f.round) >= around.size()) return;
        f.stitches_apart = stitches_apart_for(static_cast<EyeSpacing>(spacing), f.round, around);
    });
}

void FacePanel::choose_colour() {
    const Feature* now = feature();
    if (now == nullptr) return;
    const QColor before(now->colour.red, now->colour.green, now->colour.blue);
    const QColor chosen = QColorDialog::getColor(before, this, tr("Colour"));
    if (!chosen.isValid()) return;
    const auto channel = [](int value) { return static_cast<std::uint8_t>(value); };
    change(tr("Change colour"), [&](Feature& f) {
        f.colour = {channel(chosen.red()), channel(chosen.green()), channel(chosen.blue())};
    });
}

void FacePanel::show_features() {
    setEnabled(session_.piece() != nullptr);
    if (current() < 0 && model_->rowCount() > 0) select(0);
    show_fields();
}

void FacePanel::show_fields() {
    const Feature* now = feature();
    for (QWidget* widget : {fields_, static_cast<QWidget*>(remove_), static_cast<QWidget*>(place_)}) {
        widget->setEnabled(now != nullptr);
    }
    fields_->setVisible(now != nullptr);
    const QSignalBlocker quiet[] = {QSignalBlocker(round_),     QSignalBlocker(apart_),
                                    QSignalBlocker(right_),     QSignalBlocker(end_round_),
                                    QSignalBlocker(end_right_), QSignalBlocker(height_),
                                    QSignalBlocker(direction_), QSignalBlocker(width_)};
    if (session_.piece() != nullptr) direction_->setValue(session_.piece()->face_degrees);
    if (now != nullptr) {
        const bool line = now->kind == FeatureKind::stitched_line;
        round_->setValue(now->round + 1);
        pair_->setChecked(now->pair);
        apart_->setValue(now->stitches_apart);
        right_->setValue(now->stitches_right);
        end_round_->setValue(now->end_round + 1);
        end_right_->setValue(now->end_stitches_right);
        width_->setEditText(tr("%1 mm").arg(QLocale().toString(now->width_mm, 'g', 4)));
        height_->setValue(now->height_mm);
        lids_->setChecked(now->lids);
        lids_->setVisible(has_washer(now->kind));
        form_->setRowVisible(apart_, now->pair);
        form_->setRowVisible(spacings_, now->pair);
        form_->setRowVisible(right_, !now->pair);
        form_->setRowVisible(end_round_, line);
        form_->setRowVisible(end_right_, line);
        form_->setRowVisible(width_, !line);
    }
    show_words();
}

void FacePanel::show_words() {
    const Feature* now = feature();
    const auto study = session_.study(session_.current_piece());
    embroider_->setVisible(now != nullptr && has_washer(now->kind));
    for (QLabel* label : {place_words_, time_words_, safety_words_}) {
        label->setVisible(now != nullptr);
        label->clear();
    }
    if (now == nullptr || study == nullptr || !study->shape.usable()) return;
    const LengthUnit unit = session_.preferences().units();
    const FaceSurface surface(*session_.piece(), study->shape);
    const PlacedFeature placed = place_feature(*now, surface, counts());
    if (placed.starts.empty()) {
        place_words_->setText(
            tr("Its rounds are not there: the gap after round %1 is gone.").arg(now->round + 1));
        return;
    }
    const QString place = feature_place(*now);
    place_words_->setText(tr("%1: %2.").arg(place.left(1).toUpper() + place.mid(1),
                                            feature_measures(*now, measure_feature(placed, surface), unit)));
    if (has_washer(now->kind)) {
        const std::vector<double> openings = openings_mm(study->problem.rest_loop_mm);
        const double washer = washer_diameter_mm(*now);
        const FittingTime time =
            fitting_time(now->round, washer, openings,
                         start_opening_mm(session_.piece()->start, study->problem.rest_loop_mm));
        time_words_->setText(fitting_words(time, washer, openings, unit));
    }
    time_words_->setVisible(has_washer(now->kind));
    safety_words_->setText(safety_words(*now));
}

}  // namespace roundwright::app
