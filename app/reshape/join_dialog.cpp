#include "app/reshape/join_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/kit/field_widgets.h"
#include "app/kit/room_on_screen.h"
#include "app/reshape/outline_view.h"
#include "core/reshape/carry_joins.h"
#include "core/reshape/mirror_join.h"
#include "core/reshape/reshape_toy.h"
#include "render/wording/plain_text.h"
#include "render/wording/reshape_words.h"

namespace roundwright::app {

JoinDialog::JoinDialog(DocumentSession& session, QWidget* parent)
    : QDialog(parent), session_(session), first_(piece_form(*session.piece(), gauge_of(session.toy()))) {
    setWindowTitle(tr("Join %1 to another piece").arg(name_in_words(first_.piece.name)));
    build();
    choose_other();
}

void JoinDialog::build() {
    others_ = new QComboBox;
    const auto& pieces = session_.toy().pieces;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (static_cast<int>(i) == session_.current_piece()) continue;
        others_->addItem(name_in_words(pieces[i].name), static_cast<int>(i));
    }
    neck_ = new QSpinBox;
    neck_->setRange(3, 1'000);
    neck_->setKeyboardTracking(false);
    outline_ = new OutlineView(session_.preferences());
    outline_->set_starts_at_top(first_.piece.starts_at_top);
    frog_back_ = words_label(tr("What to undo"));
    frog_back_->setFont(larger_font(frog_back_->font(), 1.1, QFont::DemiBold));
    answer_ = words_label(tr("What you get"));
    auto* form = new QFormLayout;
    form->addRow(tr("Join &to"), others_);
    form->addRow(tr("&Stitches at the neck"), neck_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    apply_ = buttons->addButton(tr("&Join them"), QDialogButtonBox::AcceptRole);
    apply_->setDefault(true);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addWidget(outline_, 1);
    layout->addWidget(frog_back_);
    layout->addWidget(answer_);
    layout->addWidget(buttons);
    resize(room_on_screen(*this, {460, 620}));
    connect(others_, &QComboBox::currentIndexChanged, this, &JoinDialog::choose_other);
    connect(neck_, &QSpinBox::valueChanged, this, &JoinDialog::work_out);
    connect(buttons, &QDialogButtonBox::accepted, this, &JoinDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &JoinDialog::reject);
}

void JoinDialog::choose_other() {
    const auto other = static_cast<std::size_t>(others_->currentData().toInt());
    other_ = piece_form(session_.toy().pieces[other], first_.gauge);
    {
        const QSignalBlocker quiet(neck_);
        neck_->setValue(usual_neck(first_, *other_));
    }
    work_out();
}

void JoinDialog::work_out() {
    joined_ = joined(first_, *other_, neck_->value());
    apply_->setEnabled(joined_.has_value() && !session_.read_only());
    frog_back_->hide();
    if (!joined_) {
        outline_->set_new(std::nullopt);
        answer_->setText(
            tr("One of the two never has %n stitch(es) in a round, or its rounds do not work out.", nullptr,
               neck_->value()));
        return;
    }
    const PieceForm form = piece_form(*joined_, first_.gauge);
    outline_->set_new(form.outline());
    back_ = frog_back_for(session_.toy(), first_, form);
    frog_back_->setText(frog_back_words(back_));
    frog_back_->setVisible(!frog_back_->text().isEmpty());
    answer_->setText(
        QStringLiteral("%1: %2.").arg(size_words(form, session_.preferences().units()), count_words(form)));
}

QString JoinDialog::frog_back() const { return frog_back_->isHidden() ? QString() : frog_back_->text(); }

void JoinDialog::accept() {
    if (!joined_) return;
    Piece piece = *joined_;
    piece.worked = progress_kept(first_.piece.worked, back_);
    session_.edit(tr("Join %1 and %2").arg(name_in_words(first_.piece.name), others_->currentText()),
                  with_piece_remade(session_.said_toy(), static_cast<std::size_t>(session_.current_piece()),
                                    std::move(piece)));
    QDialog::accept();
}

}  // namespace roundwright::app
