#pragma once

#include "app/session/change_set.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// What differs between two toys. Pieces that they share are not looked into.
[[nodiscard]] ChangeSet changes_between(const Toy& before, const Toy& after);

/// A step from one toy to another. Both are kept whole, and share their pieces with each other and with the
/// steps around them as far as those are the same.
class ToyDelta {
  public:
    ToyDelta() = default;
    ToyDelta(Toy before, Toy after);

    [[nodiscard]] const Toy& before() const { return before_; }
    [[nodiscard]] const Toy& after() const { return after_; }
    [[nodiscard]] const ChangeSet& changes() const { return changes_; }
    [[nodiscard]] ChangeSet reversed_changes() const;
    [[nodiscard]] bool empty() const { return changes_.empty(); }

    /// Turns the toy before into the toy after.
    void apply(Toy& toy) const { toy = after_; }
    /// Turns the toy after into the toy before.
    void revert(Toy& toy) const { toy = before_; }

  private:
    Toy before_;
    Toy after_;
    ChangeSet changes_;
};

}  // namespace roundwright::app
