#pragma once

#include <string>
#include <vector>

#include "core/language/words/terms.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// A piece as plain text: heading, start, rounds with their counts at the end, notes, and how it ends.
/// Reading it gives the same stitches. Lines end in "\n". `names_its_yarn`: the first round says its yarn
/// even where that is the toy's first, since there are others.
[[nodiscard]] std::string write_piece(const Piece& piece, Terms terms, bool names_its_yarn = false);

/// A note as a line below its round, marked ("Note: Rnd 5: ...") where it could be taken for anything else
/// when the text is read.
[[nodiscard]] std::string note_line(const std::string& note, Terms terms);

/// The line that says which terms a pattern is in: "US terms".
[[nodiscard]] std::string terms_line(Terms terms);

/// A whole toy: title, terms, hook and yarns, then its pieces.
[[nodiscard]] std::string write_toy(const Toy& toy, Terms terms);

/// Rounds (from 0) that are not one group repeated without a rest, and so cannot be written as "[ ... ] x n".
/// Rounds worked into a ring, and partial ones, are not among them.
[[nodiscard]] std::vector<int> rounds_not_repeatable(const StitchGraph& graph);

}  // namespace roundwright
