#include "core/checks/check_said_numbers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <string>
#include <string_view>

#include "core/base/limits.h"
#include "core/language/pattern/said_numbers.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {

namespace {

using Counts = std::vector<int>;

/// One of the maker's texts.
struct OwnText {
    OwnWords in = OwnWords::assembly;
    const std::string* words = nullptr;
    int piece = -1;  ///< of a round's note
    int round = -1;
};

std::vector<OwnText> own_texts(const Toy& toy) {
    std::vector<OwnText> texts{{OwnWords::introduction, &toy.text.introduction},
                               {OwnWords::notions, &toy.text.notions},
                               {OwnWords::assembly, &toy.text.assembly},
                               {OwnWords::finishing, &toy.text.finishing},
                               {OwnWords::notes, &toy.notes}};
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        for (std::size_t k = 0; k < toy.pieces[i].rounds.size(); ++k) {
            const std::string& note = toy.pieces[i].rounds[k].note;
            if (!note.empty())
                texts.push_back({OwnWords::round_note, &note, static_cast<int>(i), static_cast<int>(k)});
        }
    }
    return texts;
}

/// One of `own_texts`, to be changed.
std::string& words_in(Toy& toy, const OwnText& text) {
    switch (text.in) {
        case OwnWords::introduction:
            return toy.text.introduction;
        case OwnWords::notions:
            return toy.text.notions;
        case OwnWords::assembly:
            return toy.text.assembly;
        case OwnWords::finishing:
            return toy.text.finishing;
        case OwnWords::notes:
            return toy.notes;
        case OwnWords::round_note:
            break;
    }
    Piece& piece = toy.pieces[static_cast<std::size_t>(text.piece)];
    return piece.rounds[static_cast<std::size_t>(text.round)].note;
}

/// Words of a text in lower case, without what they end in as plural or possessive, and where they stand.
struct Word {
    std::size_t at = 0;
    std::string text;
};

std::vector<Word> words_of(std::string_view text) {
    const auto belongs = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               (c & '\x80') != 0;
    };
    std::vector<Word> words;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        std::string word;
        while (end < text.size() && belongs(text[end])) {
            const char c = text[end++];
            word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
        if (word.size() > 2 && word.back() == 's') word.pop_back();
        if (!word.empty()) words.push_back({at, word});
        at = std::max(end, at + 1);
    }
    return words;
}

/// A piece that is named, and where.
struct Named {
    std::size_t at = 0;
    std::size_t piece = 0;
    bool worked_on = false;  ///< "to the head", "under the body": not the piece that is sewn on
};

constexpr auto prepositions = std::to_array<std::string_view>(
    {"to", "of", "on", "onto", "in", "into", "at", "under", "over", "around", "above", "below", "behind"});
constexpr auto articles = std::to_array<std::string_view>({"the", "each", "a", "an", "both", "every", "it"});

template <std::size_t count>
bool is_one_of(std::string_view word, const std::array<std::string_view, count>& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

class Line {
  public:
    Line(const Toy& toy, std::string_view text) : words_(words_of(text)) {
        for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
            name(i, words_of(toy.pieces[i].name));
            if (!toy.pieces[i].features.empty()) name(i, {{0, "face"}});
        }
        std::stable_sort(named_.begin(), named_.end(),
                         [](const Named& a, const Named& b) { return a.at < b.at; });
    }

    /// The pieces named; each as often as it is.
    [[nodiscard]] const std::vector<Named>& named() const { return named_; }

  private:
    void name(std::size_t piece, const std::vector<Word>& name) {
        if (name.empty()) return;
        const auto same = [](const Word& a, const Word& b) { return a.text == b.text; };
        auto from = words_.begin();
        while ((from = std::search(from, words_.end(), name.begin(), name.end(), same)) != words_.end()) {
            named_.push_back({from->at, piece, follows_preposition(from)});
            ++from;
        }
    }

    [[nodiscard]] bool follows_preposition(std::vector<Word>::const_iterator name) const {
        const auto before = [&](std::ptrdiff_t steps) {
            return name - words_.begin() < steps ? std::string_view()
                                                 : std::string_view((name - steps)->text);
        };
        return is_one_of(before(is_one_of(before(1), articles) ? 2 : 1), prepositions);
    }

    std::vector<Word> words_;
    std::vector<Named> named_;
};

int greatest(const SaidNumbers& said) {
    int greatest = 0;
    for (const SaidNumbers::Number& number : said.numbers) greatest = std::max(greatest, number.value);
    return greatest;
}

/// A phrase that fits no more, and what it would have to be.
struct Stale {
    CheckCode code = CheckCode::said_round_missing;
    int piece = -1;
    std::vector<Argument> arguments;
    std::vector<int> becomes = {};
};

/// Rounds of a piece that has had `then` rounds and has `now`, at the same relative height; neighbours stay
/// neighbours.
std::vector<int> at_same_height(const SaidNumbers& said, int then, int now) {
    std::vector<int> rounds;
    for (std::size_t i = 0; i < said.numbers.size(); ++i) {
        const int value = said.numbers[i].value;
        const auto scaled = static_cast<int>(std::lround(static_cast<double>(value) * now / then));
        const bool next = i > 0 && value == said.numbers[i - 1].value + 1;
        rounds.push_back(std::clamp(next ? rounds.back() + 1 : scaled, 1, std::max(now, 1)));
    }
    return rounds;
}

class Judge {
  public:
    Judge(const Toy& toy, const CountsOfPieces& counts) : toy_(toy), now_(counts), then_(counts.size()) {
        for (std::size_t i = 0; i < toy.pieces.size(); ++i)
            for (const PieceThen& then : toy.text.written_for)
                if (then.piece == toy.pieces.id(i)) then_[i] = &then.stitches;
    }

    /// Notes on rounds are carried along with them, and so are only asked whether their numbers are there at
    /// all. `own_piece`: theirs; else -1.
    [[nodiscard]] std::optional<Stale> judge(const SaidNumbers& said, const Line& line, int own_piece) const {
        if (said.unit == SaidNumbers::Unit::stitches) return count(said, meant(line, own_piece));
        return rounds(said, line, own_piece);
    }

  private:
    [[nodiscard]] int rounds_now(std::size_t piece) const { return static_cast<int>(now_[piece].size()); }

    [[nodiscard]] std::vector<std::size_t> every_piece() const {
        std::vector<std::size_t> all(now_.size());
        for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
        return all;
    }

    [[nodiscard]] std::vector<std::size_t> meant(const Line& line, int own_piece) const {
        std::vector<std::size_t> pieces;
        if (own_piece >= 0) pieces.push_back(static_cast<std::size_t>(own_piece));
        for (const Named& named : line.named()) pieces.push_back(named.piece);
        return pieces.empty() ? every_piece() : pieces;
    }

    // --- rounds

    [[nodiscard]] std::optional<Stale> rounds(const SaidNumbers& said, const Line& line,
                                              int own_piece) const {
        const int last = greatest(said);
        const auto target = worked_on(said.at, line);
        if (own_piece < 0) {
            const auto piece = target ? target : only_piece_that_had(last);
            if (piece && had(*piece, last)) return moved(said, *piece);
        }
        int there = target ? rounds_now(*target) : 0;
        for (std::size_t piece = 0; !target && piece < now_.size(); ++piece)
            there = std::max(there, rounds_now(piece));
        if (last <= there) return std::nullopt;
        return Stale{CheckCode::said_round_missing, target ? static_cast<int>(*target) : own_piece, {there}};
    }

    /// The piece that something is done to, the one named last before the phrase.
    [[nodiscard]] static std::optional<std::size_t> worked_on(std::size_t at, const Line& line) {
        std::optional<std::size_t> found;
        for (const Named& named : line.named())
            if (named.worked_on && named.at < at) found = named.piece;
        return found;
    }

    [[nodiscard]] bool had(std::size_t piece, int round) const {
        return then_[piece] != nullptr && round <= static_cast<int>(then_[piece]->size());
    }

    [[nodiscard]] std::optional<std::size_t> only_piece_that_had(int round) const {
        std::optional<std::size_t> found;
        for (const std::size_t piece : every_piece()) {
            if (!had(piece, round)) continue;
            if (found) return std::nullopt;
            found = piece;
        }
        return found;
    }

    [[nodiscard]] std::optional<Stale> moved(const SaidNumbers& said, std::size_t piece) const {
        const Counts& then = *then_[piece];
        const Counts& now = now_[piece];
        const auto below = static_cast<std::size_t>(greatest(said));
        const bool same_below =
            now.size() >= below &&
            std::equal(then.begin(), then.begin() + static_cast<std::ptrdiff_t>(below), now.begin());
        if (same_below || now.size() == then.size() || now.empty()) return std::nullopt;
        Stale stale{CheckCode::said_round_moved,
                    static_cast<int>(piece),
                    {static_cast<int>(then.size()), rounds_now(piece)},
                    at_same_height(said, static_cast<int>(then.size()), rounds_now(piece))};
        const bool moves = !std::equal(stale.becomes.begin(), stale.becomes.end(), said.numbers.begin(),
                                       [](int a, const SaidNumbers::Number& b) { return a == b.value; });
        return moves ? std::optional(stale) : std::nullopt;
    }

    // --- stitches

    [[nodiscard]] bool open(std::size_t piece) const { return toy_.pieces[piece].end == End::left_open; }

    static bool has(const Counts& counts, int count) {
        return std::find(counts.begin(), counts.end(), count) != counts.end();
    }

    [[nodiscard]] std::optional<Stale> count(const SaidNumbers& said,
                                             const std::vector<std::size_t>& pieces) const {
        const int stitches = said.numbers.front().value;
        const auto edge_then = std::find_if(pieces.begin(), pieces.end(), [&](std::size_t piece) {
            return open(piece) && then_[piece] != nullptr && !then_[piece]->empty() &&
                   then_[piece]->back() == stitches;
        });
        if (edge_then != pieces.end()) return edge(stitches, *edge_then);
        const bool there = std::any_of(pieces.begin(), pieces.end(), [&](std::size_t piece) {
            return has(now_[piece], stitches) || starts_with(piece, stitches);
        });
        if (there) return std::nullopt;
        Stale stale{CheckCode::said_count_missing, -1, {stitches, 0}};
        find_edge(pieces, stale);
        return stale;
    }

    /// A chain that a piece is begun with has stitches too.
    [[nodiscard]] bool starts_with(std::size_t piece, int stitches) const {
        const Start& start = toy_.pieces[piece].start;
        if (const auto* ring = std::get_if<ChainRing>(&start)) return ring->chains == stitches;
        if (const auto* tube = std::get_if<OpenTube>(&start)) return tube->chains == stitches;
        if (const auto* oval = std::get_if<OvalChain>(&start)) return oval->chains == stitches;
        return false;
    }

    [[nodiscard]] std::optional<Stale> edge(int stitches, std::size_t piece) const {
        if (now_[piece].empty() || now_[piece].back() == stitches) return std::nullopt;
        return Stale{CheckCode::said_count_missing,
                     static_cast<int>(piece),
                     {stitches, now_[piece].back()},
                     {now_[piece].back()}};
    }

    /// Of the pieces named, the only one that is left open: its edge may be what is meant.
    void find_edge(std::vector<std::size_t> pieces, Stale& stale) const {
        std::sort(pieces.begin(), pieces.end());
        pieces.erase(std::unique(pieces.begin(), pieces.end()), pieces.end());
        std::erase_if(pieces, [&](std::size_t piece) { return !open(piece) || now_[piece].empty(); });
        if (pieces.size() != 1) return;
        stale.piece = static_cast<int>(pieces.front());
        stale.becomes = {now_[pieces.front()].back()};
        stale.arguments.back() = now_[pieces.front()].back();
    }

    const Toy& toy_;
    const CountsOfPieces& now_;
    std::vector<const Counts*> then_;  ///< by piece; null: not known
};

using Visit = std::function<void(const OwnText& text, int line, const SaidNumbers& said, const Stale& stale)>;

bool is_blank(std::string_view text) { return text.find_first_not_of(" \t\r") == std::string_view::npos; }

/// A line of a text that is not blank.
struct TextLine {
    std::string_view words;
    std::size_t at = 0;  ///< in the text
    int number = 0;      ///< from 1
};

std::vector<TextLine> lines_of(std::string_view text) {
    std::vector<TextLine> lines;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        const std::string_view words = text.substr(from, end - from);
        if (!is_blank(words)) lines.push_back({words, from, static_cast<int>(lines.size()) + 1});
        from = end + 1;
    }
    return lines;
}

/// The phrase as it stands in the whole text.
SaidNumbers moved_by(SaidNumbers said, std::size_t bytes) {
    said.at += bytes;
    for (SaidNumbers::Number& number : said.numbers) number.at += bytes;
    return said;
}

/// Every phrase that does not fit, with its place in the whole text.
void for_each_stale(const Toy& toy, const CountsOfPieces& counts, const Visit& visit) {
    const Judge judge(toy, counts);
    for (const OwnText& text : own_texts(toy)) {
        for (const TextLine& line : lines_of(*text.words)) {
            const std::vector<SaidNumbers> phrases = said_numbers(line.words);
            if (phrases.empty()) continue;
            const Line named(toy, line.words);
            for (const SaidNumbers& said : phrases) {
                const auto stale = judge.judge(said, named, text.piece);
                if (stale) visit(text, line.number, moved_by(said, line.at), *stale);
            }
        }
    }
}

bool says_numbers(const Toy& toy) {
    const auto texts = {&toy.text.introduction, &toy.text.notions, &toy.text.assembly, &toy.text.finishing,
                        &toy.notes};
    return std::any_of(texts.begin(), texts.end(),
                       [](const std::string* text) { return !said_numbers(*text).empty(); });
}

std::vector<PieceThen> pieces_now(const Toy& toy, const CountsOfPieces& counts) {
    std::vector<PieceThen> pieces;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        Counts kept = counts[i];
        for (int& count : kept) count = std::clamp(count, 1, static_cast<int>(max_stitches_per_piece));
        pieces.push_back({toy.pieces.id(i), std::move(kept)});
    }
    return pieces;
}

bool same_words(const Toy& a, const Toy& b) {
    const PatternText& x = a.text;
    const PatternText& y = b.text;
    return a.notes == b.notes && x.introduction == y.introduction && x.notions == y.notions &&
           x.assembly == y.assembly && x.finishing == y.finishing;
}

bool same_rounds(const Toy& a, const Toy& b) {
    return std::equal(a.pieces.begin(), a.pieces.end(), b.pieces.begin(), b.pieces.end(),
                      [](const Piece& x, const Piece& y) { return &x == &y || x.rounds == y.rounds; });
}

}  // namespace

CountsOfPieces counts_of_pieces(const Toy& toy) {
    CountsOfPieces counts;
    for (const Piece& piece : toy.pieces) counts.push_back(stitch_counts(piece_graph(piece).graph));
    return counts;
}

std::vector<Check> check_said_numbers(const Toy& toy, const CountsOfPieces& counts) {
    std::vector<Check> checks;
    for_each_stale(
        toy, counts, [&](const OwnText& text, int line, const SaidNumbers& said, const Stale& stale) {
            const std::string_view words = *text.words;
            Check check{stale.code, Severity::warning, stale.piece, text.round, stale.arguments, {}};
            check.said = SaidPlace{text.in, line, std::string(words.substr(said.at, said.length)), {}};
            if (!stale.becomes.empty()) {
                check.said->becomes = said_with(words, said, stale.becomes);
                check.cures.push_back({CureKind::renumber_words, {}, 0, 0});
            }
            checks.push_back(std::move(check));
        });
    return checks;
}

Toy with_words_renumbered(Toy toy, const CountsOfPieces& counts) {
    struct Change {
        OwnText text;
        SaidNumbers said;
        std::vector<int> becomes;
    };
    std::vector<Change> changes;
    for_each_stale(toy, counts, [&](const OwnText& text, int, const SaidNumbers& said, const Stale& stale) {
        if (!stale.becomes.empty()) changes.push_back({text, said, stale.becomes});
    });
    for (auto change = changes.rbegin(); change != changes.rend(); ++change) {
        std::string& words = words_in(toy, change->text);
        words.replace(change->said.at, change->said.length, said_with(words, change->said, change->becomes));
    }
    toy.text.written_for = pieces_now(toy, counts);
    return toy;
}

Toy with_words_remembered(const Toy& before, Toy after) {
    return with_words_remembered(before, std::move(after),
                                 [](const Toy& toy) { return counts_of_pieces(toy); });
}

Toy with_words_remembered(const Toy& before, Toy after,
                          const std::function<CountsOfPieces(const Toy&)>& counts) {
    if (after.text.written_for != before.text.written_for) return after;
    if (!same_words(before, after)) {
        after.text.written_for.clear();
        if (says_numbers(after)) after.text.written_for = pieces_now(after, counts(after));
    } else if (after.text.written_for.empty() && !same_rounds(before, after) && says_numbers(before)) {
        after.text.written_for = pieces_now(before, counts(before));
    }
    return after;
}

}  // namespace roundwright
