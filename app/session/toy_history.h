#pragma once

#include <cstdint>
#include <functional>

#include <QString>
#include <QUndoStack>

#include "app/session/edit_command.h"

namespace roundwright::app {

/// The toy as the maker has said it, and the steps that led to it.
class ToyHistory : private ToyOwner {
  public:
    enum class Way { made, undone, made_again };
    /// Told of each step and which way it was taken, once `toy()` is what it leads to.
    using Follower = std::function<void(const ToyDelta& step, Way way)>;

    explicit ToyHistory(Follower follower) : follower_(std::move(follower)) {}

    [[nodiscard]] const Toy& toy() const { return toy_; }
    [[nodiscard]] QUndoStack& steps() { return steps_; }
    [[nodiscard]] const QUndoStack& steps() const { return steps_; }

    /// Another toy, without a past.
    void begin_with(Toy toy);
    /// Makes the toy what `after` is. Steps with the same merge key, one right after the other, become one.
    /// False if that changes nothing.
    bool make_step(const QString& text, Toy after, const QString& merge_key = {});
    /// The next step stands alone, whatever its merge key.
    void end_merging() { ++merge_epoch_; }

  private:
    void apply_delta(const ToyDelta& delta) override;
    void revert_delta(const ToyDelta& delta) override;

    Toy toy_;
    QUndoStack steps_;
    Follower follower_;
    bool making_ = false;
    std::uint64_t merge_epoch_ = 0;
};

}  // namespace roundwright::app
