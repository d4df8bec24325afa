#include "app/reshape/reshape_actions.h"

#include <QMessageBox>
#include <QPushButton>

#include "app/kit/action_maker.h"
#include "app/reshape/form_dialog.h"
#include "app/reshape/join_dialog.h"
#include "app/reshape/reshape_dialog.h"
#include "core/reshape/carry_joins.h"
#include "core/reshape/mirror_join.h"
#include "render/wording/counted.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

template <class Dialog>
Dialog* open_dialog(Dialog* dialog) {
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
    return dialog;
}

}  // namespace

ReshapeActions::ReshapeActions(DocumentSession& session, QWidget* window)
    : QObject(window),
      session_(session),
      window_(window),
      reshape_(make_action(window, "shape.reshape")),
      sculpt_(make_action(window, "shape.outline")),
      from_form_(make_action(window, "piece.from-shape")),
      mirror_(make_action(window, "piece.upside-down")),
      join_(make_action(window, "piece.join")) {
    reshape_->setToolTip(tr("Another size, another yarn or hook, or another outline"));
    connect(reshape_, &QAction::triggered, this,
            [this] { open_dialog(new ReshapeDialog(session_, window_)); });
    connect(sculpt_, &QAction::triggered, this,
            [this] { open_dialog(new ReshapeDialog(session_, window_))->set_wish(Wish::by_hand); });
    connect(from_form_, &QAction::triggered, this,
            [this] { open_dialog(new FormDialog(session_, window_)); });
    connect(mirror_, &QAction::triggered, this, &ReshapeActions::mirror);
    connect(join_, &QAction::triggered, this, [this] { open_dialog(new JoinDialog(session_, window_)); });
    connect(&session_, &DocumentSession::toy_changed, this, &ReshapeActions::update_state);
    connect(&session_, &DocumentSession::current_piece_changed, this, &ReshapeActions::update_state);
    connect(&session_, &DocumentSession::file_changed, this, &ReshapeActions::update_state);
    update_state();
}

void ReshapeActions::fill_shape_menu(QMenu* menu) const { menu->addActions({reshape_, sculpt_}); }

void ReshapeActions::fill_piece_menu(QMenu* menu) const { menu->addActions({from_form_, mirror_, join_}); }

void ReshapeActions::mirror() {
    const auto turned = mirrored(piece_form(*session_.piece(), gauge_of(session_.toy())));
    if (!turned) {
        session_.refuse(tr("Ovals, rows and rounds that do not work out cannot be turned upside down."));
        return;
    }
    if (!may_lose_progress()) return;
    session_.edit(
        tr("Turn %1 upside down").arg(name_in_words(session_.piece()->name)),
        with_piece_remade(session_.said_toy(), static_cast<std::size_t>(session_.current_piece()), *turned));
}

/// Turned over, a piece begins at its other end, and nothing worked so far can stay.
bool ReshapeActions::may_lose_progress() const {
    const Piece& piece = *session_.piece();
    if (piece.worked.rounds == 0 && piece.worked.stitches == 0) return true;
    QMessageBox question(
        QMessageBox::Question, tr("Turn upside down"),
        tr("You have worked %1 of %2. Upside down it starts at the other end, so all of that has "
           "to be undone.")
            .arg(rounds_words(piece.worked.rounds), name_in_words(piece.name)),
        QMessageBox::Cancel, window_);
    const auto* turn = question.addButton(tr("&Turn it upside down"), QMessageBox::AcceptRole);
    question.exec();
    return question.clickedButton() == turn;
}

void ReshapeActions::update_state() {
    const Piece* piece = session_.piece();
    const bool has_rounds = piece != nullptr && !piece->rounds.empty();
    reshape_->setEnabled(has_rounds);
    sculpt_->setEnabled(has_rounds);
    from_form_->setEnabled(!session_.read_only());
    mirror_->setEnabled(has_rounds && !session_.read_only());
    join_->setEnabled(has_rounds && session_.toy().pieces.size() > 1 && !session_.read_only());
}

}  // namespace roundwright::app
