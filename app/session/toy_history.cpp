#include "app/session/toy_history.h"

#include <utility>

namespace roundwright::app {

void ToyHistory::begin_with(Toy toy) {
    toy_ = std::move(toy);
    steps_.clear();
}

bool ToyHistory::make_step(const QString& text, Toy after, const QString& merge_key) {
    ToyDelta delta(toy_, std::move(after));
    if (delta.empty()) return false;
    const auto key =
        merge_key.isEmpty() ? QString() : merge_key + QLatin1Char('#') + QString::number(merge_epoch_);
    making_ = true;
    steps_.push(new EditCommand(*this, text, std::move(delta), key));
    making_ = false;
    return true;
}

void ToyHistory::apply_delta(const ToyDelta& delta) {
    delta.apply(toy_);
    follower_(delta, making_ ? Way::made : Way::made_again);
}

void ToyHistory::revert_delta(const ToyDelta& delta) {
    delta.revert(toy_);
    follower_(delta, Way::undone);
}

}  // namespace roundwright::app
