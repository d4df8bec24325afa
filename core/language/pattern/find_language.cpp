#include "core/language/pattern/find_language.h"

#include <algorithm>
#include <array>
#include <bitset>
#include <cstdint>
#include <string>
#include <unordered_map>
#include <utility>

#include "core/language/pattern/headings.h"
#include "core/language/round/token_cursor.h"
#include "core/language/words/letters.h"
#include "core/language/words/phrasebook.h"
#include "core/language/words/vocabulary.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

constexpr std::size_t languages = all_terms.size();

/// A bit for each of `all_terms`.
using Whose = std::bitset<languages>;

struct KnownWord {
    Whose terms;     ///< in whose phrases it stands
    Whose stitches;  ///< whose stitch it names by itself
};
using Words = std::unordered_map<std::string_view, KnownWord>;

std::size_t bit(Terms terms) { return static_cast<std::size_t>(terms); }

// Words of English patterns besides those of the rounds.
constexpr auto english_words = std::to_array<std::string_view>({"a",        "is",
                                                                "it",       "this",
                                                                "for",      "on",
                                                                "at",       "you",
                                                                "your",     "piece",
                                                                "sew",      "stuff",
                                                                "head",     "body",
                                                                "note",     "designed",
                                                                "by",       "terms",
                                                                "arms",     "legs",
                                                                "ears",     "eyes",
                                                                "tail",     "safety",
                                                                "pattern",  "materials",
                                                                "assembly", "firmly",
                                                                "lightly",  "worked",
                                                                "rd",       "rds",
                                                                "ch",       "leaving",
                                                                "draw",     "closed",
                                                                "open",     "abbreviations",
                                                                "gauge",    "stuffing",
                                                                "place",    "between",
                                                                "sew",      "them",
                                                                "count",    "mr",
                                                                "using",    "finish",
                                                                "close",    "needle"});

constexpr auto english_stitches =
    std::to_array<std::string_view>({"sc", "hdc", "htr", "dtr", "dc", "inc", "dec", "invdec"});

void add_language(Words& words, Terms terms) {
    for (const PhrasePair& pair : Phrasebook::of(terms).pairs()) {
        const bool alone = pair.kind != PhraseKind::words && pair.said.size() == 1;
        for (const PhrasePart& part : pair.said) {
            if (part.kind != PhrasePart::Kind::word || (part.text.size() < 2 && !alone)) continue;
            words[part.text].terms.set(bit(terms));
            if (alone) words[part.text].stitches.set(bit(terms));
        }
    }
}

void add_english(Words& words) {
    const auto add = [&](std::string_view word) {
        if (word.size() < 2) return;
        words[word].terms.set(bit(Terms::us));
    };
    for (const Terms terms : {Terms::us, Terms::uk})
        for (const std::string_view word : known_words(terms)) add(word);
    for (const std::string_view word : english_words) add(word);
    for (const std::string_view word : english_stitches) words[word].stitches.set(bit(Terms::us));
}

const Words& all_words() {
    static const Words made = [] {
        Words words;
        for (const Terms terms : all_terms)
            if (!is_english(terms)) add_language(words, terms);
        add_english(words);
        return words;
    }();
    return made;
}

struct Scores {
    std::array<int, languages> words{};
    std::array<int, languages> stitches{};
    std::optional<Terms> named;
};

// A letter is a word where a number stands before it: "6 v".
const KnownWord* known(Tokens tokens, std::size_t at, std::string& room) {
    const Token& token = tokens[at];
    if (token.kind != TokenKind::word) return nullptr;
    if (token.text.size() < 2 && (at == 0 || tokens[at - 1].kind != TokenKind::number)) return nullptr;
    const auto found = all_words().find(plain_letters(token.text, room));
    return found == all_words().end() ? nullptr : &found->second;
}

void count(Tokens tokens, Scores& scores) {
    std::string room;
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        const KnownWord* word = known(tokens, at, room);
        if (word == nullptr) continue;
        // A letter may be a code of the maker's own, and says nothing by itself.
        const bool is_letter = tokens[at].text.size() < 2;
        for (std::size_t i = 0; i < languages; ++i) {
            scores.words.at(i) += word->terms[i] ? 1 : 0;
            scores.stitches.at(i) += word->stitches[i] && !is_letter ? 1 : 0;
        }
    }
}

int total(const Scores& scores, std::size_t i) { return scores.words.at(i) + 2 * scores.stitches.at(i); }

/// The languages with the most and the next most, by their place in `all_terms`.
std::pair<std::size_t, std::size_t> first_two(const Scores& scores) {
    std::size_t best = 0;
    std::size_t second = 0;
    for (std::size_t i = 1; i < languages; ++i) {
        if (total(scores, i) > total(scores, best)) {
            second = best;
            best = i;
        } else if (total(scores, i) > total(scores, second) || second == best) {
            second = i;
        }
    }
    return {best, second};
}

// What hundreds of lines have said, others do not unsay.
bool is_surely_english(const Scores& scores) {
    constexpr int lead = 1'000;
    const auto [best, second] = first_two(scores);
    return best == 0 && !scores.named && total(scores, best) > total(scores, second) + lead;
}

// "This pattern is in German terms."
std::optional<Terms> named_in_english(Tokens tokens) {
    constexpr std::array<std::string_view, languages> names{
        "", "", "german", "french", "spanish", "dutch", "danish", "portuguese", "italian"};
    for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
        if (!tokens[i + 1].is("terms")) continue;
        const auto* name = std::find(names.begin(), names.end(), tokens[i].text);
        if (name != names.end()) return all_terms.at(static_cast<std::size_t>(name - names.begin()));
    }
    return std::nullopt;
}

// "Deutsche Häkelbegriffe": a line of its own that says it.
std::optional<Terms> named_by(Tokens tokens) {
    constexpr std::size_t most = 6;
    if (tokens.size() < 2 || tokens.size() > most) return std::nullopt;
    for (const Terms terms : all_terms) {
        if (is_english(terms)) continue;
        const auto found = Phrasebook::of(terms).find_said(tokens);
        if (found && found->length + 1 >= tokens.size() &&
            found->pair->said_text == language_of(terms).names_itself)
            return terms;
    }
    return std::nullopt;
}

}  // namespace

std::optional<FoundTerms> find_language(const std::vector<SourceLine>& lines) {
    constexpr std::size_t lines_between_looks = 256;
    Scores scores;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        count(lines[i].tokens, scores);
        if (!scores.named) scores.named = named_by(lines[i].tokens);
        if (!scores.named) scores.named = named_in_english(lines[i].tokens);
        if (i % lines_between_looks == lines_between_looks - 1 && is_surely_english(scores))
            return std::nullopt;
    }
    const auto [best, second] = first_two(scores);
    FoundTerms found;
    found.terms = scores.named.value_or(all_terms.at(best));
    if (is_english(found.terms) || (!scores.named && scores.stitches.at(best) == 0)) return std::nullopt;
    found.sure = scores.named.has_value() || total(scores, best) > total(scores, second);
    return found;
}

// A stitch behind a number that another language names, and this one has in no phrase.
void find_mixed(const std::vector<SourceLine>& lines, FoundTerms& found) {
    std::string room;
    for (const SourceLine& line : lines) {
        if (is_free_text(line.tokens)) continue;
        for (std::size_t i = 1; i < line.tokens.size(); ++i) {
            const Token& token = line.tokens[i];
            if (token.renamed || line.tokens[i - 1].kind != TokenKind::number) continue;
            const KnownWord* word = known(line.tokens, i, room);
            if (word == nullptr || word->terms[bit(found.terms)] || word->stitches.none()) continue;
            found.mixed = token.where;
            found.mixed_word = std::string(token.raw);
            found.mixed_terms = *std::find_if(all_terms.begin(), all_terms.end(),
                                              [&](Terms terms) { return word->stitches[bit(terms)]; });
            return;
        }
    }
}

}  // namespace roundwright
