#include "core/language/pattern/odd_rounds.h"

#include <algorithm>

#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

bool is_layer(const Token& token) {
    constexpr std::size_t shortest = 5;
    if (token.text.size() < shortest) return false;
    return token.is("layers") || token.is("layer") || token.is("sides") || token.is("thicknesses") ||
           token.is("pieces") || token.is("edges") || token.is("together");
}

// "through both layers", "thru both sides", "through all thicknesses"
bool through_both(Tokens tokens) {
    for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
        if (!tokens[i].is("through") && !tokens[i].is("thru") && !tokens[i].is("into")) continue;
        std::size_t next = i + 1;
        while (next < tokens.size() && (tokens[next].is("both") || tokens[next].is("the") ||
                                        tokens[next].is("all") || tokens[next].kind == TokenKind::number))
            ++next;
        if (next > i + 1 && next < tokens.size() && is_layer(tokens[next])) return true;
    }
    return false;
}

bool folds(Tokens tokens) {
    return has_any_word(tokens, {"fold", "flatten", "flat", "pinch", "press", "folded", "flattened", "half"});
}

// The end of the phrase that names the loops: past "of R2", and the colon or comma after it.
std::optional<std::size_t> reference_end(Tokens tokens, std::size_t loops, int& round) {
    constexpr std::size_t furthest = 6;
    for (std::size_t i = loops; i + 1 < std::min(tokens.size(), loops + furthest); ++i) {
        if (!is_round_word(tokens[i].text) || tokens[i + 1].kind != TokenKind::number) continue;
        round = tokens[i + 1].number;
        std::size_t end = i + 2;
        while (end < tokens.size() && (tokens[end].is(":") || tokens[end].is(",") || tokens[end].is("-")))
            ++end;
        return end;
    }
    return std::nullopt;
}

}  // namespace

bool closes_flat(Tokens tokens) {
    if (std::none_of(tokens.begin(), tokens.end(), is_layer)) return false;
    if (through_both(tokens)) return true;
    return folds(tokens) && has_word(tokens, "both") && has_any_word(tokens, {"layers", "sides"}) &&
           !has_any_word(tokens, {"ch", "chain"});
}

std::optional<LeftLoops> left_loops(Tokens tokens) {
    constexpr std::size_t longest = 60;
    if (tokens.size() > longest) return std::nullopt;
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        if (!tokens[i].is("loops") && !tokens[i].is("loop") && !tokens[i].is("lps")) continue;
        LeftLoops left;
        const auto end = reference_end(tokens, i, left.round);
        if (!end) continue;
        // What stands before the loops is worked in them: "2 sc in each front loop of R2".
        std::size_t from = i;
        constexpr auto before = std::to_array<std::string_view>(
            {"front", "back", "free",    "unused",  "leftover", "remaining", "unworked", "left",
             "the",   "in",   "into",    "working", "an",       "a",         "any",      "loose",
             "over",  "of",   "exposed", "on",      "work",     "now"});
        while (from > 0 && is_one_of(tokens[from - 1].text, before)) --from;
        left.words.assign(tokens.begin(), tokens.begin() + static_cast<std::ptrdiff_t>(from));
        left.words.insert(left.words.end(), tokens.begin() + static_cast<std::ptrdiff_t>(*end), tokens.end());
        return left;
    }
    return std::nullopt;
}

}  // namespace roundwright
