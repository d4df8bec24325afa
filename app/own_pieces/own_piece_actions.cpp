#include "app/own_pieces/own_piece_actions.h"

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QMenu>

#include "app/kit/action_maker.h"
#include "app/own_pieces/own_pieces_dialog.h"
#include "app/own_pieces/piece_clipboard.h"
#include "app/pieces/piece_edits.h"
#include "app/rounds/round_edits.h"
#include "core/toy/own_piece.h"
#include "render/wording/as_sentence.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {

OwnPieceActions::OwnPieceActions(DocumentSession& session, QWidget* window, OwnPiecesFolder folder)
    : QObject(window),
      session_(session),
      window_(window),
      folder_(std::move(folder)),
      copy_(make_action(window, "edit.copy-piece")),
      paste_(make_action(window, "edit.paste-piece")),
      keep_(make_action(window, "piece.keep")),
      choose_(make_action(window, "piece.own")) {
    connect(copy_, &QAction::triggered, this, &OwnPieceActions::copy);
    connect(paste_, &QAction::triggered, this, &OwnPieceActions::paste);
    connect(keep_, &QAction::triggered, this, &OwnPieceActions::keep);
    connect(choose_, &QAction::triggered, this, &OwnPieceActions::choose);
    connect(&session_, &DocumentSession::toy_changed, this, &OwnPieceActions::update_state);
    connect(&session_, &DocumentSession::file_changed, this, &OwnPieceActions::update_state);
    update_state();
}

void OwnPieceActions::fill_edit_menu(QMenu* menu) const { menu->addActions({copy_, paste_}); }

void OwnPieceActions::fill_piece_menu(QMenu* menu) const { menu->addActions({keep_, choose_}); }

void OwnPieceActions::update_state() {
    const bool has_piece = session_.piece() != nullptr;
    copy_->setEnabled(has_piece);
    keep_->setEnabled(has_piece);
    paste_->setEnabled(!session_.read_only());
    choose_->setEnabled(!session_.read_only());
}

Toy OwnPieceActions::current() const {
    return toy_of_piece(session_.said_toy(), static_cast<std::size_t>(session_.current_piece()));
}

bool OwnPieceActions::insert(const Toy& from, const QString& step) {
    const auto at = static_cast<std::size_t>(session_.current_piece() + 1);
    auto edited = insert_pieces_of(session_.said_toy(), at, from);
    if (edited.refusal) {
        session_.refuse(refusal_words(*edited.refusal));
        return false;
    }
    Toy after = std::move(edited.value);
    for (std::size_t piece = 0; piece < from.pieces.size(); ++piece)
        after = with_a_first_place(std::move(after), at + piece);
    if (!session_.edit(step, std::move(after))) return false;
    session_.set_current_piece(static_cast<int>(at));
    return true;
}

void OwnPieceActions::copy() {
    const Toy piece = current();
    QApplication::clipboard()->setMimeData(piece_to_clipboard(piece));
    Q_EMIT told(tr("%1 copied").arg(as_sentence(name_in_words(piece.title))));
}

void OwnPieceActions::paste() {
    const auto* data = QApplication::clipboard()->mimeData();
    const auto toy = data != nullptr ? pieces_from_clipboard(*data) : std::nullopt;
    if (!toy) return session_.refuse(tr("No piece was copied. Copy one with Edit ▸ Copy piece first."));
    insert(*toy, tr("Paste %1").arg(name_in_words(toy->title)));
}

void OwnPieceActions::keep() {
    const Toy piece = current();
    if (const auto problem = folder_.keep(piece)) return session_.refuse(problem->message);
    Q_EMIT told(tr("%1 is kept among your own pieces").arg(as_sentence(name_in_words(piece.title))));
}

void OwnPieceActions::choose() {
    OwnPiecesDialog dialog(folder_, window_);
    if (dialog.exec() != QDialog::Accepted || !dialog.chosen()) return;
    insert(*dialog.chosen(), tr("Add %1").arg(name_in_words(dialog.chosen()->title)));
}

}  // namespace roundwright::app
