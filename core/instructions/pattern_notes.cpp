#include "core/instructions/pattern_notes.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "core/instructions/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

bool has(Tokens tokens, std::string_view word) {
    return std::any_of(tokens.begin(), tokens.end(), [&](const Token& t) { return t.is(word); });
}
bool has_any(Tokens tokens, std::initializer_list<std::string_view> words) {
    return std::any_of(words.begin(), words.end(), [&](std::string_view word) { return has(tokens, word); });
}
bool has_words(Tokens tokens, std::string_view words) {
    for (std::size_t i = 0; i < tokens.size(); ++i)
        if (match_words(tokens.subspan(i), words) > 0) return true;
    return false;
}

std::optional<double> stretch_of(Tokens tokens) {
    if (!has_any(tokens, {"stuff", "stuffed", "stuffing", "unstuffed", "fill"})) return std::nullopt;
    if (has(tokens, "unstuffed") || has_words(tokens, "do not stuff") || has_words(tokens, "don't stuff") ||
        has_words(tokens, "no stuffing"))
        return unstuffed_stretch;
    if (has_any(tokens, {"lightly", "light", "loosely"})) return light_stuffing_stretch;
    if (has_any(tokens, {"firmly", "firm", "tightly", "well"})) return firm_stuffing_stretch;
    return medium_stuffing_stretch;
}

std::optional<End> end_of(Tokens tokens) {
    if (has_words(tokens, "do not close") || has_words(tokens, "leave open") ||
        has_words(tokens, "left open") || (has_any(tokens, {"leave", "leaving"}) && has(tokens, "open")))
        return End::left_open;
    const bool hole = has_any(tokens, {"hole", "opening", "round", "rnd", "end", "top", "ring", "up"});
    if (has_words(tokens, "draw closed") || has_words(tokens, "pull closed") ||
        has_words(tokens, "pull tight") || has_words(tokens, "cinch closed") ||
        has_words(tokens, "pull tight to close") || has_words(tokens, "cinch"))
        return End::drawn_closed;
    if (has_any(tokens, {"draw", "drawn", "close", "gather"}) && hole &&
        has_any(tokens, {"closed", "close", "shut"}))
        return End::drawn_closed;
    return std::nullopt;
}

std::optional<Joining> joining_of(Tokens tokens) {
    if (has_words(tokens, "joined rounds") || has_words(tokens, "joined rnds") ||
        has_words(tokens, "join each round") || has_words(tokens, "join each rnd"))
        return Joining::joined;
    if (has_words(tokens, "worked in rows") || has_words(tokens, "work in rows") ||
        has_words(tokens, "worked flat") || has_words(tokens, "work flat"))
        return Joining::rows;
    if (has(tokens, "spiral") || has_words(tokens, "continuous rounds") || has_words(tokens, "do not join"))
        return Joining::spiral;
    return std::nullopt;
}

double number_of(const Token& token) {
    double value = 0;
    const auto [end, error] =
        std::from_chars(token.text.data(), token.text.data() + token.text.size(), value);
    return error == std::errc{} && end == token.text.data() + token.text.size() ? value : 0;
}

// A measure in mm that stands in the tokens; 0 when none does.
double millimetres(Tokens tokens) {
    for (std::size_t i = 1; i < tokens.size(); ++i)
        if (tokens[i].is("mm") && number_of(tokens[i - 1]) > 0) return number_of(tokens[i - 1]);
    return 0;
}

// "between Rnds 12 and 13", "between rounds 12 & 13"
int gap_after(Tokens tokens) {
    for (std::size_t i = 0; i + 4 < tokens.size(); ++i) {
        if (!tokens[i].is("between") || !is_round_word(tokens[i + 1].text)) continue;
        const std::size_t second = is_round_word(tokens[i + 4].text) && i + 5 < tokens.size() ? i + 5 : i + 4;
        if (tokens[i + 2].kind != TokenKind::number || tokens[second].kind != TokenKind::number) continue;
        if (tokens[second].number == tokens[i + 2].number + 1 && tokens[i + 2].number > 0)
            return tokens[i + 2].number;
    }
    return 0;
}

std::optional<Feature> eyes_of(Tokens tokens) {
    const int round = has_any(tokens, {"eye", "eyes"}) ? gap_after(tokens) : 0;
    if (round == 0) return std::nullopt;
    Feature eyes;
    eyes.round = round - 1;
    for (std::size_t i = 1; i < tokens.size(); ++i)
        if (tokens[i].is("apart"))
            for (std::size_t back = 1; back <= std::min<std::size_t>(i, 2); ++back)
                if (tokens[i - back].kind == TokenKind::number && tokens[i - back].number <= 1'000)
                    eyes.stitches_apart = tokens[i - back].number;
    if (const double width = millimetres(tokens); width > 0 && width <= 100)
        eyes.width_mm = eyes.height_mm = width;
    return eyes;
}

std::string number(double value) {
    char text[32];
    const auto [end, error] = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, 2);
    std::string words(text, end);
    while (words.back() == '0') words.pop_back();
    if (words.back() == '.') words.pop_back();
    return words;
}

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

struct TermMarks {
    int us = 0;
    int uk = 0;
    std::optional<TextSpan> first_us;
    std::optional<TextSpan> first_uk;
    std::string us_word;
    std::string uk_word;
    int weak_us = 0;
    int weak_uk = 0;
    bool only_dc = false;
    int dc_in_ring = 0;
};

std::optional<Terms> terms_said(Tokens tokens) {
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        const bool us = tokens[i].is("us") || tokens[i].is("u.s") || tokens[i].is("american");
        const bool uk = tokens[i].is("uk") || tokens[i].is("british");
        if (!us && !uk) continue;
        for (std::size_t next = i + 1; next < std::min(tokens.size(), i + 3); ++next)
            if (tokens[next].is("terms") || tokens[next].is("term") || tokens[next].is("terminology") ||
                tokens[next].is("abbreviations"))
                return us ? Terms::us : Terms::uk;
    }
    return std::nullopt;
}

void mark(Tokens tokens, TermMarks& marks) {
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        const Token& t = tokens[i];
        const bool single = t.is("single") && i + 1 < tokens.size() && tokens[i + 1].is("crochet");
        if (t.is("sc") || t.is("hdc") || single) {
            ++marks.us;
            if (!marks.first_us) marks.us_word = std::string(t.raw);
            if (!marks.first_us) marks.first_us = t.where;
        } else if (t.is("htr") || t.is("dtr")) {
            ++marks.uk;
            if (!marks.first_uk) marks.uk_word = std::string(t.raw);
            if (!marks.first_uk) marks.first_uk = t.where;
        } else if (t.is("skip") || t.is("sk") || t.is("gauge")) {
            ++marks.weak_us;
        } else if (t.is("miss") || t.is("tension")) {
            ++marks.weak_uk;
        } else if (t.is("dc")) {
            marks.only_dc = true;
            const bool ring = has_any(tokens, {"mr", "ring", "circle"});
            if (ring && i > 0 && is_number(tokens[i - 1]) && marks.dc_in_ring == 0)
                marks.dc_in_ring = tokens[i - 1].number;
        }
    }
}

}  // namespace

NoteMeaning meaning_of_note(Tokens tokens) {
    NoteMeaning meaning;
    meaning.area_stretch = stretch_of(tokens);
    meaning.end = end_of(tokens);
    meaning.joining = joining_of(tokens);
    meaning.top_down = has_words(tokens, "top down") || has_words(tokens, "from the top");
    meaning.eyes = eyes_of(tokens);
    return meaning;
}

std::optional<YarnLine> yarn_line(Tokens tokens) {
    std::size_t at = 0;
    const bool called =
        at < tokens.size() && (tokens[at].is("yarn") || tokens[at].is("color") || tokens[at].is("colour"));
    if (called) ++at;
    if (tokens.size() < at + 3) return std::nullopt;
    YarnLine line;
    const Token& letter = tokens[at];
    const bool one_letter = letter.kind == TokenKind::word && letter.text.size() == 1 &&
                            letter.text[0] >= 'a' && letter.text[0] <= 'z';
    if (letter.is("mc") || letter.is("cc")) {
        line.yarn = letter.is("mc") ? 0 : 1;
    } else if (called && one_letter) {
        line.yarn = letter.text[0] - 'a';
    } else if (called && is_number(letter) && letter.number >= 1 && letter.number <= 1'000) {
        line.yarn = letter.number - 1;
    } else {
        return std::nullopt;
    }
    if (!(tokens[at + 1].is(":") || tokens[at + 1].is("=") || tokens[at + 1].is("-"))) return std::nullopt;
    line.name = said(tokens.subspan(at + 2));
    return line;
}

std::optional<double> hook_line(Tokens tokens) {
    if (tokens.size() < 3 || !has(tokens.first(std::min<std::size_t>(3, tokens.size())), "hook"))
        return std::nullopt;
    const double size = millimetres(tokens);
    if (size < 0.5 || size > 25) return std::nullopt;
    return size;
}

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

FoundTerms find_terms(const std::vector<SourceLine>& lines) {
    TermMarks marks;
    std::optional<Terms> named;
    for (const SourceLine& line : lines) {
        if (!named) named = terms_said(line.tokens);
        mark(line.tokens, marks);
    }
    FoundTerms found;
    constexpr int most_singles_in_ring = 8;
    if (named) {
        found = {*named, true, false, {}, {}};
    } else if (marks.us > 0 || marks.uk > 0) {
        found = {marks.us >= marks.uk ? Terms::us : Terms::uk, true, false, {}, {}};
    } else if (marks.weak_us != marks.weak_uk) {
        found = {marks.weak_uk > marks.weak_us ? Terms::uk : Terms::us, false, false, {}, {}};
    } else if (marks.only_dc && marks.dc_in_ring > 0) {
        found = {marks.dc_in_ring <= most_singles_in_ring ? Terms::uk : Terms::us, false, true, {}, {}};
    }
    const bool us = found.terms == Terms::us;
    if (us ? marks.uk > 0 : marks.us > 0) {
        found.mixed = us ? marks.first_uk : marks.first_us;
        found.mixed_word = us ? marks.uk_word : marks.us_word;
    }
    return found;
}

std::string joining_words(Joining joining, Terms terms) {
    const std::string sl(abbreviation(StitchKind::slip_stitch, terms));
    const std::string ch(abbreviation(StitchKind::chain, terms));
    switch (joining) {
        case Joining::joined:
            return "Worked in joined rounds: join each with " + sl + ", " + ch + " 1, which is not counted.";
        case Joining::rows:
            return "Worked in rows: " + ch + " 1 and turn at the end of each, which is not counted.";
        case Joining::spiral:
            break;
    }
    return "";
}

std::string stuffing_words(double stretch) {
    if (stretch <= unstuffed_stretch) return "Do not stuff.";
    if (stretch <= light_stuffing_stretch) return "Stuff lightly.";
    return stretch >= firm_stuffing_stretch ? "Stuff firmly." : "Stuff.";
}

std::string eyes_words(const Feature& eyes) {
    return "Place " + number(eyes.width_mm) + " mm safety eyes between Rnds " +
           std::to_string(eyes.round + 1) + " and " + std::to_string(eyes.round + 2) + ", " +
           std::to_string(eyes.stitches_apart) + " sts apart.";
}

std::string end_words(End end) {
    return end == End::drawn_closed ? "Fasten off and draw the last round closed."
                                    : "Fasten off, leaving the end open.";
}

std::string top_down_words() { return "Worked from the top down."; }

std::string hook_words(double hook_mm) { return "Hook: " + number(hook_mm) + " mm"; }

bool says_only(const NoteMeaning& meaning, std::string_view line, Terms terms) {
    return (meaning.area_stretch && line == stuffing_words(*meaning.area_stretch)) ||
           (meaning.end && line == end_words(*meaning.end)) ||
           (meaning.joining && line == joining_words(*meaning.joining, terms)) ||
           (meaning.top_down && line == top_down_words()) ||
           (meaning.eyes && line == eyes_words(*meaning.eyes));
}

}  // namespace roundwright
