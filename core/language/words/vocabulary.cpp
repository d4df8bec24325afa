#include "core/language/words/vocabulary.h"

#include <algorithm>
#include <array>
#include <unordered_set>

#include "core/base/slips.h"
#include "core/language/words/phrasebook.h"

namespace roundwright {
namespace {

enum class Whose : std::uint8_t { both, us, uk };

struct Entry {
    std::string_view words;
    Whose whose;
    NameKind what;
    StitchKind stitch;
    bool of_its_own = true;
};

using enum StitchKind;
using enum NameKind;

// Source: Craft Yarn Council, table of US and UK terms. A plural is matched with its singular.
constexpr std::array entries{
    Entry{"sc", Whose::us, stitch, single_crochet},
    Entry{"single crochet", Whose::us, stitch, single_crochet},
    Entry{"hdc", Whose::us, stitch, half_double_crochet},
    Entry{"half double crochet", Whose::us, stitch, half_double_crochet},
    Entry{"half double", Whose::us, stitch, half_double_crochet},
    Entry{"half dc", Whose::us, stitch, half_double_crochet},
    Entry{"dc", Whose::us, stitch, double_crochet},
    Entry{"double crochet", Whose::us, stitch, double_crochet},
    Entry{"tr", Whose::us, stitch, treble_crochet},
    Entry{"trc", Whose::us, stitch, treble_crochet},
    Entry{"treble crochet", Whose::us, stitch, treble_crochet},
    Entry{"treble", Whose::us, stitch, treble_crochet},
    Entry{"triple crochet", Whose::us, stitch, treble_crochet},

    Entry{"dc", Whose::uk, stitch, single_crochet},
    Entry{"double crochet", Whose::uk, stitch, single_crochet},
    Entry{"htr", Whose::uk, stitch, half_double_crochet},
    Entry{"half treble crochet", Whose::uk, stitch, half_double_crochet},
    Entry{"half treble", Whose::uk, stitch, half_double_crochet},
    Entry{"tr", Whose::uk, stitch, double_crochet},
    Entry{"treble crochet", Whose::uk, stitch, double_crochet},
    Entry{"treble", Whose::uk, stitch, double_crochet},
    Entry{"dtr", Whose::uk, stitch, treble_crochet},
    Entry{"double treble crochet", Whose::uk, stitch, treble_crochet},
    Entry{"double treble", Whose::uk, stitch, treble_crochet},

    // Worked in another way or around the post below, and counted like the plain stitch (common practice).
    Entry{"esc", Whose::us, stitch, single_crochet, false},
    Entry{"exsc", Whose::us, stitch, single_crochet, false},
    Entry{"xsc", Whose::us, stitch, single_crochet, false},
    Entry{"extended sc", Whose::us, stitch, single_crochet, false},
    Entry{"extended single crochet", Whose::us, stitch, single_crochet, false},
    Entry{"exdc", Whose::uk, stitch, single_crochet, false},
    Entry{"waistcoat stitch", Whose::both, stitch, single_crochet, false},
    Entry{"waistcoat st", Whose::both, stitch, single_crochet, false},
    Entry{"split sc", Whose::us, stitch, single_crochet, false},
    Entry{"reverse sc", Whose::us, stitch, single_crochet, false},
    Entry{"rev sc", Whose::us, stitch, single_crochet, false},
    Entry{"rsc", Whose::us, stitch, single_crochet, false},
    Entry{"reverse single crochet", Whose::us, stitch, single_crochet, false},
    Entry{"reverse dc", Whose::uk, stitch, single_crochet, false},
    Entry{"reverse double crochet", Whose::uk, stitch, single_crochet, false},
    Entry{"crab stitch", Whose::both, stitch, single_crochet, false},
    Entry{"crab st", Whose::both, stitch, single_crochet, false},
    Entry{"fpsc", Whose::us, stitch, single_crochet, false},
    Entry{"bpsc", Whose::us, stitch, single_crochet, false},
    Entry{"fphdc", Whose::us, stitch, half_double_crochet, false},
    Entry{"bphdc", Whose::us, stitch, half_double_crochet, false},
    Entry{"fpdc", Whose::us, stitch, double_crochet, false},
    Entry{"bpdc", Whose::us, stitch, double_crochet, false},
    Entry{"fptr", Whose::us, stitch, treble_crochet, false},
    Entry{"front post sc", Whose::us, stitch, single_crochet, false},
    Entry{"back post sc", Whose::us, stitch, single_crochet, false},
    Entry{"front post dc", Whose::us, stitch, double_crochet, false},
    Entry{"back post dc", Whose::us, stitch, double_crochet, false},
    Entry{"front post single crochet", Whose::us, stitch, single_crochet, false},
    Entry{"back post single crochet", Whose::us, stitch, single_crochet, false},
    Entry{"front post double crochet", Whose::us, stitch, double_crochet, false},
    Entry{"back post double crochet", Whose::us, stitch, double_crochet, false},
    Entry{"front post half double crochet", Whose::us, stitch, half_double_crochet, false},
    Entry{"fp sc", Whose::us, stitch, single_crochet, false},
    Entry{"bp sc", Whose::us, stitch, single_crochet, false},
    Entry{"fp hdc", Whose::us, stitch, half_double_crochet, false},
    Entry{"bp hdc", Whose::us, stitch, half_double_crochet, false},
    Entry{"fp dc", Whose::us, stitch, double_crochet, false},
    Entry{"bp dc", Whose::us, stitch, double_crochet, false},
    Entry{"bptr", Whose::us, stitch, treble_crochet, false},
    Entry{"front post hdc", Whose::us, stitch, half_double_crochet, false},
    Entry{"back post hdc", Whose::us, stitch, half_double_crochet, false},
    Entry{"back post half double crochet", Whose::us, stitch, half_double_crochet, false},
    Entry{"front post tr", Whose::us, stitch, treble_crochet, false},
    Entry{"front post treble crochet", Whose::us, stitch, treble_crochet, false},
    Entry{"fpdc", Whose::uk, stitch, single_crochet, false},
    Entry{"bpdc", Whose::uk, stitch, single_crochet, false},
    Entry{"fphtr", Whose::uk, stitch, half_double_crochet, false},
    Entry{"fptr", Whose::uk, stitch, double_crochet, false},
    Entry{"rtrf", Whose::uk, stitch, double_crochet, false},
    Entry{"rtrb", Whose::uk, stitch, double_crochet, false},

    Entry{"ch", Whose::both, stitch, chain},
    Entry{"chain", Whose::both, stitch, chain},
    Entry{"chain stitch", Whose::both, stitch, chain},
    Entry{"chain st", Whose::both, stitch, chain},
    Entry{"ch st", Whose::both, stitch, chain},
    Entry{"sl st", Whose::both, stitch, slip_stitch},
    Entry{"slst", Whose::both, stitch, slip_stitch},
    Entry{"sl", Whose::both, stitch, slip_stitch},
    Entry{"ss", Whose::both, stitch, slip_stitch},
    Entry{"slip stitch", Whose::both, stitch, slip_stitch},
    Entry{"slip st", Whose::both, stitch, slip_stitch},
    Entry{"slip", Whose::both, stitch, slip_stitch},
    Entry{"bobble stitch", Whose::both, stitch, bobble},
    Entry{"bobble st", Whose::both, stitch, bobble},
    Entry{"bobble", Whose::both, stitch, bobble},
    Entry{"bob", Whose::both, stitch, bobble},
    Entry{"bo", Whose::both, stitch, bobble},
    Entry{"popcorn stitch", Whose::both, stitch, bobble, false},
    Entry{"popcorn st", Whose::both, stitch, bobble, false},
    Entry{"popcorn", Whose::both, stitch, bobble, false},
    Entry{"pc", Whose::both, stitch, bobble, false},
    Entry{"puff stitch", Whose::both, stitch, bobble, false},
    Entry{"puff st", Whose::both, stitch, bobble, false},
    Entry{"puff", Whose::both, stitch, bobble, false},
    Entry{"cluster", Whose::both, stitch, bobble, false},
    Entry{"cl", Whose::both, stitch, bobble, false},

    Entry{"inc", Whose::both, increase, single_crochet},
    Entry{"increase", Whose::both, increase, single_crochet},
    Entry{"dec", Whose::both, decrease, single_crochet},
    Entry{"decrease", Whose::both, decrease, single_crochet},
    Entry{"invdec", Whose::both, invisible_decrease, single_crochet},
    Entry{"inv dec", Whose::both, invisible_decrease, single_crochet},
    Entry{"inv decrease", Whose::both, invisible_decrease, single_crochet},
    Entry{"invd", Whose::both, invisible_decrease, single_crochet},
    Entry{"invisible dec", Whose::both, invisible_decrease, single_crochet},
    Entry{"invisible decrease", Whose::both, invisible_decrease, single_crochet},
    Entry{"sk", Whose::both, skipping, single_crochet},
    Entry{"skip", Whose::both, skipping, single_crochet},
    Entry{"miss", Whose::both, skipping, single_crochet},
};

constexpr auto other_words = std::to_array<std::string_view>(
    {"around",   "across",   "each",    "every",  "next",      "same",     "rep",     "repeat", "from",
     "times",    "twice",    "end",     "even",   "rnd",       "rnds",     "round",   "rounds", "row",
     "rows",     "in",       "into",    "the",    "of",        "and",      "st",      "sts",    "stitch",
     "stitches", "loop",     "loops",   "front",  "back",      "only",     "blo",     "flo",    "both",
     "magic",    "ring",     "circle",  "mr",     "join",      "turn",     "fasten",  "off",    "change",
     "with",     "to",       "last",    "first",  "remaining", "rem",      "hook",    "more",   "over",
     "tog",      "together", "crochet", "color",  "colour",    "yarn",     "all",     "then",   "make",
     "work",     "start",    "leave",   "marker", "place",     "unworked", "through", "follow", "until"});

using Bucket = std::vector<const Entry*>;

const std::array<Bucket, 26>& buckets() {
    static const std::array<Bucket, 26> made = [] {
        std::array<Bucket, 26> all;
        for (const Entry& entry : entries)
            all[static_cast<std::size_t>(entry.words[0] - 'a')].push_back(&entry);
        return all;
    }();
    return made;
}

bool is_in(Whose whose, Terms terms) {
    return whose == Whose::both || (whose == Whose::us) == (english_behind(terms) == Terms::us);
}

bool is_plural(std::string_view token, std::string_view word) {
    return token.size() > word.size() && token.substr(0, word.size()) == word &&
           (token.substr(word.size()) == "s" || token.substr(word.size()) == "es");
}

bool is_joint(const Token& token) { return token.is("-") || token.is("."); }

// Tokens matched by the words; a plural may stand for the last one when `plural` allows it.
int match(std::span<const Token> tokens, std::string_view words, bool plural) {
    if (tokens.empty() || !tokens[0].text.starts_with(words[0])) return 0;  // nearly always decides
    std::size_t at = 0;
    while (true) {
        const std::size_t space = words.find(' ');
        const std::string_view word = words.substr(0, space);
        if (at >= tokens.size()) return 0;
        const bool last = space == std::string_view::npos;
        if (!tokens[at].is(word) && !(plural && last && is_plural(tokens[at].text, word))) return 0;
        ++at;
        if (last) return static_cast<int>(at);
        if (at < tokens.size() && is_joint(tokens[at])) ++at;
        words.remove_prefix(space + 1);
    }
}

void add_each_word(std::vector<std::string_view>& all, std::string_view words) {
    while (!words.empty()) {
        const std::string_view word = words.substr(0, words.find(' '));
        if (std::find(all.begin(), all.end(), word) == all.end()) all.push_back(word);
        words.remove_prefix(std::min(words.size(), word.size() + 1));
    }
}

std::vector<std::string_view> words_of(Terms terms) {
    std::vector<std::string_view> words;
    for (const Entry& entry : entries)
        if (is_in(entry.whose, terms)) add_each_word(words, entry.words);
    for (std::string_view word : other_words) add_each_word(words, word);
    return words;
}

}  // namespace

std::optional<Name> match_name(std::span<const Token> tokens, Terms terms) {
    if (tokens.empty() || tokens[0].kind != TokenKind::word) return std::nullopt;
    const char first = tokens[0].text[0];
    if (first < 'a' || first > 'z') return std::nullopt;
    std::optional<Name> best;
    for (const Entry* entry : buckets()[static_cast<std::size_t>(first - 'a')]) {
        const bool other = !is_in(entry->whose, terms);
        const int length = match(tokens, entry->words, true);
        const bool better = length > 0 && (!best || length > best->length ||
                                           (best->other_terms && !other && length == best->length));
        if (better) best = Name{entry->what, entry->stitch, entry->of_its_own, other, length};
    }
    return best;
}

int match_words(std::span<const Token> tokens, std::string_view words) { return match(tokens, words, false); }

int match_any(std::span<const Token> tokens, const Phrases& phrases) {
    if (tokens.empty() || tokens[0].text.empty()) return 0;
    const char first = tokens[0].text[0];
    if (!phrases.may_begin(first)) return 0;
    int longest = 0;
    for (std::string_view phrase : phrases.all())
        if (phrase[0] == first) longest = std::max(longest, match_words(tokens, phrase));
    return longest;
}

std::span<const std::string_view> known_words(Terms terms) {
    if (!is_english(terms)) return Phrasebook::of(terms).words();
    static const std::vector<std::string_view> us = words_of(Terms::us);
    static const std::vector<std::string_view> uk = words_of(Terms::uk);
    return terms == Terms::us ? us : uk;
}

bool is_plain_word(std::string_view word) {
    static const std::unordered_set<std::string_view> words(other_words.begin(), other_words.end());
    return words.count(word) > 0;
}

std::string_view nearest_known_word(std::string_view word, Terms terms) {
    std::string_view nearest;
    int fewest = word.size() < 4 ? 2 : 3;
    for (std::string_view known : known_words(terms)) {
        const int slips = slips_between(word, known);
        if (slips > 0 && slips < fewest) {
            fewest = slips;
            nearest = known;
        }
    }
    return nearest;
}

}  // namespace roundwright
