#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/diagnostic.h"
#include "core/base/text_span.h"

namespace roundwright {

/// What can be wrong in written rounds. `expected` and `found` of the diagnostic are given in brackets.
enum class ReadCode {
    // Proof of a round
    loops_do_not_fit,     ///< stitches take more or fewer loops than there are [loops below, loops taken]
    count_differs,        ///< stated count and made count [stated, made]
    repeat_does_not_fit,  ///< "around" does not come out [loops of one repeat, loops it has to fill]
    not_enough_left,      ///< "to last n sts" with fewer left than n [n, left]
    nothing_to_fill,      ///< "around" where there is no round below, or by what takes no loop
    no_stitch_before,     ///< "in same st" with no stitch before it in the round
    // Words of a round
    no_stitches,         ///< nothing is worked
    unknown_words,       ///< args: the words
    other_terms,         ///< a stitch that only the other terms name. args: the word
    number_alone,        ///< a number that belongs to nothing. args: the number
    number_is_zero,      ///< "sc 0". args: none
    number_too_large,    ///< [largest, number]
    bracket_not_closed,  ///< args: the bracket
    bracket_not_opened,  ///< args: the bracket
    bracket_mismatched,  ///< closed by a bracket of another kind. args: opening, closing
    star_missing,        ///< "rep from *" with no * before it
    nested_too_deep,     ///< [deepest, -]
    not_one_stitch,      ///< "( ... ) in next st" holds what cannot share a stitch
    unnamed_stitch,      ///< read as a near relation (a note). args: the word; its stitch, if no bobble
    // Rounds of a pattern
    round_out_of_order,  ///< a number comes twice, or too late [number that is next, number written]
    rounds_missing,      ///< the numbers leap ahead [number that is next, number written]
    range_reversed,      ///< "Rnds 10-6" [first, last]
    unknown_round,       ///< "rep rnd 9" with no round 9 before it [-, number]
    rounds_differ,       ///< "6-8 (4 rows)" [rounds by the numbers, rounds said]
    range_open,          ///< "Rows 3-??": where it ends is not said; one round is taken [first, -]
    rounds_filled,       ///< rounds that dots stand for, taken like those around them (a note) [first, last]
    round_not_taken,     ///< a round that the text numbers and no piece has [-, number]
    evenly_placed,       ///< "inc to 18": where is not said, so they are spaced evenly (a note) [-, stitches]
    closed_flat,         ///< "sc through both layers": taken as the piece's end (a note) [-, stitches]
    loops_left_over,  ///< worked into loops that another round or piece left: the piece begins as a ring of
                      ///< so many, and where it is joined is not kept (a warning) [-, loops]. args: words
    line_not_understood,  ///< looks like working, but is no round: kept as a note. args: the line
    remark_not_read,  ///< has numbers or stitches and says nothing that is known (a warning). args: the line
    unknown_piece,    ///< "same as left ear" with no such piece before it. args: its name
    piece_without_rounds,  ///< "Legs (make 2)" and no round after it. args: its name
    terms_guessed,         ///< a note. args: their code
    terms_mixed,           ///< two terms are named in one pattern. args: the word; codes of its and the rest
    no_rounds,             ///< there is no round in the text
    // Limits
    too_many_stitches,  ///< [limit, found]
    too_many_rounds,    ///< [limit, found]
    too_many_pieces,    ///< [limit, found]
    rounds_of_text,     ///< all the pieces of a text together [limit, found]
    stitches_of_text,   ///< all the pieces of a text together [limit, found]
    text_too_long,      ///< [limit, bytes]
    line_too_long,      ///< [limit, bytes]
    not_utf8,           ///< bytes that are no text
};

/// A name for machines: "loops_do_not_fit", ...
[[nodiscard]] std::string_view read_code_name(ReadCode code);

/// How a round is mended. The edits say it exactly; the code and arguments say it in words.
enum class MendCode {
    change_stated_count,  ///< args: stated, made
    change_number,  ///< args: number, new number, word it stands with, loops one repeat takes now, repeats,
                    ///< loops taken, loops below (a repeat of 0 loops: the round is not one repeat)
    change_times,   ///< args: times, new times, loops of one repeat, loops taken, loops below
    add_times,      ///< args: times, loops of one repeat, loops below
    times_sign,     ///< a sign typed for another. args: what was typed, times
    add_stitches,   ///< args: stitches
    remove_words,   ///< args: the words
    change_stitch,  ///< args: the word, new word
    close_bracket,  ///< args: the bracket
    open_bracket,   ///< args: the bracket
    add_brackets,   ///< args: times
    spell,          ///< args: the word, new word
    space_evenly,   ///< the stated count, evenly spaced. args: stitches, loops below
    renumber,       ///< args: number, new number
    bracket_count,  ///< a number that stands alone is the count of stitches. args: count
};

[[nodiscard]] std::string_view mend_code_name(MendCode code);

/// Put `replacement` where `where` is; a span of length 0 is a place to insert at.
struct TextEdit {
    TextSpan where;
    std::string replacement;

    friend bool operator==(const TextEdit&, const TextEdit&) = default;
};

struct Mend {
    MendCode code;
    std::vector<Argument> arguments;
    std::vector<TextEdit> edits;
    int stitches = -1;  ///< that the round has with it
};

/// What the rounds after one that does not come out go on from, and how sure that is.
struct GoingOn {
    enum class From {
        not_said,      ///< the round came out, or none follows
        stated_count,  ///< the printed count
        words,         ///< what the words make
        next_rounds,   ///< what the rounds after it need, where nothing usable is printed
        round_below,   ///< as many as before it: nothing better is known
    };
    From from = From::not_said;
    int stitches = 0;
    bool confirmed = false;  ///< the rounds after it come out on that, and not on the other
    bool mended = false;     ///< the round was taken as the first mend says
};

struct ReadDiagnostic {
    ReadCode code = ReadCode::no_rounds;
    Severity severity = Severity::error;
    TextSpan where{};
    int piece = -1;  ///< from 0
    int round = -1;  ///< from 0, within the piece
    int expected = 0;
    int found = 0;
    std::vector<Argument> arguments{};
    std::vector<Mend> mends{};  ///< likeliest first; each was tried and comes out
    int more = 0;               ///< how many more of its kind come after it and are not listed
    GoingOn goes_on{};          ///< set on the first error of a round
};

/// `text` with the edits of a mend made. Edits that point outside the text are passed over.
[[nodiscard]] std::string mended(std::string_view text, const Mend& mend);

}  // namespace roundwright
