#include "app/assembly/toy_state.h"

#include <algorithm>
#include <utility>

namespace roundwright::app {

ToyState::ToyState(DocumentSession& session, QObject* parent) : QObject(parent), session_(session) {
    connect(&session_, &DocumentSession::toy_changed, this, &ToyState::follow);
    connect(&session_, &DocumentSession::current_piece_changed, this, &ToyState::follow_current);
    follow_current();
}

void ToyState::pick(const PieceCopy& copy) {
    const auto index = session_.toy().pieces.index_of(copy.piece);
    if (!index || copy == picked_) return;
    picked_ = copy;
    session_.set_current_piece(static_cast<int>(*index));
    Q_EMIT picked_changed();
}

void ToyState::follow_current() {
    const int current = session_.current_piece();
    const PieceId id =
        current < 0 ? PieceId::none : session_.toy().pieces.id(static_cast<std::size_t>(current));
    if (id == picked_.piece) return;
    picked_ = {id, 0};
    Q_EMIT picked_changed();
}

void ToyState::follow(const ChangeSet& changes) {
    if (changes.everything) {
        apart_ = 0;
        show_all();
        Q_EMIT apart_changed();
    }
    forget_gone();
    follow_current();
    const Piece* piece = session_.piece();
    if (piece == nullptr || picked_.copy < piece->make) return;
    picked_.copy = 0;
    Q_EMIT picked_changed();
}

/// What is not in the toy any more is not hidden either.
void ToyState::forget_gone() {
    const auto& pieces = session_.toy().pieces;
    const auto gone = std::erase_if(hidden_, [&](const PieceCopy& copy) {
        const auto index = pieces.index_of(copy.piece);
        return !index || copy.copy >= pieces[*index].make;
    });
    if (gone > 0) Q_EMIT hidden_changed();
}

void ToyState::set_hidden(const std::vector<PieceCopy>& copies, bool hidden) {
    const auto before = hidden_;
    for (const PieceCopy& copy : copies) {
        if (hidden)
            hidden_.insert(copy);
        else
            hidden_.erase(copy);
    }
    if (hidden_ != before) Q_EMIT hidden_changed();
}

void ToyState::show_all() {
    if (!std::exchange(hidden_, {}).empty()) Q_EMIT hidden_changed();
}

void ToyState::set_apart(double share) {
    share = std::clamp(share, 0.0, 1.0);
    if (std::exchange(apart_, share) != share) Q_EMIT apart_changed();
}

}  // namespace roundwright::app
