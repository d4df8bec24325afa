#include "app/materials/stuffing_panel.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QButtonGroup>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QRadioButton>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/materials/pace_fields.h"
#include "app/materials/stuffed_part_fields.h"
#include "app/materials/stuffing_scales_dialog.h"
#include "core/assembly/worked_pieces.h"
#include "core/materials/stuffing.h"
#include "render/wording/amounts.h"

namespace roundwright::app {

namespace {

struct Firmness {
    const char* name;
    double stretch;
};

constexpr std::array<Firmness, 4> firmnesses{{
    {QT_TRANSLATE_NOOP("roundwright::app::StuffingPanel", "N&ot stuffed"), unstuffed_stretch},
    {QT_TRANSLATE_NOOP("roundwright::app::StuffingPanel", "&Light"), light_stuffing_stretch},
    {QT_TRANSLATE_NOOP("roundwright::app::StuffingPanel", "&Medium"), medium_stuffing_stretch},
    {QT_TRANSLATE_NOOP("roundwright::app::StuffingPanel", "F&irm"), firm_stuffing_stretch},
}};

// The slider counts tenths of a per cent of area stretch.
constexpr double slider_steps = 1000;
constexpr int most_slider = 150;

}  // namespace

StuffingPanel::StuffingPanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      firmness_(new QButtonGroup(this)),
      stretch_(new QSlider(Qt::Horizontal)),
      stretch_text_(new QLabel),
      amount_(words_label(tr("Amount of stuffing"))),
      weigh_(new QPushButton(tr("&Weigh a stuffed piece…"))) {
    auto* layout = new QVBoxLayout(this);
    for (std::size_t k = 0; k < firmnesses.size(); ++k) {
        auto* button = new QRadioButton(tr(firmnesses[k].name));
        firmness_->addButton(button, static_cast<int>(k));
        layout->addWidget(button);
    }
    stretch_->setRange(0, most_slider);
    stretch_->setPageStep(10);
    stretch_->setAccessibleName(tr("Fabric stretch"));
    stretch_text_->setBuddy(stretch_);
    stretch_text_->setWordWrap(true);
    weigh_->setToolTip(tr("Weigh a piece on kitchen scales to replace the guess with how you stuff"));
    layout->addSpacing(6);
    layout->addWidget(stretch_text_);
    layout->addWidget(stretch_);
    layout->addSpacing(6);
    layout->addWidget(new StuffedPartFields(session_));
    layout->addSpacing(6);
    layout->addWidget(amount_);
    layout->addWidget(weigh_, 0, Qt::AlignLeft);
    layout->addSpacing(12);
    layout->addWidget(new PaceFields(session_));
    layout->addStretch(1);

    connect(firmness_, &QButtonGroup::idClicked, this, [this](int id) {
        session_.end_merging();
        set_stretch(firmnesses[static_cast<std::size_t>(id)].stretch, tr("Change stuffing"));
    });
    connect(stretch_, &QSlider::valueChanged, this,
            [this](int value) { set_stretch(value / slider_steps, tr("Change stuffing")); });
    connect(stretch_, &QSlider::sliderReleased, this, [this] { session_.end_merging(); });
    connect(&session_, &DocumentSession::toy_changed, this, &StuffingPanel::show_piece);
    connect(&session_, &DocumentSession::current_piece_changed, this, &StuffingPanel::show_piece);
    connect(&session_, &DocumentSession::study_ready, this, &StuffingPanel::show_amount);
    connect(weigh_, &QPushButton::clicked, this, [this] {
        auto* dialog = new StuffingScalesDialog(session_, window());
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
    show_piece();
}

void StuffingPanel::set_stretch(double stretch, const QString& step) {
    session_.edit_piece(
        step, [stretch](Piece& piece) { piece.area_stretch = stretch; }, QStringLiteral("stuffing"));
}

void StuffingPanel::show_piece() {
    const Piece* piece = session_.piece();
    setEnabled(piece != nullptr);
    if (piece == nullptr) return;
    const QSignalBlocker quiet(stretch_);
    stretch_->setValue(static_cast<int>(std::lround(piece->area_stretch * slider_steps)));
    stretch_text_->setText(tr("Fabric s&tretch: %1 %").arg(piece->area_stretch * 100, 0, 'f', 1));
    firmness_->setExclusive(false);
    for (std::size_t k = 0; k < firmnesses.size(); ++k) {
        firmness_->button(static_cast<int>(k))->setChecked(piece->area_stretch == firmnesses[k].stretch);
    }
    firmness_->setExclusive(true);
    show_amount();
}

void StuffingPanel::show_amount() {
    const Piece* piece = session_.piece();
    const auto study = session_.study(session_.current_piece());
    const bool usable = piece != nullptr && study != nullptr && study->measures().usable();
    weigh_->setEnabled(usable && piece->area_stretch > 0 && !session_.read_only());
    if (!usable) return amount_->setText({});
    if (piece->area_stretch <= 0) {
        return amount_->setText(study->problem().limp
                                    ? tr("No stuffing: it lies flat, one layer on top of the other.")
                                    : tr("No stuffing: it holds its own shape."));
    }
    const Making& making = session_.toy().making;
    const double volume_mm3 = stuffed_volume_mm3(*piece, *study);
    const Estimate grams = stuffing_grams(volume_mm3, piece->area_stretch, making);
    const QString ml = QLocale().toString(volume_mm3 / 1000, 'f', 0);
    const QString words =
        making.stuffing_density_kg_per_m3
            ? tr("About %1 of stuffing (%2 to %3) for %4 ml, by your own scales.")
            : tr("Perhaps %1 of stuffing, anything from %2 to %3, for %4 ml. This is a guess: no published "
                 "figure for toys was found. Weigh one stuffed piece and it goes by how you stuff.");
    amount_->setText(words.arg(grams_text(grams.likely), grams_text(grams.low), grams_text(grams.high), ml));
}

}  // namespace roundwright::app
