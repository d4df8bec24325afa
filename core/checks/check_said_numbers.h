#pragma once

#include <functional>
#include <span>
#include <vector>

#include "core/checks/check.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Stitches after each round, by piece.
using CountsOfPieces = std::vector<std::vector<int>>;
[[nodiscard]] CountsOfPieces counts_of_pieces(const Toy& toy);

/// Rounds and stitches named in the maker's own words that fit no round any more: one warning a phrase.
///
/// A round is taken for one of the piece that something is done to, named last before it in its line ("to the
/// head between rounds 19 and 20"; a face stands for the pieces that have one); otherwise every piece may be
/// meant, and a phrase that fits one of them is right. Stitches are taken for the open edge, or else a round,
/// of a piece named in the line, or of any where none is. Where `PatternText::written_for` is known, a round
/// that is still there but not at its height any more is found as well.
[[nodiscard]] std::vector<Check> check_said_numbers(const Toy& toy, const CountsOfPieces& counts);

/// The toy with every such phrase that has numbers to become, and its words written for the pieces as they
/// are now. What `renumber_words` does.
[[nodiscard]] Toy with_words_renumbered(Toy toy, const CountsOfPieces& counts);

/// `after` with what its words are written for: the pieces as they are where the words were just changed, or
/// as they were in `before` where rounds were changed under words that name some.
[[nodiscard]] Toy with_words_remembered(const Toy& before, Toy after);
/// The same, with `counts` as the one who knows the counts of a toy's pieces (asked only where they are
/// needed).
[[nodiscard]] Toy with_words_remembered(const Toy& before, Toy after,
                                        const std::function<CountsOfPieces(const Toy&)>& counts);

}  // namespace roundwright
