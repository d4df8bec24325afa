#include "app/materials/stuffed_part_fields.h"

#include <algorithm>

#include <QCheckBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/measure_spin_box.h"

namespace roundwright::app {
namespace {

constexpr double most_pellets_g = 5000;

/// What a limb is often stuffed to: two thirds, so that it bends where it is sewn on (common practice).
RoundSpan first_part(const Piece& piece) {
    const int rounds = static_cast<int>(piece.rounds.size());
    return {0, std::max(0, (2 * rounds + 2) / 3 - 1)};
}

}  // namespace

StuffedPartFields::StuffedPartFields(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      part_(new QCheckBox(tr("Stuff onl&y some rounds"))),
      rounds_(new QWidget),
      first_(whole_box(1, 1)),
      last_(whole_box(1, 1)),
      pellets_(new MeasureSpinBox),
      caution_(words_label(tr("About the pellets"))) {
    build();
    connect_all();
    show_piece();
}

void StuffedPartFields::build() {
    first_->setAccessibleName(tr("First stuffed round"));
    last_->setAccessibleName(tr("Last stuffed round"));
    part_->setToolTip(tr("A limb that is left empty at one end bends there"));
    pellets_->setRange(0, most_pellets_g);
    pellets_->setDecimals(0);
    pellets_->setSingleStep(5);
    pellets_->setSuffix(tr(" g"));
    pellets_->setSpecialValueText(tr("none"));
    pellets_->setToolTip(
        tr("Plastic pellets in a bag of their own, at the lowest point of the piece, so that the toy stands "
           "or sits well"));
    caution_->setText(
        tr("Pellets are small parts: sew them into a bag of closely woven fabric. The rules that apply where "
           "the toy is sold come first."));
    auto* span = new QHBoxLayout(rounds_);
    span->setContentsMargins(22, 0, 0, 0);
    auto* rounds = new QLabel(tr("Rounds"));
    rounds->setBuddy(first_);
    span->addWidget(rounds);
    span->addWidget(first_);
    span->addWidget(new QLabel(tr("to")));
    span->addWidget(last_);
    span->addStretch(1);
    auto* form = new QFormLayout;
    form->addRow(tr("Pellets in it"), pellets_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(part_);
    layout->addWidget(rounds_);
    layout->addLayout(form);
    layout->addWidget(caution_);
}

void StuffedPartFields::connect_all() {
    connect(part_, &QCheckBox::clicked, this, &StuffedPartFields::stuff_a_part);
    connect(first_, &QSpinBox::valueChanged, this, [this](int first) {
        set_rounds({first - 1, std::max(first, last_->value()) - 1}, QStringLiteral("stuffed-from"));
    });
    connect(last_, &QSpinBox::valueChanged, this, [this](int last) {
        set_rounds({std::min(first_->value(), last) - 1, last - 1}, QStringLiteral("stuffed-to"));
    });
    connect(pellets_, &QDoubleSpinBox::valueChanged, this, [this](double grams) {
        session_.edit_piece(
            tr("Change the pellets"), [grams](Piece& piece) { piece.weight_grams = grams; },
            QStringLiteral("pellets"));
    });
    connect(&session_, &DocumentSession::toy_changed, this, &StuffedPartFields::show_piece);
    connect(&session_, &DocumentSession::current_piece_changed, this, &StuffedPartFields::show_piece);
    connect(&session_, &DocumentSession::file_changed, this, &StuffedPartFields::show_piece);
}

void StuffedPartFields::stuff_a_part(bool part) {
    session_.end_merging();
    session_.edit_piece(part ? tr("Stuff only some rounds") : tr("Stuff the whole piece"),
                        [part](Piece& piece) {
                            if (part)
                                piece.stuffed_rounds = first_part(piece);
                            else
                                piece.stuffed_rounds.reset();
                        });
}

void StuffedPartFields::set_rounds(RoundSpan rounds, const QString& merge_key) {
    session_.edit_piece(
        tr("Change the stuffed rounds"), [rounds](Piece& piece) { piece.stuffed_rounds = rounds; },
        merge_key);
}

void StuffedPartFields::show_piece() {
    const Piece* piece = session_.piece();
    if (piece == nullptr) return;
    show_rounds(*piece);
    show_pellets(*piece);
}

void StuffedPartFields::show_rounds(const Piece& piece) {
    const QSignalBlocker quiet[] = {QSignalBlocker(first_), QSignalBlocker(last_)};
    const bool is_stuffed = piece.area_stretch > 0 && !piece.rounds.empty();
    part_->setChecked(piece.stuffed_rounds.has_value());
    part_->setEnabled(is_stuffed && !session_.read_only());
    rounds_->setVisible(piece.stuffed_rounds.has_value());
    rounds_->setEnabled(part_->isEnabled());
    if (!piece.stuffed_rounds) return;
    // A file may name rounds that are not there: as far as they are, they are stuffed.
    const int rounds = std::max(1, static_cast<int>(piece.rounds.size()));
    const int last = std::clamp(piece.stuffed_rounds->last + 1, 1, rounds);
    for (QSpinBox* box : {first_, last_})
        if (box->maximum() != rounds) box->setMaximum(rounds);
    show_value(first_, std::clamp(piece.stuffed_rounds->first + 1, 1, last));
    show_value(last_, last);
}

void StuffedPartFields::show_pellets(const Piece& piece) {
    const QSignalBlocker quiet(pellets_);
    const double most = std::max(most_pellets_g, piece.weight_grams);
    if (pellets_->maximum() != most) pellets_->setMaximum(most);  // which shows its words anew
    show_value(pellets_, piece.weight_grams);
    pellets_->setEnabled(!session_.read_only());
    caution_->setVisible(piece.weight_grams > 0);
}

}  // namespace roundwright::app
