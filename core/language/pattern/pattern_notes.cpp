#include "core/language/pattern/pattern_notes.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "core/base/units.h"
#include "core/language/round/token_cursor.h"
#include "core/language/words/in_language.h"
#include "core/toy/firmness.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

bool has_words(Tokens tokens, std::string_view words) {
    for (std::size_t i = 0; i < tokens.size(); ++i)
        if (match_words(tokens.subspan(i), words) > 0) return true;
    return false;
}

std::optional<double> stretch_of(Tokens tokens) {
    if (!has_any_word(tokens, {"stuff", "stuffed", "stuffing", "unstuffed", "fill"})) return std::nullopt;
    if (has_word(tokens, "unstuffed") || has_words(tokens, "do not stuff") ||
        has_words(tokens, "not stuffed") || has_words(tokens, "don't stuff") ||
        has_words(tokens, "no stuffing"))
        return unstuffed_stretch;
    if (has_any_word(tokens, {"lightly", "light", "loosely"})) return light_stuffing_stretch;
    if (has_any_word(tokens, {"firmly", "firm", "tightly", "well"})) return firm_stuffing_stretch;
    return medium_stuffing_stretch;
}

/// "Stuff rounds 1 to 20 only", "stuff only Rnds 3-8"
std::optional<RoundSpan> stuffed_rounds_of(Tokens tokens) {
    if (!has_any_word(tokens, {"stuff", "stuffed", "fill"}) || !has_word(tokens, "only")) return std::nullopt;
    for (std::size_t i = 0; i + 3 < tokens.size(); ++i) {
        const bool range = is_round_word(tokens[i].text) && tokens[i + 1].kind == TokenKind::number &&
                           (tokens[i + 2].is("to") || tokens[i + 2].is("-")) &&
                           tokens[i + 3].kind == TokenKind::number;
        if (range && tokens[i + 1].number >= 1 && tokens[i + 1].number <= tokens[i + 3].number)
            return RoundSpan{tokens[i + 1].number - 1, tokens[i + 3].number - 1};
    }
    return std::nullopt;
}

/// "Flatten and sew straight across through both layers", "fold flat and whipstitch the opening shut": what
/// is only flattened, or only sewn to something else, is not this.
bool says_sewn_straight(Tokens tokens) {
    const bool sewn = has_any_word(tokens, {"sew", "sewn", "sewing", "whipstitch", "stitch"});
    if (!sewn) return false;
    if (has_words(tokens, "sew straight across") || has_words(tokens, "sewn straight across")) return true;
    const bool flat = has_any_word(tokens, {"flatten", "flattened", "flattening", "flat"});
    const bool across = has_any_word(tokens, {"across", "straight", "shut", "closed"}) ||
                        has_words(tokens, "both layers") || has_words(tokens, "both thicknesses") ||
                        has_words(tokens, "both sides");
    return flat && across;
}

// "Stuff." alone says how firmly, "stuff before sewing on" does not.
bool says_how_firmly(Tokens tokens, double stretch) {
    return stretch != medium_stuffing_stretch || tokens.size() == 1 ||
           (tokens.size() == 2 && tokens[1].is("."));
}

std::optional<End> end_of(Tokens tokens) {
    if (says_sewn_straight(tokens)) return End::sewn_straight;
    if (has_words(tokens, "do not close") || has_words(tokens, "leave open") ||
        has_words(tokens, "left open") ||
        (has_any_word(tokens, {"leave", "leaving"}) && has_word(tokens, "open")) ||
        has_words(tokens, "long tail to sew with") || has_words(tokens, "long tail for sewing") ||
        has_words(tokens, "sew the opening shut") || has_words(tokens, "fasten off and weave the end in") ||
        has_words(tokens, "fasten off and weave in the end"))
        return End::left_open;
    const bool hole = has_any_word(tokens, {"hole", "opening", "round", "rnd", "end", "top", "ring", "up"});
    if (has_words(tokens, "draw closed") || has_words(tokens, "pull closed") ||
        has_words(tokens, "pull tight") || has_words(tokens, "cinch closed") ||
        has_words(tokens, "pull tight to close") || has_words(tokens, "cinch"))
        return End::drawn_closed;
    if (has_any_word(tokens, {"draw", "drawn", "close", "gather"}) && hole &&
        has_any_word(tokens, {"closed", "close", "shut"}))
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
    if (has_word(tokens, "spiral") || has_words(tokens, "continuous rounds") ||
        has_words(tokens, "do not join"))
        return Joining::spiral;
    return std::nullopt;
}

double number_of(const Token& token) {
    double value = 0;
    const auto [end, error] =
        std::from_chars(token.text.data(), token.text.data() + token.text.size(), value);
    return error == std::errc{} && end == token.text.data() + token.text.size() ? value : 0;
}

/// "Sew 40 g of plastic pellets into a small bag", "add 1.5 oz of poly pellets"
std::optional<double> weight_of(Tokens tokens) {
    constexpr double grams_an_ounce = 28.349523125;
    constexpr double most_grams = 100'000;
    if (!has_any_word(tokens, {"pellets", "pellet"})) return std::nullopt;
    for (std::size_t i = 1; i < tokens.size(); ++i) {
        const bool ounces = tokens[i].is("oz") || tokens[i].is("ounces") || tokens[i].is("ounce");
        if (!ounces && !tokens[i].is("g") && !tokens[i].is("grams") && !tokens[i].is("gram")) continue;
        const double grams = number_of(tokens[i - 1]) * (ounces ? grams_an_ounce : 1);
        if (grams > 0 && grams <= most_grams) return grams;
    }
    return std::nullopt;
}

// A full stop ends a sentence where a capital letter follows, not in "approx. 9 mm". A token stands after it.
bool ends_sentence(Tokens tokens, std::size_t at) {
    if (!tokens[at].is(".")) return false;
    const char next = tokens[at + 1].raw[0];
    return next >= 'A' && next <= 'Z';
}

// A yarn's letter or number: 0 for "A", "MC" and "1"; -1: it is none.
int yarn_index(const Token& token) {
    constexpr int most = 1'000;
    const bool letter = token.kind == TokenKind::word && token.text.size() == 1 && token.text[0] >= 'a' &&
                        token.text[0] <= 'z';
    if (letter) return token.text[0] - 'a';
    const bool number = token.kind == TokenKind::number && token.number >= 1 && token.number <= most;
    return number ? token.number - 1 : -1;
}

bool is_colour_word(const Token& token) {
    return token.is("yarn") || token.is("color") || token.is("colour");
}

// "3,5": the number that ends at `at`.
double with_decimal_comma(Tokens tokens, std::size_t at) {
    const double last = number_of(tokens[at]);
    const bool comma = at >= 2 && tokens[at - 1].is(",") && !tokens[at].spaced && !tokens[at - 1].spaced &&
                       tokens[at].kind == TokenKind::number && tokens[at - 2].kind == TokenKind::number;
    if (!comma) return last;
    const double part = tokens[at].raw.size() == 1 ? 0.1 : tokens[at].raw.size() == 2 ? 0.01 : 0;
    return part > 0 ? tokens[at - 2].number + last * part : last;
}

// A measure in mm that stands in the tokens; 0 when none does.
double millimetres(Tokens tokens) {
    for (std::size_t i = 1; i < tokens.size(); ++i)
        if (tokens[i].is("mm") && number_of(tokens[i - 1]) > 0) return with_decimal_comma(tokens, i - 1);
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

// "8 sts apart", "8 stitches between them"; "2 eyes between rounds 5 and 6" says nothing of stitches.
std::optional<int> stitches_between(Tokens tokens) {
    std::optional<int> stitches;
    for (std::size_t i = 1; i < tokens.size(); ++i) {
        const bool unit = tokens[i - 1].is("sts") || tokens[i - 1].is("stitches") || tokens[i - 1].is("st") ||
                          tokens[i - 1].is("stitch");
        if (!tokens[i].is("apart") && !(tokens[i].is("between") && unit)) continue;
        for (std::size_t back = 1; back <= std::min<std::size_t>(i, 2); ++back)
            if (tokens[i - back].kind == TokenKind::number && tokens[i - back].number <= 1'000)
                stitches = tokens[i - back].number;
    }
    return stitches;
}

std::optional<Feature> eyes_of(Tokens tokens) {
    const int round = has_any_word(tokens, {"eye", "eyes"}) ? gap_after(tokens) : 0;
    if (round == 0) return std::nullopt;
    Feature eyes;
    eyes.round = round - 1;
    eyes.stitches_apart = stitches_between(tokens).value_or(eyes.stitches_apart);
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

}  // namespace

NoteMeaning meaning_of_note(Tokens tokens) {
    NoteMeaning meaning;
    meaning.weight_grams = weight_of(tokens);
    // Pellets lie below the stuffing: how firm that is stands elsewhere.
    if (!meaning.weight_grams) meaning.area_stretch = stretch_of(tokens);
    meaning.stuffed_rounds = stuffed_rounds_of(tokens);
    meaning.any_stuffing =
        meaning.area_stretch && !meaning.stuffed_rounds && !says_how_firmly(tokens, *meaning.area_stretch);
    meaning.end = end_of(tokens);
    meaning.joining = joining_of(tokens);
    meaning.top_down = has_words(tokens, "top down") || has_words(tokens, "from the top");
    meaning.eyes = eyes_of(tokens);
    return meaning;
}

std::vector<NoteMeaning> meanings_of_notes(Tokens tokens) {
    std::vector<NoteMeaning> meanings;
    std::size_t from = 0;
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        if (at + 1 < tokens.size() && !ends_sentence(tokens, at)) continue;
        const NoteMeaning meaning = meaning_of_note(tokens.subspan(from, at + 1 - from));
        if (meaning.anything()) meanings.push_back(meaning);
        from = at + 1;
    }
    return meanings;
}

std::optional<YarnLine> yarn_line(Tokens tokens) {
    std::size_t at = 0;
    const bool called = at < tokens.size() && is_colour_word(tokens[at]);
    if (called) ++at;
    if (tokens.size() < at + 3) return std::nullopt;
    YarnLine line;
    const Token& letter = tokens[at];
    if (letter.is("mc") || letter.is("cc"))
        line.yarn = letter.is("mc") ? 0 : 1;
    else
        line.yarn = called ? yarn_index(letter) : -1;
    if (line.yarn < 0) return std::nullopt;
    if (!(tokens[at + 1].is(":") || tokens[at + 1].is("=") || tokens[at + 1].is("-"))) return std::nullopt;
    const Tokens name = tokens.subspan(at + 2);
    line.name = said(name.first(static_cast<std::size_t>(
        std::find_if(name.begin(), name.end(), [](const Token& t) { return t.is(";"); }) - name.begin())));
    return line;
}

std::optional<YarnLine> listed_yarn(Tokens tokens) {
    if (auto named = yarn_line(tokens)) return named;
    if (tokens.size() < 3 || tokens[0].kind != TokenKind::word || !tokens[1].is(":")) return std::nullopt;
    const char letter = tokens[0].raw[0];
    const bool capital = tokens[0].raw.size() == 1 && letter >= 'A' && letter <= 'Z';
    if (!capital) return std::nullopt;
    std::size_t end = 2;
    while (end < tokens.size() && !tokens[end].is(",")) ++end;
    return YarnLine{letter - 'A', said(tokens.subspan(2, end - 2))};
}

std::vector<YarnLine> lettered_yarns(Tokens tokens) {
    std::vector<YarnLine> yarns;
    for (std::size_t at = 1; at + 2 < tokens.size(); ++at) {
        const std::string_view letter = tokens[at + 1].raw;
        const bool lettered = tokens[at].is("(") && tokens[at + 2].is(")") && letter.size() == 1 &&
                              letter[0] >= 'A' && letter[0] <= 'Z';
        if (!lettered) continue;
        std::size_t from = at;
        while (from > 0 && tokens[from - 1].kind == TokenKind::word && !tokens[from - 1].is("and")) --from;
        if (from < at) yarns.push_back({letter[0] - 'A', said(tokens.subspan(from, at - from))});
    }
    return yarns;
}

std::optional<SwatchGauge> gauge_line(Tokens tokens) {
    if (tokens.empty() ||
        !has_any_word(tokens.first(std::min<std::size_t>(3, tokens.size())), {"gauge", "tension", "swatch"}))
        return std::nullopt;
    SwatchGauge gauge;
    double width = 0;
    for (std::size_t at = 1; at < tokens.size(); ++at) {
        const double number = number_of(tokens[at]) > 0 ? with_decimal_comma(tokens, at) : 0;
        if (number <= 0 || at + 1 >= tokens.size()) continue;
        const Token& unit = tokens[at + 1];
        const bool stitches = is_noun(unit.text) || match_name(tokens.subspan(at + 1), Terms::us) ||
                              match_name(tokens.subspan(at + 1), Terms::uk);
        if (is_round_word(unit.text) && gauge.rounds == 0)
            gauge.rounds = number;
        else if (stitches && gauge.stitches == 0)
            gauge.stitches = number;
        else if (width == 0 && (unit.is("cm") || unit.is("mm") || unit.is("in") || unit.is("inch") ||
                                unit.is("inches") || unit.is("\"")))
            width = number * (unit.is("cm") ? 10 : unit.is("mm") ? 1 : mm_per_inch);
    }
    constexpr double most = 1'000;
    const bool sound = gauge.stitches > 0 && gauge.rounds > 0 && width >= 5 && width <= most &&
                       gauge.stitches <= most && gauge.rounds <= most;
    if (!sound) return std::nullopt;
    gauge.width_mm = gauge.height_mm = width;
    gauge.worked_in_rows = has_any_word(tokens, {"row", "rows"});
    return gauge;
}

std::optional<YarnLine> yarn_change(Tokens tokens) {
    constexpr std::size_t letter = 3;
    if (tokens.size() <= letter || !(tokens[0].is("change") || tokens[0].is("switch")) ||
        !tokens[1].is("to") || !is_colour_word(tokens[2]))
        return std::nullopt;
    const Tokens rest = tokens.subspan(letter + 1);
    const bool ends = rest.empty() || rest[0].is(".");
    if (yarn_index(tokens[letter]) < 0 || !(ends || rest[0].is(","))) return std::nullopt;
    YarnLine change{yarn_index(tokens[letter]), {}};
    if (ends) return change;
    const std::size_t stop = rest.back().is(".") ? 1 : 0;
    change.name = said(rest.subspan(1, rest.size() - 1 - stop));
    return change;
}

std::optional<double> hook_within(Tokens tokens) {
    std::size_t from = 0;
    for (std::size_t at = 0; at <= tokens.size(); ++at) {
        const bool stop = at == tokens.size() || tokens[at].is(";") || tokens[at].is("/") ||
                          (tokens[at].is(",") && at + 1 < tokens.size() && tokens[at + 1].spaced);
        if (!stop) continue;
        const Tokens clause = tokens.subspan(from, at - from);
        const double size = has_word(clause, "hook") ? millimetres(clause) : 0;
        if (size >= 0.5 && size <= 25) return size;
        from = at + 1;
    }
    return std::nullopt;
}

std::optional<double> hook_line(Tokens tokens) {
    if (tokens.size() < 3 || !has_word(tokens.first(std::min<std::size_t>(3, tokens.size())), "hook"))
        return std::nullopt;
    const double size = millimetres(tokens);
    if (size < 0.5 || size > 25) return std::nullopt;
    return size;
}

std::string joining_words(Joining joining, Terms terms) {
    if (!is_english(terms)) return said_in(joining_words(joining, Terms::us), terms);
    const std::string sl(abbreviation(StitchKind::slip_stitch, terms));
    const std::string ch(abbreviation(StitchKind::chain, terms));
    switch (joining) {
        case Joining::joined:
            return "Worked in joined rounds: join each with " + sl + ", then " + ch + " 1 (does not count).";
        case Joining::rows:
            return "Worked in rows: " + ch + " 1 (does not count) and turn at the end of each.";
        case Joining::spiral:
            break;
    }
    return "";
}

std::string stuffing_words(double stretch, const std::optional<RoundSpan>& rounds) {
    if (rounds) {
        const Firmness firmness = firmness_of(stretch);
        const char* how = firmness == Firmness::light  ? ", lightly."
                          : firmness == Firmness::firm ? ", firmly."
                                                       : ".";
        return "Stuff rounds " + std::to_string(rounds->first + 1) + " to " +
               std::to_string(rounds->last + 1) + " only" + how;
    }
    switch (firmness_of(stretch)) {
        case Firmness::none:
            return "Do not stuff.";
        case Firmness::light:
            return "Stuff lightly.";
        case Firmness::medium:
            return "Stuff.";
        case Firmness::firm:
            return "Stuff firmly.";
    }
    return "";
}

std::string pellets_words(double grams) {
    return "Sew " + number(grams) +
           " g of plastic pellets into a small bag of closely woven fabric, and lay it at the lowest point "
           "before the stuffing.";
}

std::string eyes_words(const Feature& eyes) {
    return "Place " + number(eyes.width_mm) + " mm safety eyes between Rnds " +
           std::to_string(eyes.round + 1) + " and " + std::to_string(eyes.round + 2) + ", with " +
           std::to_string(eyes.stitches_apart) + " sts between them.";
}

std::string end_words(End end) {
    switch (end) {
        case End::drawn_closed:
            return "Fasten off and draw the last round closed.";
        case End::left_open:
            return "Fasten off, leaving the end open.";
        case End::sewn_straight:
            return "Fasten off, flatten the last round and sew straight across it through both layers.";
    }
    return "";
}

std::string top_down_words() { return "Worked from the top down."; }

std::string hook_words(double hook_mm) { return "Hook: " + number(hook_mm) + " mm"; }

bool says_only(const NoteMeaning& meaning, std::string_view line, Terms terms) {
    const auto is = [&](std::string_view english) { return line == said_in(english, terms); };
    return (meaning.area_stretch && is(stuffing_words(*meaning.area_stretch, meaning.stuffed_rounds))) ||
           (meaning.weight_grams && is(pellets_words(*meaning.weight_grams))) ||
           (meaning.end && is(end_words(*meaning.end))) ||
           (meaning.joining && line == joining_words(*meaning.joining, terms)) ||
           (meaning.joining == Joining::spiral && is(spiral_words)) ||
           (meaning.top_down && is(top_down_words())) || (meaning.eyes && is(eyes_words(*meaning.eyes)));
}

}  // namespace roundwright
