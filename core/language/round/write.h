#pragma once

#include <string>

#include "core/language/words/terms.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// The words of one round (from 0), without its number and count: "6 sc in magic ring", "inc around",
/// "[sc, inc] x 6". `start` tells a magic ring from a chain ring for a round worked into a ring.
[[nodiscard]] std::string round_words(const StitchGraph& graph, int round, Terms terms,
                                      const Start& start = MagicRing{});

/// The same for a piece: rows are worked across, rounds around.
[[nodiscard]] std::string round_words(const StitchGraph& graph, int round, Terms terms, const Piece& piece);

/// The same for a round by itself; `first`: it is the piece's first.
[[nodiscard]] std::string round_words(const GraphRound& round, bool first, Terms terms, const Piece& piece);

/// How a piece is started, in words: "Ch 7. Start in 2nd ch from hook and work around both sides of the ch.";
/// empty for a magic ring, which round 1 names.
[[nodiscard]] std::string start_words(const Piece& piece, Terms terms);

/// How the words call a yarn of the toy: "A" for the first, "B" for the next; "yarn 27" when the letters run
/// out.
[[nodiscard]] std::string yarn_letter(int yarn);

}  // namespace roundwright
