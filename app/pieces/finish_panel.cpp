#include "app/pieces/finish_panel.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/pieces/piece_edits.h"

namespace roundwright::app {

namespace {

constexpr int most_chains = 400;
constexpr int most_made = 99;

// In the order of the Start variant, which the combo box follows.
enum StartIndex { magic_ring, chain_ring, open_tube, oval_chain };

Start start_of(int kind, int chains) {
    switch (kind) {
        case chain_ring:
            return ChainRing{chains};
        case open_tube:
            return OpenTube{chains};
        case oval_chain:
            return OvalChain{chains};
        default:
            return MagicRing{};
    }
}

int chains_of(const Start& start) {
    struct {
        int operator()(const MagicRing&) const { return 0; }
        int operator()(const ChainRing& ring) const { return ring.chains; }
        int operator()(const OpenTube& tube) const { return tube.chains; }
        int operator()(const OvalChain& oval) const { return oval.chains; }
        int operator()(const WorkedOn& on) const { return on.stitches; }
    } chains;
    return std::visit(chains, start);
}

/// What a start has when the maker has not said how many chains.
int usual_chains(int kind, const Piece& piece) {
    if (kind == open_tube && !piece.rounds.empty()) {
        const auto* even = std::get_if<WorkedEvenly>(&piece.rounds.front().working);
        if (even != nullptr) return even->stitches;
    }
    return kind == chain_ring  ? ChainRing{}.chains
           : kind == open_tube ? OpenTube{}.chains
                               : OvalChain{}.chains;
}

QString oval_remark() {
    return FinishPanel::tr("An oval is shown as the round piece with the same stitches in every round.");
}

}  // namespace

FinishPanel::FinishPanel(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      start_(new QComboBox),
      chains_label_(new QLabel(tr("&Chains"))),
      chains_(new QSpinBox),
      joining_(new QComboBox),
      end_(new QComboBox),
      starts_at_top_(new QCheckBox(tr("Round 1 is at the t&op"))),
      make_(new QSpinBox) {
    build();
    connect_all();
    show_piece();
}

void FinishPanel::build() {
    start_->addItems({tr("Magic ring"), tr("Ring of chains"), tr("Open tube on a joined chain"),
                      tr("Oval around a chain")});
    chains_->setRange(2, most_chains);
    chains_->setKeyboardTracking(false);
    chains_label_->setBuddy(chains_);
    joining_->addItems({tr("In a spiral"), tr("Rounds joined with a slip stitch"), tr("Rows, turned")});
    for (QComboBox* box : {start_, joining_, end_}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(14);
    }
    end_->addItems({tr("Drawn closed"), tr("Left open"), tr("Flattened, sewn straight")});
    end_->setItemData(static_cast<int>(End::sewn_straight),
                      tr("The last round is pressed flat and sewn straight across, through both layers"),
                      Qt::ToolTipRole);
    make_->setRange(1, most_made);
    make_->setKeyboardTracking(false);

    auto* form = new QFormLayout;
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addStretch(1);
    form->addRow(tr("S&tart"), start_);
    form->addRow(chains_label_, chains_);
    form->addRow(tr("&Worked"), joining_);
    form->addRow(tr("En&d"), end_);
    form->addRow(tr("&Make"), make_);
    form->addRow(starts_at_top_);
    start_->setAccessibleName(tr("How the piece starts"));
    joining_->setAccessibleName(tr("How the rounds are worked"));
    end_->setAccessibleName(tr("How the piece ends"));
    make_->setAccessibleName(tr("How many to make"));
    start_->setItemData(oval_chain, oval_remark(), Qt::ToolTipRole);
}

void FinishPanel::connect_all() {
    connect(start_, &QComboBox::activated, this, [this](int kind) {
        if (const Piece* piece = session_.piece()) set_start(kind, usual_chains(kind, *piece));
    });
    connect(chains_, &QSpinBox::valueChanged, this,
            [this](int chains) { set_start(start_->currentIndex(), chains); });
    connect(joining_, &QComboBox::activated, this, [this](int joining) {
        session_.edit_piece(tr("Change how rounds are joined"),
                            [joining](Piece& piece) { piece.joining = static_cast<Joining>(joining); });
    });
    connect(end_, &QComboBox::activated, this, [this](int end) {
        session_.edit_piece(tr("Change the end"), [end](Piece& piece) { piece.end = static_cast<End>(end); });
    });
    connect(make_, &QSpinBox::valueChanged, this, [this](int make) {
        if (session_.piece() == nullptr) return;
        session_.edit(
            tr("Make %1").arg(make),
            made_so_often(session_.said_toy(), static_cast<std::size_t>(session_.current_piece()), make),
            QStringLiteral("make"));
    });
    connect(starts_at_top_, &QCheckBox::clicked, this, [this](bool top) {
        session_.edit_piece(top ? tr("Put round 1 at the top") : tr("Put round 1 at the bottom"),
                            [top](Piece& piece) { piece.starts_at_top = top; });
    });
    connect(&session_, &DocumentSession::toy_changed, this, &FinishPanel::show_piece);
    connect(&session_, &DocumentSession::current_piece_changed, this, &FinishPanel::show_piece);
}

void FinishPanel::set_start(int kind, int chains) {
    session_.edit_piece(
        tr("Change the start"), [kind, chains](Piece& piece) { piece.start = start_of(kind, chains); },
        QStringLiteral("start"));
}

void FinishPanel::show_piece() {
    const Piece* piece = session_.piece();
    setEnabled(piece != nullptr);
    if (piece == nullptr) return;
    const QSignalBlocker quiet[] = {QSignalBlocker(chains_), QSignalBlocker(make_)};
    start_->setCurrentIndex(static_cast<int>(piece->start.index()));
    start_->setToolTip(piece->start.index() == oval_chain ? oval_remark() : QString());
    const bool chained = piece->start.index() != magic_ring;
    chains_label_->setVisible(chained);
    chains_->setVisible(chained);
    if (chained) chains_->setValue(chains_of(piece->start));
    joining_->setCurrentIndex(static_cast<int>(piece->joining));
    end_->setCurrentIndex(static_cast<int>(piece->end));
    make_->setValue(piece->make);
    starts_at_top_->setChecked(piece->starts_at_top);
}

}  // namespace roundwright::app
