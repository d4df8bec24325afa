#pragma once

namespace roundwright::app {

/// A stretch of a list that another takes the place of: `removed` entries from `first` on went, `inserted`
/// came.
struct Splice {
    int first = 0;
    int removed = 0;
    int inserted = 0;

    [[nodiscard]] bool empty() const { return removed == 0 && inserted == 0; }
    [[nodiscard]] bool one_for_one() const { return removed == 1 && inserted == 1; }
    friend bool operator==(const Splice&, const Splice&) = default;
};

/// What an edit of the toy touched, so that each view refreshes no more than it shows.
struct ChangeSet {
    bool everything = false;      ///< another toy: new, opened or recovered
    bool words = false;           ///< title, designer, notes and the other words of the pattern
    bool materials = false;       ///< hook, gauge, yarns: all that is the toy's and is not words
    bool joins = false;           ///< how the pieces are joined, and how the toy is meant to rest
    Splice pieces;                ///< in Toy::pieces; a changed piece is one for one
    bool another_piece = false;   ///< where one is for one: it is not the same piece, but one in its place
    bool piece_settings = false;  ///< of the one piece changed: anything but its rounds
    Splice rounds;                ///< in the rounds of piece `pieces.first`, where that is one for one

    [[nodiscard]] bool empty() const {
        return !everything && !words && !materials && !joins && pieces.empty();
    }
    /// Pieces came, went or moved: indices held from before are stale.
    [[nodiscard]] bool piece_list() const {
        return everything || (!pieces.empty() && (!pieces.one_for_one() || another_piece));
    }
    /// Something of piece `index` itself changed.
    [[nodiscard]] bool touches_piece(int index) const {
        return everything || (index >= pieces.first && index < pieces.first + pieces.inserted);
    }
};

}  // namespace roundwright::app
