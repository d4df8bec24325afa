#include "core/language/pattern/find_terms.h"

#include <algorithm>
#include <array>
#include <span>

#include "core/language/pattern/headings.h"
#include "core/language/pattern/pattern_lines.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

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
            const bool ring = has_any_word(tokens, {"mr", "ring", "circle"});
            if (ring && i > 0 && tokens[i - 1].kind == TokenKind::number && marks.dc_in_ring == 0)
                marks.dc_in_ring = tokens[i - 1].number;
        }
    }
}

}  // namespace

bool is_free_text(Tokens tokens) {
    const auto begins = [&](std::string_view first, std::string_view second) {
        return tokens.size() > 1 && tokens[0].is(first) && tokens[1].is(second);
    };
    return names_a_piece(tokens) || is_marked_note(tokens) || begins("title", ":") ||
           begins("designed", "by");
}

bool is_terms_line(Tokens tokens) {
    const bool of_a_language =
        tokens.size() > 1 && tokens[0].renamed && tokens[0].is("pattern") && tokens[1].is("terms");
    if (of_a_language) return true;
    constexpr auto besides = std::to_array<std::string_view>({"us", "uk", "terms", "in", "written", "pattern",
                                                              "this", "is", "uses", "using", "are", "all",
                                                              "crochet", ":", ".", "(", ")", "-", "*"});
    return has_any_word(tokens, {"us", "uk"}) && has_word(tokens, "terms") &&
           std::all_of(tokens.begin(), tokens.end(),
                       [&](const Token& token) { return is_one_of(token.text, besides); });
}

namespace {

// A line of its own says more than "written in US terms" in a sentence, and that more than a mention; 0:
// none.
int weight_of_terms(Tokens tokens) {
    if (!terms_said(tokens)) return 0;
    if (is_terms_line(tokens)) return 3;
    return has_any_word(tokens, {"written", "uses", "using"}) ? 2 : 1;
}

}  // namespace

FoundTerms find_terms(const std::vector<SourceLine>& lines) {
    TermMarks marks;
    std::optional<Terms> named;
    int named_weight = 0;
    for (const SourceLine& line : lines) {
        if (is_free_text(line.tokens)) continue;
        const int weight = weight_of_terms(line.tokens);
        if (weight > named_weight) named = terms_said(line.tokens);
        named_weight = std::max(named_weight, weight);
        mark(line.tokens, marks);
    }
    FoundTerms found;
    constexpr int most_singles_in_ring = 8;
    if (named) {
        found = {*named, true, false, {}, {}, {}};
    } else if (marks.us > 0 || marks.uk > 0) {
        found = {marks.us >= marks.uk ? Terms::us : Terms::uk, true, false, {}, {}, {}};
    } else if (marks.weak_us != marks.weak_uk) {
        found = {marks.weak_uk > marks.weak_us ? Terms::uk : Terms::us, false, false, {}, {}, {}};
    } else if (marks.only_dc && marks.dc_in_ring > 0) {
        found = {marks.dc_in_ring <= most_singles_in_ring ? Terms::uk : Terms::us, false, true, {}, {}, {}};
    }
    const bool us = found.terms == Terms::us;
    if (us ? marks.uk > 0 : marks.us > 0) {
        found.mixed = us ? marks.first_uk : marks.first_us;
        found.mixed_word = us ? marks.uk_word : marks.us_word;
    }
    return found;
}

}  // namespace roundwright
