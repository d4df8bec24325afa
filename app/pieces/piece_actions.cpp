#include "app/pieces/piece_actions.h"

#include <algorithm>

#include <QInputDialog>
#include <QLocale>
#include <QMessageBox>

#include "app/kit/action_catalogue.h"
#include "app/kit/action_maker.h"
#include "app/pieces/piece_edits.h"
#include "core/toy/join_edits.h"
#include "render/wording/as_sentence.h"
#include "render/wording/piece_name.h"

namespace roundwright::app {

PieceActions::PieceActions(DocumentSession& session, QWidget* window)
    : QObject(window), session_(session), window_(window) {
    make_list_actions();
    make_start_actions();
    make_working_actions();
    connect(&session_, &DocumentSession::toy_changed, this, &PieceActions::update_state);
    connect(&session_, &DocumentSession::current_piece_changed, this, &PieceActions::update_state);
    connect(&session_, &DocumentSession::file_changed, this, &PieceActions::update_state);
    update_state();
}

QAction* PieceActions::on_piece(QAction* action, const std::function<void()>& act) {
    of_piece_ << action;
    connect(action, &QAction::triggered, this, [this, act] {
        act();
        update_state();
    });
    return action;
}

void PieceActions::make_list_actions() {
    const auto alone = [this](const char* id) { return make_action(window_, id); };
    add_ = alone("piece.new");
    connect(add_, &QAction::triggered, this, [this] {
        if (PieceEdits(session_).add()) Q_EMIT piece_added();
    });
    duplicate_ = on_piece(alone("piece.duplicate"), [this] { PieceEdits(session_).duplicate(); });
    rename_ = on_piece(alone("piece.rename"), [this] { ask_name(); });
    remove_ = on_piece(alone("piece.delete"), [this] { remove(); });
    earlier_ = on_piece(alone("piece.left"), [this] {
        PieceEdits(session_).move(session_.current_piece(), session_.current_piece() - 1);
    });
    later_ = on_piece(alone("piece.right"), [this] {
        PieceEdits(session_).move(session_.current_piece(), session_.current_piece() + 1);
    });
    previous_ = alone("piece.previous");
    connect(previous_, &QAction::triggered, this,
            [this] { session_.set_current_piece(std::max(0, session_.current_piece() - 1)); });
    next_ = alone("piece.next");
    connect(next_, &QAction::triggered, this,
            [this] { session_.set_current_piece(session_.current_piece() + 1); });
}

void PieceActions::make_start_actions() {
    auto* group = new QActionGroup(this);
    const auto choice = [&](const char* id) { return make_choice(window_, id, group); };
    starts_ << on_piece(choice("start.magic-ring"), [this] { PieceEdits(session_).set_start(MagicRing{}); });
    starts_ << on_piece(choice("start.chain-ring"), [this] {
        ask_chains(tr("A ring of how many chains?"), ChainRing{}.chains,
                   [](int chains) { return ChainRing{chains}; });
    });
    starts_ << on_piece(choice("start.tube"), [this] {
        ask_chains(tr("A tube on how many chains, joined?"), OpenTube{}.chains,
                   [](int chains) { return OpenTube{chains}; });
    });
    starts_ << on_piece(choice("start.oval"), [this] {
        ask_chains(tr("An oval around how many chains?"), OvalChain{}.chains,
                   [](int chains) { return OvalChain{chains}; });
    });
}

void PieceActions::make_working_actions() {
    auto* group = new QActionGroup(this);
    const std::pair<Joining, const char*> joinings[] = {{Joining::spiral, "worked.spiral"},
                                                        {Joining::joined, "worked.joined"},
                                                        {Joining::rows, "worked.rows"}};
    for (const auto& [joining, id] : joinings) {
        joinings_ << on_piece(make_choice(window_, id, group),
                              [this, joining = joining] { PieceEdits(session_).set_joining(joining); });
    }
    drawn_closed_ = make_choice(window_, "piece.drawn-closed");
    on_piece(drawn_closed_, [this] {
        PieceEdits(session_).set_end(drawn_closed_->isChecked() ? End::drawn_closed : End::left_open);
    });
    starts_at_top_ = make_choice(window_, "start.at-top");
    on_piece(starts_at_top_, [this] { PieceEdits(session_).set_starts_at_top(starts_at_top_->isChecked()); });
    make_ = on_piece(make_action(window_, "piece.make"), [this] { ask_make(); });
}

void PieceActions::fill(QMenu* menu) {
    menu->addActions({add_, duplicate_, rename_, remove_});
    menu->addSeparator();
    menu->addActions({previous_, next_, earlier_, later_});
    menu->addSeparator();
    auto* start = menu->addMenu(place_text(ActionPlace::start));
    start->addActions(starts_);
    start->addSeparator();
    start->addAction(starts_at_top_);
    auto* worked = menu->addMenu(place_text(ActionPlace::worked));
    worked->addActions(joinings_);
    menu->addAction(drawn_closed_);
    menu->addAction(make_);
}

/// What is sewn to a piece would stand by itself without it.
void PieceActions::remove() {
    const Toy& toy = session_.toy();
    const auto current = static_cast<std::size_t>(session_.current_piece());
    QStringList sewn;
    for (const std::size_t piece : pieces_joined_onto(toy, current)) sewn << piece_name(toy, piece);
    if (sewn.isEmpty() || may_remove(as_sentence(piece_name(toy, current)), sewn))
        PieceEdits(session_).remove();
}

bool PieceActions::may_remove(const QString& name, const QStringList& sewn) {
    QMessageBox box(QMessageBox::Question, tr("Delete piece"), QString(), QMessageBox::NoButton, window_);
    box.setTextFormat(Qt::PlainText);
    box.setText(tr("Sewn to %1: %2").arg(name, QLocale().createSeparatedList(sewn)));
    box.setInformativeText(
        tr("If it is deleted, what is sewn to it stands by itself. Undo brings both back."));
    auto* remove = box.addButton(tr("&Delete"), QMessageBox::AcceptRole);
    box.addButton(tr("&Cancel"), QMessageBox::RejectRole);
    box.exec();
    return box.clickedButton() == remove;
}

void PieceActions::ask_name() {
    bool accepted = false;
    const QString name =
        QInputDialog::getText(window_, tr("Rename"), tr("Name of the piece:"), QLineEdit::Normal,
                              QString::fromStdString(session_.piece()->name), &accepted);
    if (accepted) PieceEdits(session_).rename(name);
}

void PieceActions::ask_make() {
    bool accepted = false;
    const int make =
        QInputDialog::getInt(window_, tr("How many"), tr("How many of this piece does the toy need?"),
                             session_.piece()->make, 1, 200, 1, &accepted);
    if (accepted) PieceEdits(session_).set_make(make);
}

void PieceActions::ask_chains(const QString& what, int usual, const std::function<Start(int)>& start) {
    bool accepted = false;
    const int chains = QInputDialog::getInt(window_, tr("Start"), what, usual, 2, 2000, 1, &accepted);
    if (accepted) PieceEdits(session_).set_start(start(chains));
}

void PieceActions::update_state() {
    const auto* piece = session_.piece();
    add_->setEnabled(!session_.read_only());
    for (QAction* action : std::as_const(of_piece_)) action->setEnabled(piece && !session_.read_only());
    if (!piece) return;
    starts_[static_cast<qsizetype>(piece->start.index())]->setChecked(true);
    joinings_[static_cast<qsizetype>(piece->joining)]->setChecked(true);
    drawn_closed_->setChecked(piece->end == End::drawn_closed);
    starts_at_top_->setChecked(piece->starts_at_top);
}

}  // namespace roundwright::app
