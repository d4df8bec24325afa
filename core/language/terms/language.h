#pragma once

#include <array>
#include <span>
#include <string_view>

namespace roundwright {

/// What a language says for some English words. In both: `#` is a number, `~` a stitch, `^` an ordinal, in
/// the order they come; a language writes its ordinals with `#` ("# ." for "^"). `said` may hold several
/// ways, parted by `|`; the first one is written, all are read.
struct Phrase {
    std::string_view english;
    std::string_view said;
};

/// A stitch: how it is written short and in full, and other ways it is read.
struct StitchTerm {
    std::string_view abbreviation;
    std::string_view full_name;
    std::string_view others;  ///< parted by `|`
};

/// The terms of the trade in one language: a table that both reading and writing go by. Rounds are read by
/// putting English words (US terms) for its words, and written by putting its words for the English ones.
struct Language {
    std::string_view code;            ///< ISO 639-1
    std::string_view names_itself;    ///< a line that says which terms a pattern is in
    std::array<StitchTerm, 8> terms;  ///< in the order of StitchKind
    std::span<const Phrase>
        written;  ///< both ways; every language has the same English ones, in the same order
    std::span<const Phrase> heard;  ///< only read
};

/// One a file. Every table is common practice as it is known from memory: no standard of crochet terms was
/// found for these languages, and makers differ, so the others' ways are read too.
extern const Language german_terms, french_terms, spanish_terms, dutch_terms, danish_terms, portuguese_terms,
    italian_terms;

}  // namespace roundwright
