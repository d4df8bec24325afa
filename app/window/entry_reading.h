#pragma once

#include <vector>

#include <QString>

#include "core/instructions/terms.h"
#include "core/pattern/toy.h"

namespace roundwright::app {

/// What the fast entry line understood of a text: rounds to go after those of a piece, in words, and what it
/// did not understand.
struct EntryReading {
    std::vector<Round> rounds;
    QString understood;  ///< "4 rounds of 24, then 18, 12, 6"
    QString problem;     ///< empty: all was understood
    int problem_at = 0;  ///< where in the text, in UTF-16 units, and how long
    int problem_length = 0;

    [[nodiscard]] bool can_be_added() const { return problem.isEmpty() && !rounds.empty(); }
};

/// `like` is the round that new ones take their stitch and yarn from.
[[nodiscard]] EntryReading read_entry(const QString& text, const Piece& piece, const Round& like,
                                      Terms terms);

}  // namespace roundwright::app
