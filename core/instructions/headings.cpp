#include "core/instructions/headings.h"

#include <algorithm>
#include <array>

#include "core/instructions/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

constexpr auto section_words = std::to_array<std::string_view>(
    {"materials", "material",     "abbreviations", "abbreviation", "gauge",      "tension",      "notes",
     "note",      "tools",        "supplies",      "finishing",    "assembly",   "instructions", "pattern",
     "terms",     "stitches",     "size",          "level",        "difficulty", "notions",      "you",
     "stitch",    "introduction", "about",         "copyright",    "sewing",     "measurements", "techniques",
     "skill",     "special",      "making"});
constexpr auto sentence_words = std::to_array<std::string_view>(
    {"stuff", "sew",      "insert", "attach", "embroider", "place",  "cut",   "weave",    "fasten",
     "close", "continue", "repeat", "leave",  "pull",      "use",    "do",    "don't",    "you",
     "is",    "are",      "will",   "add",    "join",      "begin",  "start", "stuffed",  "page",
     "by",    "designed", "hook",   "yarn",   "mm",        "finish", "turn",  "remember", "then",
     "now",   "worked",   "using",  "with",   "make",      "change", "draw",  "note"});

bool is_number(const Token& token) { return token.kind == TokenKind::number; }

// "make 2", "x 2", "make two": length in tokens; 0 when it is not there.
std::size_t make_length(Tokens tokens, int& make) {
    std::size_t at = 0;
    if (at < tokens.size() && (tokens[at].is("make") || tokens[at].is("x") || tokens[at].is("work"))) ++at;
    if (at == 0 || at >= tokens.size() || !is_number(tokens[at])) return 0;
    make = tokens[at].number;
    return at + 1;
}

// Takes "(make 2)", "- make 2", "x 2", "(2)" off the end, or "make 2" off the front.
Tokens without_make(Tokens tokens, Heading& heading) {
    int make = 1;
    if (const std::size_t front = make_length(tokens, make); front > 0) {
        heading.says_make = true;
        heading.make = make;
        return tokens.subspan(front);
    }
    for (std::size_t i = 1; i < tokens.size(); ++i) {
        const bool bracket = is_opener(tokens[i]);
        const Tokens inside = tokens.subspan(i + (bracket || tokens[i].is("-") || tokens[i].is(",") ? 1 : 0));
        const bool alone = bracket && inside.size() == 2 && is_number(inside[0]);
        std::size_t length = make_length(inside, make);
        if (alone) {
            make = inside[0].number;
            length = 1;
        }
        if (length == 0 || inside.size() > length + 3) continue;
        heading.says_make = true;
        heading.make = make;
        return tokens.first(i);
    }
    return tokens;
}

Tokens trimmed(Tokens tokens) {
    const auto sign = [](const Token& t) {
        return t.is(":") || t.is("-") || t.is("*") || t.is("**") || t.is("#") || t.is(".") || t.is("_") ||
               t.is("=");
    };
    while (!tokens.empty() && sign(tokens.front())) tokens = tokens.subspan(1);
    while (!tokens.empty() && sign(tokens.back())) tokens = tokens.first(tokens.size() - 1);
    return tokens;
}

}  // namespace

std::optional<Heading> heading_of(Tokens tokens) {
    constexpr std::size_t most_words = 8;
    if (tokens.empty() || tokens.back().is(".") || tokens.back().is(",")) return std::nullopt;
    Heading heading;
    if (tokens.size() > 1 && tokens[0].is("piece") && tokens[1].is(":")) {
        heading.name = said(without_make(tokens.subspan(2), heading));
        return heading;
    }
    const Tokens name = trimmed(without_make(trimmed(tokens), heading));
    if (name.size() > most_words) return std::nullopt;
    for (const Token& token : name) {
        const bool sign = token.kind == TokenKind::mark && !token.is("-") && !token.is("&") &&
                          !token.is("'") && !token.is("/") && !token.is("\"") && !token.is("(") &&
                          !token.is(")") && !token.is("+");
        if (sign || (!heading.says_make && is_one_of(token.text, sentence_words))) return std::nullopt;
    }
    if (name.empty() && !heading.says_make) return std::nullopt;
    if (!name.empty() && is_number(name[0])) return std::nullopt;
    heading.section = !name.empty() && !heading.says_make &&
                      (is_one_of(name[0].text, section_words) || is_one_of(name.back().text, section_words));
    heading.name = said(name);
    return heading;
}

}  // namespace roundwright
