#include "core/language/pattern/unread_work.h"

#include <algorithm>
#include <array>

#include "core/language/pattern/likeness.h"
#include "core/language/pattern/pattern_lines.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

constexpr auto remark_verbs = std::to_array<std::string_view>(
    {"place",     "insert",   "attach", "sew",    "stuff", "stuffing", "stuffed", "embroider", "mark",
     "fit",       "cut",      "weave",  "pin",    "glue",  "brush",    "fasten",  "leave",     "use",
     "position",  "put",      "pull",   "thread", "close", "draw",     "flatten", "fold",      "page",
     "copyright", "designed", "eyes",   "nose",   "level", "hook",     "yarn"});
constexpr auto units = std::to_array<std::string_view>(
    {"mm",    "cm", "m",   "g",    "kg",    "oz",    "inch",   "inches", "in",    "metres", "meters",
     "yards", "yd", "yds", "ball", "balls", "skein", "skeins", "gram",   "grams", "\"",     "%"});
constexpr auto sizes = std::to_array<std::string_view>({"wide", "tall", "high", "long", "apart"});
constexpr auto moves =
    std::to_array<std::string_view>({"around", "even", "unchanged", "each", "across", "next"});
constexpr auto repeats = std::to_array<std::string_view>({"x", "times", "rep", "repeat", "twice", "*"});
constexpr auto before_round = std::to_array<std::string_view>({"last", "final", "next", "following", "each"});
// Names of stitches that are words of every day too.
constexpr auto everyday =
    std::to_array<std::string_view>({"slip", "chain", "skip", "miss", "puff", "cluster", "bobble", "treble",
                                     "popcorn", "increase", "decrease"});

bool is_digits(const Token& token) {
    return (token.kind == TokenKind::number || token.kind == TokenKind::ordinal) && token.raw[0] >= '0' &&
           token.raw[0] <= '9';
}

// The tokens without "3." or "3)" before a step.
Tokens without_step(Tokens tokens) {
    const bool step = tokens.size() > 2 && is_digits(tokens[0]) && (tokens[1].is(".") || tokens[1].is(")"));
    return step ? tokens.subspan(2) : tokens;
}

bool is_repeat(const Token& token) { return token.is("rep") || token.is("repeat"); }

bool repeats_round(Tokens tokens) {
    const std::size_t next = tokens.size() > 1 && tokens[1].is("the") ? 2 : 1;
    return is_repeat(tokens[0]) && next < tokens.size() && is_round_word(tokens[next].text);
}

struct Signs {
    int numbers = 0;
    bool measure = false;
    int stitches = 0;
    bool stitch_with_number = false;
    bool moves = false;
    bool repeats = false;
    bool repeats_a_round = false;
};

// "2 in each": "in" of a place, no inches.
bool leads_to_a_place(Tokens tokens) {
    return tokens.size() > 1 && tokens[0].is("in") &&
           (tokens[1].is("each") || tokens[1].is("every") || tokens[1].is("next") || tokens[1].is("the") ||
            tokens[1].is("same"));
}

Signs signs_of(Tokens tokens, Terms terms) {
    Signs signs;
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        const Token& token = tokens[i];
        const bool last = i + 1 == tokens.size();
        signs.numbers += is_digits(token) ? 1 : 0;
        signs.measure =
            signs.measure || is_one_of(token.text, sizes) ||
            (is_digits(token) && !last && is_one_of(tokens[i + 1].text, units) &&
             !leads_to_a_place(tokens.subspan(i + 1))) ||
            (is_one_of(token.text, units) && i > 0 && tokens[i - 1].raw.find('.') != std::string_view::npos);
        signs.moves = signs.moves || is_one_of(token.text, moves);
        signs.repeats = signs.repeats || is_one_of(token.text, repeats);
        signs.repeats_a_round = signs.repeats_a_round || repeats_round(tokens.subspan(i));
        const auto name = match_name(tokens.subspan(i), terms);
        if (!name || is_one_of(token.text, everyday)) continue;
        const std::size_t after = i + static_cast<std::size_t>(name->length);
        ++signs.stitches;
        signs.stitch_with_number = signs.stitch_with_number || (i > 0 && is_digits(tokens[i - 1])) ||
                                   (after < tokens.size() && is_digits(tokens[after]));
    }
    return signs;
}

// "Rnd 5", "Last round", "3rd row", "5 rounds", "5. round"
bool begins_with_a_round(Tokens tokens) {
    if (tokens.size() < 2) return false;
    const bool round_first = is_round_word(tokens[0].text);
    if (round_first) return is_digits(tokens[1]) || (tokens.size() > 2 && is_digits(tokens[2]));
    const bool later = tokens.size() > 2 && (is_digits(tokens[1]) || tokens[1].is("."));
    const std::size_t noun = later ? 2 : 1;
    return is_round_word(tokens[noun].text) &&
           (is_digits(tokens[0]) || is_one_of(tokens[0].text, before_round));
}

bool works(const Signs& signs, Tokens tokens) {
    const bool more = signs.stitches > 0 || signs.moves || signs.repeats || signs.numbers > 1;
    if (signs.repeats_a_round || (more && has_count(tokens))) return true;
    if (signs.numbers > 0 && (signs.moves || is_repeat(tokens[0]))) return true;
    if (signs.stitches > 1 && signs.numbers > 0) return true;
    return signs.stitches > 0 && (signs.stitch_with_number || signs.moves || signs.repeats);
}

// What is plainly a remark works only when it has stitches that are counted, repeated or worked around.
bool works_in_a_remark(const Signs& signs, Tokens tokens) {
    return signs.repeats_a_round ||
           (signs.stitches > 0 && (has_count(tokens) || signs.repeats || signs.moves));
}

}  // namespace

bool names_a_stitch(Tokens tokens, Terms terms) { return signs_of(tokens, terms).stitches > 0; }

WorkSign work_sign(Tokens tokens, Terms terms) {
    constexpr std::size_t longest = 2'000;
    tokens = tokens.first(std::min(tokens.size(), longest));
    if (begins_with_a_round(tokens)) return WorkSign::work;
    tokens = without_step(tokens);
    if (tokens.empty() || is_marked_note(tokens)) return WorkSign::none;
    const Signs signs = signs_of(tokens, terms);
    const bool remark = is_one_of(tokens[0].text, remark_verbs) || signs.measure;
    if (remark) return works_in_a_remark(signs, tokens) ? WorkSign::work : WorkSign::none;
    if (works(signs, tokens)) return WorkSign::work;
    return signs.numbers > 0 || signs.stitches > 0 ? WorkSign::mention : WorkSign::none;
}

WorkSign work_sign_in_section(Tokens tokens, Terms terms) {
    constexpr std::size_t longest = 2'000;
    tokens = tokens.first(std::min(tokens.size(), longest));
    if (is_marked_note(tokens)) return WorkSign::none;
    const Signs signs = signs_of(tokens, terms);
    const bool work = signs.stitches > 0 && has_count(tokens) && looks_like_work(tokens, terms);
    return work ? WorkSign::work : WorkSign::none;
}

}  // namespace roundwright
