#include "app/assembly/toy_actions.h"

#include <algorithm>

#include <QAction>
#include <QMenu>

#include "app/assembly/join_edits.h"
#include "app/kit/action_maker.h"

namespace roundwright::app {
namespace {

constexpr double turn_step_degrees = 5;

}  // namespace

ToyActions::ToyActions(DocumentSession& session, ToyState& state, JoinsPanel& joins, QWidget* window)
    : QObject(window),
      session_(session),
      state_(state),
      joins_(joins),
      whole_(make_choice(window, "toy.whole")),
      together_(make_action(window, "toy.together")),
      apart_(make_choice(window, "toy.apart")),
      hide_(make_choice(window, "toy.hide")),
      show_all_(make_action(window, "toy.show-all")) {
    connect(whole_, &QAction::triggered, this, [this](bool on) {
        session_.show_whole_toy(on);
        whole_->setChecked(session_.shows_whole_toy());
    });
    connect(together_, &QAction::triggered, &joins_, &JoinsPanel::put_together);
    connect(apart_, &QAction::triggered, this, [this](bool on) { state_.set_apart(on ? 1 : 0); });
    connect(hide_, &QAction::triggered, this, [this](bool on) {
        if (const ToyUnit* unit = joins_.unit()) state_.set_hidden(ToyUnit(*unit).copies, on);
    });
    connect(show_all_, &QAction::triggered, &state_, &ToyState::show_all);
    const auto turn = [this](double degrees) {
        return
            [this, degrees](std::size_t join, int side) { JoinEdits(session_).turn(join, side * degrees); };
    };
    const auto lean = [this](double up, double right) {
        return [this, up, right](std::size_t join, int side) {
            JoinEdits(session_).lean(join, up, side * right);
        };
    };
    on_join("toy.turn-left", turn(turn_step_degrees));
    on_join("toy.turn-right", turn(-turn_step_degrees));
    on_join("toy.lean-up", lean(turn_step_degrees, 0));
    on_join("toy.lean-down", lean(-turn_step_degrees, 0));
    on_join("toy.lean-left", lean(0, -turn_step_degrees));
    on_join("toy.lean-right", lean(0, turn_step_degrees));
    connect(&session_, &DocumentSession::toy_changed, this, &ToyActions::update_state);
    connect(&session_, &DocumentSession::file_changed, this, &ToyActions::update_state);
    connect(&session_, &DocumentSession::whole_toy_shown, this, &ToyActions::update_state);
    connect(&state_, &ToyState::picked_changed, this, &ToyActions::update_state);
    connect(&state_, &ToyState::hidden_changed, this, &ToyActions::update_state);
    connect(&state_, &ToyState::apart_changed, this, &ToyActions::update_state);
    update_state();
}

QAction* ToyActions::on_join(const char* id, const std::function<void(std::size_t, int)>& act) {
    auto* action = make_action(static_cast<QWidget*>(parent()), id);
    connect(action, &QAction::triggered, this, [this, act] {
        const ToyUnit* unit = joins_.unit();
        if (unit != nullptr && unit->join) act(*unit->join, side());
    });
    of_join_ << action;
    return action;
}

int ToyActions::side() const {
    const ToyUnit* unit = joins_.unit();
    return unit != nullptr && unit->copies.front() != state_.picked() ? -1 : 1;
}

bool ToyActions::can_move() const {
    const ToyUnit* unit = joins_.unit();
    return session_.shows_whole_toy() && !session_.read_only() && unit != nullptr && unit->join;
}

void ToyActions::nudge(int rounds, int right) {
    const ToyUnit* unit = joins_.unit();
    if (unit != nullptr && unit->join) JoinEdits(session_).nudge(*unit->join, rounds, side() * right);
}

void ToyActions::update_state() {
    const bool shown = session_.shows_whole_toy();
    const ToyUnit* unit = joins_.unit();
    whole_->setChecked(shown);
    together_->setEnabled(shown && !session_.read_only() && joins_.model().standing() > 1);
    apart_->setEnabled(shown);
    apart_->setChecked(state_.apart() > 0);
    hide_->setEnabled(shown && unit != nullptr);
    hide_->setChecked(unit != nullptr && state_.is_hidden(unit->copies.front()));
    show_all_->setEnabled(shown && state_.any_hidden());
    for (QAction* action : std::as_const(of_join_)) action->setEnabled(can_move());
    Q_EMIT can_move_changed();
}

void ToyActions::fill(QMenu* menu) const {
    menu->addAction(whole_);
    menu->addAction(together_);
    menu->addSeparator();
    menu->addActions({apart_, hide_, show_all_});
    menu->addSeparator();
    menu->addActions(of_join_);
}

}  // namespace roundwright::app
