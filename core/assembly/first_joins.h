#pragma once

#include <cstddef>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright {

/// A first place for every copy of a piece that is not joined yet, so that a toy is together at once. The
/// maker moves it from there. Our own rules:
///
/// - It is placed on the trunk: of the other pieces that stand by themselves, the one with the most stitches.
/// - A piece worked on the edges of others is joined to those that are left open and free: by its start to
///   the last edge of one, and by the last edges of two to its start.
/// - A piece made twice goes on in pairs, one on each side: high on the sides, low at the front, half way up.
/// - One that is made once goes on top of the trunk; then low at the back, half way up at the front, ...
/// - No two in one place: within two rounds and an eighth of the way round nothing else is joined.
///
/// An open edge is sewn on all the way round, one pressed flat along its line, a closed end where it touches.
[[nodiscard]] std::vector<Join> first_joins(const Toy& toy, std::size_t piece);

/// With the first joins of one piece, as far as `max_joins` allows.
[[nodiscard]] Toy with_first_joins(Toy toy, std::size_t piece);

/// With those of every piece but the largest, which they are placed on: a toy that was made before there were
/// joins is put together.
[[nodiscard]] Toy put_together(Toy toy);

/// A piece made so many times (core/toy/join_edits.h). In a toy that is put together new copies get their
/// place: the second of one that sits aside becomes the other of a pair, any other its first place.
[[nodiscard]] Toy made_times(const Toy& toy, std::size_t piece, int make);

/// A piece begun in another way. What it was worked on is joined to it no more, unless it still is.
[[nodiscard]] Toy begun_with(const Toy& toy, std::size_t piece, const Start& start);
/// A piece begun on the edges of others, with so many chains from one to the next: those that it is joined
/// to, or else those that are open and free, or else the first pair that is sewn onto it. Its first round is worked over as many loops as they give; where
/// there is none, over as many as it has stitches.
[[nodiscard]] Toy begun_on_edges(const Toy& toy, std::size_t piece, int chains_between);

}  // namespace roundwright
