#include "core/language/words/terms.h"

#include <algorithm>
#include <array>

#include "core/language/words/phrasebook.h"

namespace roundwright {
namespace {

struct Names {
    std::string_view us;
    std::string_view uk;
    std::string_view us_full;
    std::string_view uk_full;
};

// In the order of StitchKind.
constexpr std::array<Names, 8> names{{
    {"ch", "ch", "chain", "chain"},
    {"sl st", "sl st", "slip stitch", "slip stitch"},
    {"sc", "dc", "single crochet", "double crochet"},
    {"hdc", "htr", "half double crochet", "half treble crochet"},
    {"dc", "tr", "double crochet", "treble crochet"},
    {"tr", "dtr", "treble crochet", "double treble crochet"},
    {"bobble", "bobble", "bobble", "bobble"},
    {"sk", "miss", "skip", "miss"},
}};

const Names& names_of(StitchKind kind) { return names.at(static_cast<std::size_t>(kind)); }

}  // namespace

std::string_view abbreviation(StitchKind kind, Terms terms) {
    if (!is_english(terms)) return language_of(terms).terms.at(static_cast<std::size_t>(kind)).abbreviation;
    return terms == Terms::us ? names_of(kind).us : names_of(kind).uk;
}

std::string_view full_name(StitchKind kind, Terms terms) {
    if (!is_english(terms)) return language_of(terms).terms.at(static_cast<std::size_t>(kind)).full_name;
    return terms == Terms::us ? names_of(kind).us_full : names_of(kind).uk_full;
}

std::string_view terms_code(Terms terms) {
    if (!is_english(terms)) return language_of(terms).code;
    return terms == Terms::us ? "us" : "uk";
}

std::optional<Terms> terms_of_code(std::string_view code) {
    const auto* found = std::find_if(all_terms.begin(), all_terms.end(),
                                     [&](Terms terms) { return terms_code(terms) == code; });
    return found == all_terms.end() ? std::nullopt : std::optional(*found);
}

}  // namespace roundwright
