#pragma once

#include <vector>

#include "app/session/change_set.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// The difference between two toys, holding no more of either than differs: an edit of one round of a large
/// toy keeps two rounds, not two toys.
class ToyDelta {
  public:
    ToyDelta() = default;
    /// Both toys are as they were on return; they are taken apart while they are compared.
    ToyDelta(Toy& before, Toy& after);

    [[nodiscard]] const ChangeSet& changes() const { return changes_; }
    [[nodiscard]] ChangeSet reversed_changes() const;
    [[nodiscard]] bool empty() const { return changes_.empty(); }

    /// Turns the toy before into the toy after.
    void apply(Toy& toy) const;
    /// Turns the toy after into the toy before.
    void revert(Toy& toy) const;

  private:
    struct Side {
        Toy head;                   ///< the toy without its pieces
        std::vector<Piece> pieces;  ///< those that differ; without rounds where one stands for one
        std::vector<Round> rounds;  ///< those that differ of that one piece
    };
    void compare_pieces(const std::vector<Piece>& before, const std::vector<Piece>& after);
    void compare_rounds();
    void put(Toy& toy, const Side& from, const Side& to) const;

    Side before_;
    Side after_;
    ChangeSet changes_;
};

}  // namespace roundwright::app
