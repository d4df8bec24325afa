#include "app/face/face_panel.h"

#include <QAction>
#include <QApplication>
#include <QCheckBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QItemSelectionModel>
#include <QLabel>
#include <QListView>
#include <QMenu>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/face/face_scene.h"
#include "app/face/features_model.h"
#include "app/kit/action_maker.h"
#include "app/kit/field_widgets.h"
#include "app/kit/true_focus.h"
#include "core/face/feature_fit.h"
#include "core/face/first_feature.h"
#include "core/face/opening.h"
#include "core/study/study_surface.h"
#include "render/wording/as_sentence.h"
#include "render/wording/feature_name.h"
#include "render/wording/feature_words.h"

namespace roundwright::app {

FacePanel::FacePanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      model_(new FeaturesModel(session, this)),
      list_(new TrueFocus<QListView>),
      add_(new QPushButton(tr("A&dd"))),
      remove_(new QPushButton(tr("Remo&ve"))),
      place_(new QPushButton(tr("Place with a clic&k"))),
      fields_(new FeatureFields),
      direction_(new QDoubleSpinBox),
      guides_(new QCheckBox(tr("Show g&uide lines"))),
      embroider_(new QPushButton(tr("Em&broider instead"))),
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
    layout->addWidget(fields_);
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
    face->addRow(tr("Direction of the face"), direction_);
    face->addRow(guides_);
    layout->addLayout(face);
    layout->addStretch(1);
}

QWidget* FacePanel::list_part() {
    auto* part = new QWidget;
    auto* layout = new QVBoxLayout(part);
    layout->setContentsMargins(0, 0, 0, 0);
    list_->setModel(model_);
    list_->setAccessibleName(tr("Eyes, nose and other parts"));
    remove_->setAccessibleName(tr("Remove the part of the face"));
    list_->setMaximumHeight(96);
    auto* menu = new QMenu(add_);
    for (auto kind : {FeatureKind::safety_eye, FeatureKind::safety_nose, FeatureKind::embroidered_eye,
                      FeatureKind::felt_disc, FeatureKind::stitched_line}) {
        menu->addAction(feature_kind_name(kind, kind != FeatureKind::safety_nose), this,
                        [this, kind] { add(kind); });
    }
    add_->setMenu(menu);
    place_->setCheckable(true);
    place_->setObjectName(QStringLiteral("place"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(add_);
    buttons->addWidget(remove_);
    layout->addWidget(list_);
    layout->addLayout(buttons);
    layout->addWidget(place_);
    return part;
}

void FacePanel::add_shortcuts() {
    struct Step {
        const char* id;
        int up;
        int right;
    };
    for (const Step& step : {Step{"face.up", 1, 0}, Step{"face.down", -1, 0}, Step{"face.left", 0, -1},
                             Step{"face.right", 0, 1}}) {
        auto* action = make_action(this, step.id);
        connect(action, &QAction::triggered, this, [this, step] { nudge(step.up, step.right); });
        nudges_ << action;
    }
    list_->setToolTip(tr("Ctrl and the arrow keys move the selected one."));
}

void FacePanel::fill_menu(QMenu* menu) const { menu->addActions(nudges_); }

/// Never without a sign of what would move.
void FacePanel::update_nudges() {
    for (QAction* action : std::as_const(nudges_))
        action->setEnabled((feature() != nullptr && (picked_ || isVisible())) || moves_other());
}

void FacePanel::set_other(Other other) {
    other_ = std::move(other);
    update_nudges();
}

bool FacePanel::moves_other() const {
    const QWidget* focus = QApplication::focusWidget();
    const bool here = feature() != nullptr && focus != nullptr && isAncestorOf(focus);
    return !here && other_.can_be_moved && other_.can_be_moved();
}

void FacePanel::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    update_nudges();
}

void FacePanel::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    update_nudges();
}

void FacePanel::connect_all() {
    connect(remove_, &QPushButton::clicked, this, &FacePanel::remove);
    connect(embroider_, &QPushButton::clicked, this, &FacePanel::embroider_instead);
    connect(place_, &QPushButton::toggled, this, [this](bool placing) {
        if (scene_ == nullptr) return;
        if (placing) scene_->show_face_if_hidden();
        scene_->place_by_click(placing ? current() : -1);
    });
    connect(guides_, &QCheckBox::toggled, this, [this](bool shown) {
        if (scene_ != nullptr) scene_->set_guides(shown);
    });
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        place_->setChecked(false);
        side_ = 1;
        show_fields();
    });
    connect(fields_, &FeatureFields::edited, this, &FacePanel::change);
    connect(fields_, &FeatureFields::spacing_wanted, this, &FacePanel::space);
    connect(direction_, &QDoubleSpinBox::valueChanged, this, [this](double degrees) {
        session_.edit_piece(
            tr("Turn the face"), [degrees](Piece& piece) { piece.face_degrees = degrees; },
            QStringLiteral("face direction"));
    });
    connect(&session_, &DocumentSession::toy_changed, this, &FacePanel::show_features);
    connect(&session_, &DocumentSession::current_piece_changed, this, [this] {
        picked_ = false;
        show_features();
    });
    connect(&session_, &DocumentSession::study_ready, this, &FacePanel::show_words);
    connect(&session_.preferences(), &Preferences::units_changed, this, &FacePanel::show_words);
}

void FacePanel::set_scene(FaceScene* scene) {
    scene_ = scene;
    scene_->set_guides(guides_->isChecked());
    connect(scene_, &FaceScene::feature_picked, this, &FacePanel::pick);
    connect(scene_, &FaceScene::placing_ended, this, [this] { place_->setChecked(false); });
}

int FacePanel::current() const {
    const QModelIndex index = list_->currentIndex();
    return index.isValid() ? index.row() : -1;
}

void FacePanel::select(int feature) { list_->setCurrentIndex(model_->index(feature)); }

void FacePanel::pick(int feature, int side) {
    select(feature);
    picked_ = true;
    side_ = side;
    update_nudges();
    Q_EMIT picked_on_the_shape();
}

const Feature* FacePanel::feature() const {
    const Piece* piece = session_.piece();
    const int row = current();
    if (piece == nullptr || row < 0 || static_cast<std::size_t>(row) >= piece->features.size())
        return nullptr;
    return &piece->features[static_cast<std::size_t>(row)];
}

std::vector<int> FacePanel::counts() const {
    const auto study = session_.study(session_.current_piece());
    return study == nullptr ? std::vector<int>() : stitch_counts(study->graph().graph);
}

void FacePanel::change(const QString& step, const FeatureFields::Edit& edit, const QString& merge_key) {
    if (feature() == nullptr) return;
    const auto row = static_cast<std::size_t>(current());
    session_.edit_piece(
        step, [&](Piece& piece) { edit(piece.features[row]); }, merge_key);
}

void FacePanel::add(FeatureKind kind) {
    const Piece* piece = session_.piece();
    const auto study = session_.study(session_.current_piece());
    if (piece == nullptr || study == nullptr) return;
    const Feature feature = first_feature(kind, study_face(*piece, *study), counts());
    const auto row = static_cast<int>(piece->features.size());
    session_.edit_piece(tr("Add %1").arg(feature_kind_within(kind, feature.pair)),
                        [&](Piece& changed) { changed.features.push_back(feature); });
    select(row);
    if (scene_ != nullptr) scene_->show_face();
    list_->setFocus();
}

void FacePanel::remove() {
    if (feature() == nullptr) return;
    const int row = current();
    session_.edit_piece(tr("Remove from the face"),
                        [row](Piece& piece) { piece.features.erase(piece.features.begin() + row); });
}

void FacePanel::embroider_instead() {
    change(tr("Embroider instead"), [](Feature& f) { f = embroidered(f); });
}

void FacePanel::nudge(int up, int right) {
    if (moves_other()) return other_.move(up, right);
    const std::vector<int> around = counts();
    if (feature() == nullptr || around.size() < 2) return;
    const int rounds = session_.piece()->starts_at_top ? -up : up;
    const int stitches = feature()->pair ? side_ * right : right;
    change(
        tr("Move on the face"), [&](Feature& f) { f = nudged(f, rounds, stitches, around); },
        QStringLiteral("nudge"));
}

void FacePanel::space(EyeSpacing spacing) {
    const std::vector<int> around = counts();
    change(tr("Space the pair"), [&](Feature& f) {
        if (static_cast<std::size_t>(f.round) >= around.size()) return;
        f.stitches_apart = stitches_apart_for(spacing, f.round, around);
    });
}

void FacePanel::show_features() {
    setEnabled(session_.piece() != nullptr);
    if (current() < 0 && model_->rowCount() > 0) select(0);
    show_fields();
}

void FacePanel::show_fields() {
    const Feature* now = feature();
    for (QWidget* widget : {static_cast<QWidget*>(remove_), static_cast<QWidget*>(place_)})
        widget->setEnabled(now != nullptr);
    fields_->setVisible(now != nullptr);
    if (now != nullptr) fields_->show_feature(*now);
    const QSignalBlocker quiet(direction_);
    if (session_.piece() != nullptr) direction_->setValue(session_.piece()->face_degrees);
    update_nudges();
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
    if (now == nullptr || study == nullptr || !study->measures().usable()) return;
    const LengthUnit unit = session_.preferences().units();
    const FaceSurface surface = study_face(*session_.piece(), *study);
    const PlacedFeature placed = place_feature(*now, surface, counts());
    if (placed.starts.empty()) {
        place_words_->setText(tr("Its place is gone: there is no gap after round %1.").arg(now->round + 1));
        return;
    }
    const QString place = feature_place(*now);
    place_words_->setText(tr("%1: %2.").arg(as_sentence(place),
                                            feature_measures(*now, measure_feature(placed, surface), unit)));
    time_words_->setVisible(has_washer(now->kind));
    if (has_washer(now->kind)) show_fitting_time(*now, *study);
    safety_words_->setText(safety_words(*now));
}

void FacePanel::show_fitting_time(const Feature& feature, const PieceStudy& study) {
    const std::vector<double>& loops = study.problem().rest_loop_mm;
    const std::vector<double> openings = openings_mm(loops, study.fabric.mm);
    const double washer = washer_diameter_mm(feature);
    const FittingTime time = fitting_time(feature.round, washer, openings,
                                          start_opening_mm(session_.piece()->start, loops, study.fabric.mm));
    time_words_->setText(fitting_words(time, washer, openings, session_.preferences().units()));
}

}  // namespace roundwright::app
