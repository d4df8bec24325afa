#include "core/language/pattern/headings.h"

#include <algorithm>
#include <array>

#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

struct SectionWord {
    std::string_view word;
    Section section;
};
constexpr auto section_words = std::to_array<SectionWord>({
    {"materials", Section::materials},
    {"material", Section::materials},
    {"tools", Section::materials},
    {"supplies", Section::materials},
    {"notions", Section::materials},
    {"you", Section::materials},
    {"abbreviations", Section::abbreviations},
    {"abbreviation", Section::abbreviations},
    {"terms", Section::abbreviations},
    {"stitches", Section::abbreviations},
    {"stitch", Section::abbreviations},
    {"techniques", Section::abbreviations},
    {"special", Section::abbreviations},
    {"gauge", Section::gauge},
    {"tension", Section::gauge},
    {"size", Section::gauge},
    {"measurements", Section::gauge},
    {"rounds", Section::rounds},
    {"instructions", Section::rounds},
    {"pattern", Section::rounds},
    {"assembly", Section::assembly},
    {"sewing", Section::assembly},
    {"finishing", Section::finishing},
    {"notes", Section::remarks},
    {"note", Section::remarks},
    {"level", Section::remarks},
    {"difficulty", Section::remarks},
    {"introduction", Section::remarks},
    {"about", Section::remarks},
    {"copyright", Section::remarks},
    {"skill", Section::remarks},
    {"safety", Section::remarks},
    {"care", Section::remarks},
});
constexpr auto sentence_words = std::to_array<std::string_view>(
    {"stuff", "sew",      "insert", "attach", "embroider", "place",  "cut",   "weave",    "fasten",
     "close", "continue", "repeat", "leave",  "pull",      "use",    "do",    "don't",    "you",
     "is",    "are",      "will",   "add",    "join",      "begin",  "start", "stuffed",  "page",
     "by",    "designed", "hook",   "yarn",   "mm",        "finish", "turn",  "remember", "then",
     "now",   "worked",   "using",  "with",   "make",      "change", "draw",  "note"});

Section section_of(std::string_view word) {
    const auto found = std::find_if(section_words.begin(), section_words.end(),
                                    [&](const SectionWord& one) { return one.word == word; });
    return found == section_words.end() ? Section::none : found->section;
}

// "Making up" is assembly; "Making the head" is not.
Section section_of(Tokens name) {
    if (name.size() <= 2 && name[0].is("making") && (name.size() == 1 || name[1].is("up")))
        return Section::assembly;
    const Section first = section_of(name.front().text);
    return first != Section::none ? first : section_of(name.back().text);
}

bool begins_with_digit(const Token& token) { return token.raw[0] >= '0' && token.raw[0] <= '9'; }

bool is_number(const Token& token) { return token.kind == TokenKind::number; }

// "2 parts", "2 pcs", "2x"
std::size_t made_of_pieces(Tokens tokens, int& make) {
    if (tokens.size() < 2 || !is_number(tokens[0])) return 0;
    const Token& what = tokens[1];
    const bool pieces = what.is("parts") || what.is("pcs") || what.is("pieces") || what.is("pc") ||
                        what.is("times") || (what.is("x") && (tokens.size() == 2 || is_closer(tokens[2])));
    if (!pieces) return 0;
    make = tokens[0].number;
    return 2;
}

// "make 2", "x 2", "make two": length in tokens; 0 when it is not there.
std::size_t make_length(Tokens tokens, int& make) {
    std::size_t at = 0;
    if (at < tokens.size() && (tokens[at].is("make") || tokens[at].is("x") || tokens[at].is("work"))) ++at;
    if (at == 0) return made_of_pieces(tokens, make);
    if (at >= tokens.size() || !is_number(tokens[at])) return 0;
    if (at + 1 < tokens.size() && (tokens[at + 1].is("mm") || tokens[at + 1].is("cm"))) return 0;
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
        // "2 in each (12)" counts stitches.
        constexpr int most_made_of_a_piece = 12;
        if (alone && inside[0].number <= most_made_of_a_piece) {
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
               t.is("=") || t.is("~");
    };
    while (!tokens.empty() && sign(tokens.front())) tokens = tokens.subspan(1);
    while (!tokens.empty() && sign(tokens.back())) tokens = tokens.first(tokens.size() - 1);
    return tokens;
}

// "Rnd | Stitches | Total", "Round  Instructions  Sts"
bool is_table_head(Tokens tokens) {
    constexpr auto columns = std::to_array<std::string_view>(
        {"stitches", "sts", "st", "total", "count", "instructions", "instruction", "work", "pattern", "no"});
    while (!tokens.empty() && tokens[0].is("|")) tokens = tokens.subspan(1);
    if (!tokens.empty() && (tokens[0].is("piece") || tokens[0].is("part"))) tokens = tokens.subspan(1);
    return tokens.size() > 1 && is_round_word(tokens[0].text) && is_one_of(tokens.back().text, columns);
}

// "1. HEAD", "Part 2: the body": the number is none of the name.
Tokens without_number(Tokens tokens) {
    constexpr std::size_t most_words = 4;
    const bool part = tokens.size() > 3 && (tokens[0].is("part") || tokens[0].is("section"));
    const Tokens rest = tokens.subspan(part ? 1 : 0);
    if (rest.size() < 2 || !is_number(rest[0]) || rest.size() > most_words + 2) return tokens;
    const bool sign = rest[1].is(".") || rest[1].is(")") || (part && (rest[1].is(":") || rest[1].is("-")));
    return sign && rest.size() > 2 && rest[2].kind == TokenKind::word ? rest.subspan(2) : tokens;
}

// "Flippers (grey, 2 pcs)" leaves "Flippers (grey".
std::string without_open_bracket(std::string name) {
    const std::size_t open = name.rfind('(');
    if (open != std::string::npos && name.find(')', open) == std::string::npos) name.erase(open, 1);
    return name;
}

// "sc around (12)": stitches, and how they go on.
bool is_worked(Tokens tokens) {
    if (!has_any_word(tokens, {"around", "each", "across", "times", "rnd", "rnds", "rounds"})) return false;
    for (std::size_t at = 0; at < tokens.size(); ++at)
        for (const Terms terms : {Terms::us, Terms::uk}) {
            const auto name = match_name(tokens.subspan(at), terms);
            if (name && !name->other_terms && tokens[at].text.size() <= 4) return true;
        }
    return false;
}

}  // namespace

std::optional<Heading> heading_of(Tokens tokens) {
    constexpr std::size_t most_words = 8;
    if (tokens.empty() || tokens.back().is(".") || tokens.back().is(",")) return std::nullopt;
    if (is_table_head(tokens) || is_worked(tokens)) return std::nullopt;
    Heading heading;
    if (names_a_piece(tokens)) {
        heading.name = said(without_make(tokens.subspan(2), heading));
        return heading;
    }
    const Tokens name = trimmed(without_number(trimmed(without_make(trimmed(tokens), heading))));
    if (name.size() > most_words) return std::nullopt;
    if (has_word(name, "you") && !name.empty() && name.back().is("need"))
        return Heading{.name = said(name), .section = Section::materials};  // "You will need"
    for (const Token& token : name) {
        const bool sign = token.kind == TokenKind::mark && !token.is("-") && !token.is("&") &&
                          !token.is("'") && !token.is("/") && !token.is("\"") && !token.is("(") &&
                          !token.is(")") && !token.is("+");
        if (sign || (!heading.says_make && is_one_of(token.text, sentence_words))) return std::nullopt;
    }
    if (name.empty() && !heading.says_make) return std::nullopt;
    if (!name.empty() && begins_with_digit(name[0])) return std::nullopt;
    if (!name.empty() && !heading.says_make) heading.section = section_of(name);
    heading.name = without_open_bracket(said(name));
    return heading;
}

Heading heading_as_it_stands(Tokens tokens) { return Heading{.name = said(tokens)}; }

bool names_a_piece(Tokens tokens) { return tokens.size() > 1 && tokens[0].is("piece") && tokens[1].is(":"); }

int made_by_sentence(Tokens tokens) {
    const bool says = tokens.size() > 2 && tokens[0].is("make") && is_number(tokens[1]) && tokens[2].is(".");
    return says ? tokens[1].number : 0;
}

}  // namespace roundwright
