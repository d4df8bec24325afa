#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/gauge/gauge.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Stitches after each round, by piece.
using RoundCounts = std::span<const std::vector<int>>;

/// Which place of a piece something is joined to.
enum class SewnPlace {
    start,      ///< the middle of its start, or the start's own open edge
    last_edge,  ///< the open edge of its last round, or the pole that this is drawn to
    around,     ///< all the way round, between two rounds
    gap         ///< one place between two rounds
};

/// One join as the maker does it: what is pinned where, in rounds and stitches.
struct SewingStep {
    std::size_t join = 0;   ///< index into `Toy::joins`
    std::size_t piece = 0;  ///< index into `Toy::pieces`, of what is joined on
    std::size_t onto = 0;   ///< of what it is joined to
    int copies = 1;         ///< 2 for a pair
    int first_copy = 0;     ///< from 0
    Seam seam = Seam::edge;
    SewnPlace place = SewnPlace::gap;
    int round = 0;              ///< from 1, as printed: the gap is between this round and the next
    int edge_stitches = 0;      ///< of the end that is sewn on; 0 where it is drawn to a point
    bool open = false;          ///< that end is open
    bool curls = false;         ///< it is a strip that curls into a coil, whose end is sewn
    bool onto_open = false;     ///< the place is an open edge of the other
    int onto_stitches = 0;      ///< of the round below the place
    double stitches_right = 0;  ///< from the middle of the face; of a pair: of the right one
    /// First and last round that an open edge covers, from 1; about right, for an edge pinned out to a ring.
    std::optional<RoundSpan> covers;
    bool stuffed_first = false;  ///< it is stuffed before it is sewn on, through the end that is sewn
};

/// The order in which a toy is put together: whatever is sewn to a piece, before that piece is sewn to
/// another, since a small piece is easier to turn in the hand; else the order of the joins. What is worked on
/// comes first, for it is part of the rounds. Joins with a problem (core/assembly/join_tree.h) are left out.
[[nodiscard]] std::vector<SewingStep> sewing_steps(const Toy& toy, RoundCounts counts, const Gauge& gauge);

/// Indices of the pieces in the order in which they are worked: that of the toy, but each piece after those
/// on whose edges it is worked.
[[nodiscard]] std::vector<std::size_t> working_order(const Toy& toy);

/// Pieces on whose edges this one is worked, each copy once.
[[nodiscard]] std::vector<PieceCopy> worked_on_edges(const Toy& toy, std::size_t piece);
/// Whether another piece is worked on the last edge of a copy of this one, so that it is not sewn there; and
/// which.
[[nodiscard]] std::optional<std::size_t> goes_on_as(const Toy& toy, std::size_t piece);

/// Loops that the joins of a piece give its first round: the edges it is worked on, and the chains between
/// them, both sides of each. Nothing where nothing is joined there.
[[nodiscard]] std::optional<int> loops_of_edges(const Toy& toy, std::size_t piece, RoundCounts counts);

}  // namespace roundwright
