#pragma once

#include <cstdint>
#include <deque>
#include <span>
#include <string>
#include <vector>

#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"

namespace roundwright {

/// What a line of a pattern looks like, before anything in it is read.
enum class LineKind : std::uint8_t {
    blank,
    round,  ///< begins with a round's number, or with a bullet and stitches
    work,   ///< stitches, but no number
    text,   ///< headings, notes and everything else
};

/// Rounds that follow each other, by the numbers a text gives them.
struct RoundRange {
    int first = 0;
    int last = 0;

    int size() const { return last - first + 1; }
};

/// A line of a pattern with the lines that go on with it: a round that a printed page has broken is one line
/// here.
struct PatternLine {
    LineKind kind = LineKind::text;
    int first_line = 1;  ///< in the source
    int last_line = 1;
    std::vector<Token> tokens;        ///< without bullet and round number
    std::vector<RoundRange> numbers;  ///< in order; empty: the line says none ("Next rnd:", a bullet)
    int first_number = 0;             ///< of a range of rounds, as written
    int last_number = 0;
    int rounds = 1;         ///< how many rounds the line stands for
    int rounds_said = 0;    ///< "6-8 (3 rows)": 3; 0: it does not say
    TextSpan header;        ///< "Rnds 6-10"; length 0: there is none
    bool open_end = false;  ///< "3-??", "3-end": the last of them is not said
    bool dots = false;      ///< "...": rounds that are not written out
    bool row = false;       ///< "Row 3"
    bool starts = false;    ///< "Start: ...": the first round, without a number
    bool plain = false;     ///< a number and no sign behind it: "3 sc around" as round 3
    bool bare = false;      ///< a number and no word with it, as steps of anything have: "3."
    bool bulleted = false;
    int heading_level =
        0;  ///< "## Head" or "-----" under it: 2; "=" is 1, "~" is 3; 0: not marked as a heading
    int open_brackets = 0;
    bool counted = false;  ///< a count of stitches stands in it
    std::string raw;       ///< text lines and bare numbers: as it stands
};

/// Cuts a text into lines of a pattern. Tokens of words that a page has hyphenated are kept in `joined`,
/// which must outlive the lines.
[[nodiscard]] std::vector<PatternLine> pattern_lines(const LexedText& text, Terms terms,
                                                     std::deque<std::string>& joined);

/// Whether tokens begin like stitches: a number and a stitch, a bracket, a star, a ring, ...
[[nodiscard]] bool looks_like_work(std::span<const Token> tokens, Terms terms);

/// Whether a count of stitches stands in the tokens: "(18)", "[18 sts]", "- 18 sts".
[[nodiscard]] bool has_count(std::span<const Token> tokens);

}  // namespace roundwright
