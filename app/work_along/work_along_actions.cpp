#include "app/work_along/work_along_actions.h"

#include "app/kit/action_maker.h"
#include "app/work_along/work_along_view.h"

namespace roundwright::app {

WorkAlongActions::WorkAlongActions(DocumentSession& session, QWidget* window)
    : QObject(window),
      session_(session),
      window_(window),
      work_along_(make_action(window, "pattern.work-along")),
      worked_up_to_here_(make_action(window, "round.worked")) {
    connect(work_along_, &QAction::triggered, this, &WorkAlongActions::open);
    connect(worked_up_to_here_, &QAction::triggered, this, &WorkAlongActions::mark_worked);
    connect(&session_, &DocumentSession::toy_changed, this, &WorkAlongActions::update_state);
    connect(&session_, &DocumentSession::current_piece_changed, this, &WorkAlongActions::update_state);
    connect(&session_, &DocumentSession::selection_changed, this, &WorkAlongActions::update_state);
    connect(&session_, &DocumentSession::file_changed, this, &WorkAlongActions::update_state);
    update_state();
}

void WorkAlongActions::fill_pattern_menu(QMenu* menu) const { menu->addAction(work_along_); }
void WorkAlongActions::fill_round_menu(QMenu* menu) const { menu->addAction(worked_up_to_here_); }

WorkAlongView* WorkAlongActions::view() const { return view_; }

void WorkAlongActions::open() {
    if (!view_) {
        view_ = new WorkAlongView(session_, RoundClock(), window_);
        view_->setAttribute(Qt::WA_DeleteOnClose);
    }
    view_->show();
    view_->raise();
    view_->activateWindow();
}

void WorkAlongActions::mark_worked() {
    const int rounds = session_.selection().back() + 1;
    session_.edit_piece(tr("Mark round %1 as worked").arg(rounds), [rounds](Piece& piece) {
        piece.worked.rounds = rounds;
        piece.worked.stitches = 0;
        if (piece.worked.seconds_of_round.size() > static_cast<std::size_t>(rounds))
            piece.worked.seconds_of_round.resize(static_cast<std::size_t>(rounds));
    });
}

void WorkAlongActions::update_state() {
    work_along_->setEnabled(session_.piece() != nullptr && !session_.piece()->rounds.empty());
    worked_up_to_here_->setEnabled(session_.piece() != nullptr && !session_.selection().empty() &&
                                   !session_.read_only());
}

}  // namespace roundwright::app
