#include "core/language/pattern/likeness.h"

#include <algorithm>
#include <array>

#include "core/language/pattern/headings.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

constexpr auto phrases = std::to_array<std::string_view>({"same as",
                                                          "the same as",
                                                          "exactly the same as",
                                                          "exactly as",
                                                          "identical to",
                                                          "work as",
                                                          "worked as",
                                                          "work same as",
                                                          "work the same as",
                                                          "work like",
                                                          "worked like",
                                                          "make as",
                                                          "made as",
                                                          "make like",
                                                          "made like",
                                                          "make the same as",
                                                          "make same as",
                                                          "as for",
                                                          "follow as for",
                                                          "repeat as for",
                                                          "same way as",
                                                          "in the same way as",
                                                          "work in the same way as",
                                                          "crochet as",
                                                          "crochet like"});
constexpr auto before_name = std::to_array<std::string_view>({"for", "the", "your", "with", "on", "in"});
constexpr auto before_round = std::to_array<std::string_view>(
    {"to", "until", "till", "through", "up", "and", "including", "incl", "end", "of", "the"});

// The first phrase in the tokens: where it begins and how long it is.
struct Phrase {
    std::size_t at = 0;
    std::size_t length = 0;
};
std::optional<Phrase> find_phrase(Tokens tokens) {
    for (std::size_t at = 0; at < tokens.size(); ++at)
        if (const int length = match_any(tokens.subspan(at), phrases); length > 0)
            return Phrase{at, static_cast<std::size_t>(length)};
    return std::nullopt;
}

bool is_stop(const Token& token) {
    return token.is(".") || token.is("!") || token.is(":") || token.is("-") || token.is(",");
}

Tokens trimmed(Tokens tokens) {
    while (!tokens.empty() && is_stop(tokens.back())) tokens = tokens.first(tokens.size() - 1);
    return tokens;
}

// "to Rnd 8", "up to and including round 8": takes it off the end. False when the end says something else.
bool take_last_round(Tokens& tokens, int& round) {
    for (std::size_t at = 1; at < tokens.size(); ++at) {
        if (!is_one_of(tokens[at].text, std::span(before_round).first(5))) continue;
        std::size_t next = at;
        while (next < tokens.size() && is_one_of(tokens[next].text, before_round)) ++next;
        if (next + 2 != tokens.size() || !is_round_word(tokens[next].text)) return false;
        if (tokens[next + 1].kind != TokenKind::number || tokens[next + 1].number < 1) return false;
        round = tokens[next + 1].number;
        tokens = tokens.first(at);
        return true;
    }
    return true;
}

// ", do not fasten off": what is said of the end changes no round.
Tokens without_end(Tokens tokens) {
    static constexpr auto ends = std::to_array<std::string_view>(
        {"do not fasten off", "don't fasten off", "fasten off", "do not cut the yarn", "don't cut the yarn"});
    for (std::size_t at = 1; at < tokens.size(); ++at) {
        const int length = match_any(tokens.subspan(at), ends);
        if (length == 0 || at + static_cast<std::size_t>(length) != tokens.size()) continue;
        tokens = trimmed(tokens.first(at));
        if (tokens.back().is("but") || tokens.back().is("and"))
            tokens = trimmed(tokens.first(tokens.size() - 1));
        return tokens;
    }
    return tokens;
}

bool could_be_a_name(Tokens tokens) {
    constexpr std::size_t most_words = 5;
    if (tokens.empty() || tokens.size() > most_words) return false;
    return std::all_of(tokens.begin(), tokens.end(), [](const Token& token) {
        return token.kind != TokenKind::mark && !is_round_word(token.text) && !token.is("but");
    });
}

// "Work rounds 1-3 [as for the body]": the last of them; 0: something else stands there.
int rounds_from_first(Tokens tokens) {
    static constexpr auto lead =
        std::to_array<std::string_view>({"work", "make", "follow", "repeat", "crochet", "do", "the", "rep"});
    while (!tokens.empty() && is_one_of(tokens[0].text, lead)) tokens = tokens.subspan(1);
    if (tokens.size() < 2 || !is_round_word(tokens[0].text) || tokens[1].kind != TokenKind::number) return 0;
    if (tokens[1].number != 1) return 0;
    if (tokens.size() == 2) return 1;
    std::size_t at = 3;
    if (at < tokens.size() && is_round_word(tokens[at].text)) ++at;
    const bool joint = tokens[2].is("-") || tokens[2].is("to") || tokens[2].is("through") ||
                       tokens[2].is("and") || tokens[2].is("until") || tokens[2].is("till");
    return joint && at + 1 == tokens.size() && tokens[at].kind == TokenKind::number ? tokens[at].number : 0;
}

bool heads_a_piece(Tokens tokens) {
    if (tokens.empty()) return true;
    if (!is_stop(tokens.back()) && !is_closer(tokens.back())) return false;
    const auto heading = heading_of(trimmed(tokens));
    return heading && heading->section == Section::none && !heading->name.empty();
}

std::string singular(std::string word) {
    if (word == "feet") return "foot";
    if (word.size() > 3 && word.ends_with("s") && !word.ends_with("ss")) word.pop_back();
    return word;
}

bool holds_all(const NameWords& words, const NameWords& wanted) {
    return std::all_of(wanted.begin(), wanted.end(), [&](const std::string& word) {
        return std::find(words.begin(), words.end(), word) != words.end();
    });
}

}  // namespace

NameWords name_words(std::string_view name) {
    const LexedText text(name);
    NameWords words;
    for (const Token& token : text.lines().front().tokens)
        if (token.kind != TokenKind::mark && !token.is("the"))
            words.push_back(singular(std::string(token.text)));
    return words;
}

std::optional<Likeness> likeness_of(Tokens tokens) {
    constexpr std::size_t longest = 40;
    if (tokens.size() > longest || !has_any_word(tokens, {"as", "like", "identical"})) return std::nullopt;
    const auto phrase = find_phrase(tokens);
    if (!phrase) return std::nullopt;
    const int to = rounds_from_first(tokens.first(phrase->at));
    if (to == 0 && !heads_a_piece(tokens.first(phrase->at))) return std::nullopt;
    Tokens name = without_end(trimmed(tokens.subspan(phrase->at + phrase->length)));
    Likeness like;
    like.last_round = to;
    if (to == 0 && !take_last_round(name, like.last_round)) return std::nullopt;
    while (!name.empty() && is_one_of(name[0].text, before_name)) name = name.subspan(1);
    if (!could_be_a_name(name)) return std::nullopt;
    if (to == 0) like.heading = trimmed(tokens.first(phrase->at));
    like.other = said(name);
    like.where = tokens[phrase->at].where;
    return like;
}

bool says_as_above(Tokens tokens) {
    static constexpr auto ways = std::to_array<std::string_view>({"as above",
                                                                  "same as above",
                                                                  "the same as above",
                                                                  "work as above",
                                                                  "make as above",
                                                                  "see above",
                                                                  "exactly as above",
                                                                  "same as the first",
                                                                  "same as the first one",
                                                                  "as the first one",
                                                                  "same as first",
                                                                  "as the first",
                                                                  "like the first one",
                                                                  "like the first",
                                                                  "same as before",
                                                                  "same again",
                                                                  "the same again",
                                                                  "make another one the same",
                                                                  "make another the same",
                                                                  "make one more the same",
                                                                  "make another one",
                                                                  "make another",
                                                                  "ditto",
                                                                  "repeat as above"});
    tokens = trimmed(tokens);
    return !tokens.empty() && match_any(tokens, ways) == static_cast<int>(tokens.size());
}

std::string piece_meant(Tokens tokens) {
    static constexpr auto lead = std::to_array<std::string_view>(
        {"work", "worked", "make", "do", "the", "exactly", "same", "as", "like", "for", "see", "follow", "in",
         "on", "of", "your", "repeat", "rep"});
    constexpr std::size_t longest = 12;
    if (tokens.size() > longest || !has_any_word(tokens, {"as", "like", "see", "same", "follow"})) return {};
    while (!tokens.empty() && is_one_of(tokens[0].text, lead)) tokens = tokens.subspan(1);
    tokens = trimmed(tokens);
    return could_be_a_name(tokens) ? said(tokens) : std::string();
}

bool mentions_likeness(Tokens tokens, std::span<const NameWords> pieces) {
    constexpr std::size_t longest = 200;
    tokens = tokens.first(std::min(tokens.size(), longest));
    if (!has_any_word(tokens, {"as", "like", "identical"})) return false;
    const auto phrase = find_phrase(tokens);
    if (!phrase) return false;
    const NameWords after = name_words(said(tokens.subspan(phrase->at + phrase->length)));
    return std::any_of(pieces.begin(), pieces.end(),
                       [&](const NameWords& name) { return !name.empty() && holds_all(after, name); });
}

int piece_called(std::string_view name, std::span<const NameWords> pieces) {
    const NameWords wanted = name_words(name);
    if (wanted.empty()) return -1;
    int found = -1;
    int holding = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i] == wanted) return static_cast<int>(i);
        if (!holds_all(pieces[i], wanted)) continue;
        found = static_cast<int>(i);
        ++holding;
    }
    return holding == 1 ? found : -1;
}

}  // namespace roundwright
