#pragma once

#include <string>
#include <vector>

#include "core/language/words/terms.h"
#include "core/rounds/piece_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// A round of a written pattern, or several equal ones in a row: the same words, the same count, nothing said
/// besides. A pattern in any form is written from these.
struct WrittenRounds {
    int first = 0;  ///< from 0
    int last = 0;
    std::string words;  ///< without number and count; of a round that does not fit, the maker's own
    int stitches = 0;   ///< when each of them is done
    int yarn = 0;       ///< worked in, or begun with when the words change it
    bool new_yarn =
        false;  ///< not the yarn of the stitch before; the words do not say so. Never of the first
    bool several_yarns = false;
    std::string note;  ///< the maker's
    bool does_not_fit = false;

    [[nodiscard]] int rounds() const { return last - first + 1; }
};

/// The rounds of a piece in order. A line ends after each round (from 0) named in `break_after`; a round with
/// a note, and one that does not fit, stands alone.
[[nodiscard]] std::vector<WrittenRounds> written_rounds(const Piece& piece, const PieceGraph& graph,
                                                        Terms terms,
                                                        const std::vector<int>& break_after = {});

/// "Rnd 3: [sc, inc] x 6 (18)", "Rnds 7-12: with B, sc in each st around (36)", "Row 2: ...". `yarn` is put
/// before the words. `terms`: those that the words are in.
[[nodiscard]] std::string written_line(const WrittenRounds& rounds, Joining joining,
                                       const std::string& yarn = "", Terms terms = Terms::us);

}  // namespace roundwright
