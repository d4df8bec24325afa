#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/language/round/read_diagnostic.h"
#include "core/language/words/terms.h"
#include "core/toy/toy.h"

namespace roundwright {

struct ReadOptions {
    std::optional<Terms> terms;           ///< absent: found in the text
    std::vector<std::string> yarn_names;  ///< the toy's, so that "change to grey" finds its yarn
    bool find_mends = true;  ///< false: faults are found and named alone, in about a sixth of the time
};

enum class ReadLineKind {
    title,
    heading,
    terms,
    yarn,
    start,
    round,
    note,
    section,       ///< heads what is no piece: "Materials", "Assembly"
    materials,     ///< yarn, hook, eyes, and how the gauge is measured
    abbreviation,  ///< what a name of a stitch means
    assembly,      ///< how the pieces are put together and finished
    like_piece,    ///< "same as left ear": the rounds of another piece
    not_read,      ///< kept as a note, but a diagnostic says that it may be more
};

/// What was made of one line of the text (or of several that go together), for a review side by side.
struct ReadLine {
    ReadLineKind kind = ReadLineKind::note;
    int first_line = 1;  ///< in the source, from 1
    int last_line = 1;
    int piece = -1;        ///< from 0; -1: belongs to none
    int first_round = -1;  ///< from 0
    int last_round = -1;
    int stitches = 0;        ///< of the last of the rounds, when it is done
    bool proved = true;      ///< false: a diagnostic says why
    std::string understood;  ///< the round written anew in the pattern's own terms; a note's text

    /// Nothing of it was taken after all.
    void left_out() {
        kind = ReadLineKind::not_read;
        first_round = last_round = -1;
        proved = false;
    }
};

/// What one line of the text came to.
struct LineAccount {
    ReadLineKind kind = ReadLineKind::not_read;
    int entry = -1;  ///< the line of the review that has it, an index; -1: there is nothing on the line
};

/// How the rounds of a piece were read.
struct RoundTally {
    int sure = 0;     ///< they came out as they stand
    int mended = 0;   ///< they came out with the mend that the finding names first
    int refused = 0;  ///< they did not: so many stitches were taken as the rounds after them go on from
};

/// A pattern as it was understood. Nothing of the text is lost: what is not a round, a heading, a start, a
/// yarn or the terms is a note, and a note in which there may be rounds is named in the diagnostics.
struct ReadPattern {
    std::string title;
    std::string designer;
    std::optional<double> hook_mm;
    std::optional<SwatchGauge> gauge;  ///< "Gauge: 22 sts and 24 rows = 10 cm"
    std::vector<Piece> pieces;
    std::vector<RoundTally> tallies;  ///< one for each piece
    Terms terms = Terms::us;
    bool terms_sure = false;              ///< false: neither named nor marked by a stitch that only one has
    std::vector<std::string> yarn_names;  ///< by index; empty: used, but never named
    std::string notes;  ///< what stands before the first piece, and materials and notes after it, a line each
    std::string assembly;   ///< one step a paragraph
    std::string finishing;  ///< the same
    std::vector<ReadLine> lines;
    std::vector<LineAccount> account;         ///< one for each line of the text, in order
    std::vector<ReadDiagnostic> diagnostics;  ///< in the order of the text

    bool proved() const;    ///< no error
    bool complete() const;  ///< and no line with numbers or stitches that was not read
};

/// Reads a whole pattern: several pieces with headings, rounds numbered, bulleted or bare, ranges, repeats of
/// earlier rounds, lines broken by a page, yarns, and notes in between. One bad round never hides the rest:
/// the rounds after it stand on the count it states, on what it makes, or on what they need themselves. Any
/// bytes are answered; time grows linearly with the text.
[[nodiscard]] ReadPattern read_pattern(std::string_view utf8, const ReadOptions& options = {});

/// A toy of a pattern that was read: `base` lends what patterns do not say (gauge, yarn weights, making).
[[nodiscard]] Toy toy_of(const ReadPattern& pattern, const Toy& base = {});

}  // namespace roundwright
