#pragma once

#include <optional>
#include <vector>

#include "core/assembly/pieces_overlap.h"
#include "core/assembly/sewing_steps.h"
#include "core/checks/check.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// What is wrong with how a toy is put together, as far as rounds and stitches tell: joins that lead round in
/// a circle, or to what is not there; edges that nothing is sewn to; first rounds that do not come out with
/// the edges they are worked on; words of assembly that were written before the joins changed.
[[nodiscard]] std::vector<Check> check_joins(const Toy& toy, RoundCounts counts);

/// What shows once it is placed: edges that their seam gathers or stretches; pieces that run into each other.
[[nodiscard]] std::vector<Check> check_seams(const AssembledToy& toy);
[[nodiscard]] std::vector<Check> check_overlaps(const AssembledToy& toy,
                                                const std::vector<PieceOverlap>& overlaps);

/// A toy put together from the studies of its pieces, without the surfaces that pictures are made of.
[[nodiscard]] AssembledToy assembled(const Toy& toy, std::span<const PieceStudy> studies);

/// Both of a toy, from the studies of its pieces.
[[nodiscard]] std::vector<Check> checks_of_joins(const Toy& toy, std::span<const PieceStudy> studies);

/// An edge that is this much longer than the line it is sewn along is gathered enough to see, one this much
/// shorter has to be pulled; values of our own. A note up to twice that, beyond it a warning.
inline constexpr double seen_gathering = 0.08;
inline constexpr double seen_stretching = 0.12;

/// How one piece's join differs from the one that the maker's words were written for.
struct JoinChange {
    std::optional<Join> then;  ///< none: it was not joined
    std::optional<Join> now;   ///< none: it is joined no more
};
/// By what is joined on, in the order of the joins now; those that are gone last.
[[nodiscard]] std::vector<JoinChange> join_changes(const std::vector<Join>& then,
                                                   const std::vector<Join>& now);

/// Whether a cure changes the joins, the start of a piece or the words of the toy; then this does it.
[[nodiscard]] bool is_cure_of_joins(const Cure& cure);
[[nodiscard]] Toy cured_joins(const Toy& toy, const Check& check, const Cure& cure);

/// Remembers the joins that words of assembly were written for (`PatternText::assembly_then`): those of now
/// where the words have changed, and where the joins have changed under words, those of before.
[[nodiscard]] Toy with_joins_remembered(const Toy& before, Toy after);

}  // namespace roundwright
