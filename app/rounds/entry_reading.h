#pragma once

#include <memory>
#include <string>
#include <vector>

#include <QString>

#include "core/language/words/terms.h"
#include "core/rounds/piece_graph.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// What the fast entry line understood of a text: rounds to go after those of a piece, in words, and what it
/// did not understand.
struct EntryReading {
    std::vector<Round> rounds;
    std::vector<std::string> yarn_names;  ///< that the rounds count on; those beyond the toy's are new
    QString understood;                   ///< "4 rounds of 24, then 18, 12, 6"
    QString problem;                      ///< empty: all was understood
    int problem_at = 0;                   ///< where in the text, in UTF-16 units, and how long
    int problem_length = 0;

    [[nodiscard]] bool can_be_added() const { return problem.isEmpty() && !rounds.empty(); }
};

/// What the rounds go on from.
struct EntryPlace {
    Piece piece;
    Round like;  ///< the round that new ones take their stitch and yarn from
    std::vector<std::string> yarn_names;
    Terms terms = Terms::us;
    std::shared_ptr<const SharedGraph> graph = nullptr;  ///< of the piece; null: it is derived
};

/// Counts, or words of a pattern with a round on each line. A round in words that does not come out can be
/// added all the same, since a check then names it; `understood` says so.
[[nodiscard]] EntryReading read_entry(const QString& text, const EntryPlace& place);

}  // namespace roundwright::app
