#include "core/language/words/terms.h"

#include <array>

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
    return terms == Terms::us ? names_of(kind).us : names_of(kind).uk;
}

std::string_view full_name(StitchKind kind, Terms terms) {
    return terms == Terms::us ? names_of(kind).us_full : names_of(kind).uk_full;
}

}  // namespace roundwright
