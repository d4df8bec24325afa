#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/text_span.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Counts as they are typed, wherever they are typed: `24` is a round of 24, `24x4` four of them, `+6` and
/// `-6` are taken from the round below, `=` is even on it, `+6x4` grows by 6 four times. For x the signs X, ×
/// and * serve as well, for - the minus sign and the en dash. Fast entry is many of them in a line: commas,
/// semicolons, spaces and line ends part them.
struct CountEntry {
    enum class Kind { count, change };
    Kind kind = Kind::count;
    int value = 0;
    int times = 1;

    friend bool operator==(const CountEntry&, const CountEntry&) = default;
};

/// One of them by itself. Nothing if the text is anything else, a count is 0, or a number is beyond what a
/// piece can have.
[[nodiscard]] std::optional<CountEntry> parse_count_entry(std::string_view utf8);

enum class EntryProblemCode {
    expected_count,      ///< a number, a change or = should stand here
    expected_repeat,     ///< how many times, after x
    expected_separator,  ///< a comma or a space should come before this
    count_too_small,     ///< a round has at least one stitch
    count_too_large,     ///< over max_stitches_per_piece
    nothing_below,       ///< a change or = at a piece's first round, which is worked into a ring
    too_many_rounds,     ///< the piece would be over max_rounds_per_piece
};

struct EntryProblem {
    EntryProblemCode code = EntryProblemCode::expected_count;
    TextSpan where;
    int number = 0;  ///< the limit, or, for count_too_small, the stitches of the round below

    friend bool operator==(const EntryProblem&, const EntryProblem&) = default;
};

/// What was understood, in order; an item with a problem gives no rounds, those after it do.
struct RoundEntry {
    std::vector<Round> rounds;
    std::vector<EntryProblem> problems;
};

/// What new rounds go on from.
struct EntryContext {
    int below = 0;                 ///< stitches of the edge they are worked on; 0: a ring
    std::size_t rounds_there = 0;  ///< rounds that the piece has already
    Round like;                    ///< whose stitch, loops, spacing and yarn they take
};

[[nodiscard]] RoundEntry parse_round_entry(std::string_view utf8, const EntryContext& context);

/// Whether a text is nothing but signs of fast entry: if not, it is words of a pattern.
[[nodiscard]] bool looks_like_round_entry(std::string_view utf8);

/// Counts as fast entry: {6, 12, 18, 18} is "6, 12, 18x2". Parsed again it gives the same counts.
[[nodiscard]] std::string write_round_entry(std::span<const int> counts);

}  // namespace roundwright
