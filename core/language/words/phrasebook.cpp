#include "core/language/words/phrasebook.h"

#include <algorithm>
#include <array>

#include "core/language/words/letters.h"

namespace roundwright {
namespace {

using Kind = PhrasePart::Kind;

constexpr std::string_view any_number = "#";

// The stitches by their US names, as the reader knows them.
constexpr std::array<std::string_view, 8> english_stitches{"ch", "sl st", "sc",     "hdc",
                                                           "dc", "tr",    "bobble", "sk"};
constexpr std::array<std::string_view, 8> english_full{
    "chain",          "slip stitch",    "single crochet", "half double crochet",
    "double crochet", "treble crochet", "bobble stitch",  "skip"};

PhrasePart part_of(const Token& token) {
    std::string room;
    if (token.is("#")) return {Kind::any_number, 0, {}};
    if (token.is("^")) return {Kind::any_ordinal, 0, {}};
    if (token.is("~")) return {Kind::stitch, 0, {}};
    if (token.kind == TokenKind::number) return {Kind::number, token.number, {}};
    if (token.kind == TokenKind::mark) return {Kind::mark, 0, std::string(token.text)};
    return {Kind::word, 0, std::string(plain_letters(token.text, room))};
}

std::vector<PhrasePart> parts_of(std::string_view phrase) {
    const LexedText text(phrase);
    std::vector<PhrasePart> parts;
    for (const Token& token : text.lines().front().tokens) parts.push_back(part_of(token));
    return parts;
}

std::string_view next_way(std::string_view& said) {
    const std::size_t end = std::min(said.find('|'), said.size());
    const std::string_view way = said.substr(0, end);
    said.remove_prefix(std::min(end + 1, said.size()));
    return way;
}

std::string_view first_of(const PhrasePart& part) {
    return part.kind == Kind::word || part.kind == Kind::mark ? std::string_view(part.text) : any_number;
}

bool is_measure(const Token& token) {
    return token.kind == TokenKind::word && token.text[0] >= '0' && token.text[0] <= '9';
}

bool is_number(const Token& token) { return token.kind == TokenKind::number || is_measure(token); }

bool is_same(const PhrasePart& part, const Token& token, std::string& room) {
    switch (part.kind) {
        case Kind::word:
            return token.kind != TokenKind::mark && plain_letters(token.text, room) == part.text;
        case Kind::mark:
            return token.kind == TokenKind::mark && token.text == part.text;
        case Kind::number:
            return token.kind == TokenKind::number && token.number == part.number;
        case Kind::any_number:
            return is_number(token);
        case Kind::any_ordinal:
            return token.kind == TokenKind::ordinal;
        case Kind::stitch:
            break;
    }
    return false;
}

bool is_joint(const Token& token) { return (token.is(".") || token.is("-")) && !token.spaced; }

}  // namespace

const Language& language_of(Terms terms) {
    switch (terms) {
        case Terms::french:
            return french_terms;
        case Terms::spanish:
            return spanish_terms;
        case Terms::dutch:
            return dutch_terms;
        case Terms::danish:
            return danish_terms;
        case Terms::portuguese:
            return portuguese_terms;
        case Terms::italian:
            return italian_terms;
        case Terms::us:
        case Terms::uk:
        case Terms::german:
            break;
    }
    return german_terms;
}

const Phrasebook& Phrasebook::of(Terms terms) {
    static const std::array<Phrasebook, 7> books{Phrasebook(german_terms),  Phrasebook(french_terms),
                                                 Phrasebook(spanish_terms), Phrasebook(dutch_terms),
                                                 Phrasebook(danish_terms),  Phrasebook(portuguese_terms),
                                                 Phrasebook(italian_terms)};
    const auto index = static_cast<std::size_t>(terms) - static_cast<std::size_t>(Terms::german);
    return books.at(index);
}

Phrasebook::Phrasebook(const Language& language) {
    add_stitches(language);
    add(PhraseKind::words, "pattern terms", language.names_itself, false);
    for (const Phrase& phrase : language.written) {
        const bool name = phrase.english == "inc" || phrase.english == "dec" || phrase.english == "invdec";
        add(name ? PhraseKind::name : PhraseKind::words, phrase.english, phrase.said, true);
    }
    for (const Phrase& phrase : language.heard) add(PhraseKind::words, phrase.english, phrase.said, false);
    for (const PhrasePair& pair : pairs_) {
        said_[first_of(pair.said.front())].push_back(&pair);
        if (pair.written) index_english(pair);
        const bool word = pair.said.size() == 1 && pair.said[0].kind == Kind::word;
        if (word) words_.push_back(pair.said_text);
    }
}

// What begins with a stitch is looked for under each of them.
void Phrasebook::index_english(const PhrasePair& pair) {
    if (pair.english.front().kind != Kind::stitch) {
        english_[first_of(pair.english.front())].push_back(&pair);
        return;
    }
    for (const PhrasePair& stitch : pairs_)
        if (stitch.kind == PhraseKind::stitch && stitch.written)
            english_[first_of(stitch.english.front())].push_back(&pair);
}

void Phrasebook::add_stitches(const Language& language) {
    for (std::size_t i = 0; i < language.terms.size(); ++i) {
        const StitchTerm& term = language.terms.at(i);
        const bool skips = i + 1 == language.terms.size();
        const PhraseKind kind = skips ? PhraseKind::words : PhraseKind::stitch;
        add(kind, english_stitches.at(i), term.abbreviation, true);
        add(kind, english_stitches.at(i), term.full_name, false);
        if (!term.others.empty()) add(kind, english_stitches.at(i), term.others, false);
        add(kind, english_full.at(i), term.full_name, true);
    }
}

void Phrasebook::add(PhraseKind kind, std::string_view english, std::string_view said, bool written) {
    for (bool first = true; !said.empty(); first = false) {
        const std::string_view way = next_way(said);
        pairs_.push_back({kind, parts_of(english), parts_of(way), way, written && first});
    }
}

std::optional<PhraseMatch> Phrasebook::find_said(std::span<const Token> tokens) const {
    return find(tokens, Side::said);
}

std::optional<PhraseMatch> Phrasebook::find_english(std::span<const Token> tokens) const {
    return find(tokens, Side::english);
}

std::optional<PhraseMatch> Phrasebook::find(std::span<const Token> tokens, Side side) const {
    if (tokens.empty()) return std::nullopt;
    std::string room;
    const Token& first = tokens.front();
    const std::string_view key =
        is_number(first) || (first.kind == TokenKind::ordinal && side == Side::english)
            ? any_number
            : plain_letters(first.text, room);
    const Index& index = side == Side::said ? said_ : english_;
    const auto found = index.find(key);
    std::optional<PhraseMatch> best;
    if (found == index.end()) return best;
    for (const PhrasePair* pair : found->second) match(*pair, tokens, side, best);
    return best;
}

// Full points and hyphens of abbreviations do not matter: "f. M.", "zus. abm.".
void Phrasebook::match(const PhrasePair& pair, std::span<const Token> tokens, Side side,
                       std::optional<PhraseMatch>& best) const {
    const std::vector<PhrasePart>& parts = side == Side::said ? pair.said : pair.english;
    if (parts.size() > tokens.size()) return;
    PhraseMatch found{&pair, 0, {}, nullptr};
    std::string room;
    for (const PhrasePart& part : parts) {
        const bool joint = found.length > 0 && found.length < tokens.size() &&
                           is_joint(tokens[found.length]) &&
                           tokens[found.length - 1].kind == TokenKind::word && part.kind != Kind::mark;
        if (joint) ++found.length;
        if (found.length >= tokens.size()) return;
        if (part.kind == Kind::stitch) {
            const std::size_t length = match_stitch(tokens.subspan(found.length), side, found);
            if (length == 0) return;
            found.length += length;
            continue;
        }
        const Token& token = tokens[found.length];
        if (!is_same(part, token, room)) return;
        if (part.kind == Kind::any_number || part.kind == Kind::any_ordinal) found.slots.push_back(&token);
        ++found.length;
    }
    if (!best || found.length > best->length) best = std::move(found);
}

std::size_t Phrasebook::match_stitch(std::span<const Token> tokens, Side side, PhraseMatch& found) const {
    if (is_number(tokens.front())) return 0;
    std::string room;
    const Index& index = side == Side::said ? said_ : english_;
    const auto named = index.find(plain_letters(tokens.front().text, room));
    if (named == index.end()) return 0;
    std::optional<PhraseMatch> best;
    for (const PhrasePair* pair : named->second)
        if (pair->kind == PhraseKind::stitch) match(*pair, tokens, side, best);
    if (!best) return 0;
    found.stitch = best->pair;
    return best->length;
}

}  // namespace roundwright
