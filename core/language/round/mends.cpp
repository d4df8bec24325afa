#include "core/language/round/mends.h"

#include <algorithm>
#include <array>
#include <cstdint>

#include "core/language/round/even_spacing.h"
#include "core/language/round/mend_trial.h"
#include "core/language/round/token_cursor.h"
#include "core/language/round/write.h"

namespace roundwright {
namespace {

constexpr std::int64_t most_for_one_round = 40'000;
constexpr std::size_t longest_round = 300;  // tokens; a longer round is mended by hand

class MendFinder : public MendTrial {
  public:
    using MendTrial::MendTrial;

    void find(ReadCode code, bool count_is_right) {
        const bool counts = code == ReadCode::count_differs;
        if (counts && !count_is_right) return mend_count_alone();
        if (tokens_.size() <= longest_round) mend_words();
        if (counts) mend_count_alone();
    }

    std::vector<Mend> take_mends() { return std::move(found_); }
    std::vector<ReadRound> take_rounds() { return std::move(comes_to_); }

  private:
    void mend_words() {
        mend_signs();
        mend_count();
        mend_terms();
        mend_spelling();
        mend_brackets();
        add_times();
        add_brackets();
        repeat_all();
        change_numbers(true);
        change_numbers(false);
        change_stitches();
        add_stitches();
        remove_words();
        if (found_.empty() && read_.stated) mend_without_count();
        if (found_.empty() && read_.stated) space_evenly();
    }

    // The words stay as they are.
    void mend_count_alone() {
        const int made = read_.stitches;
        found_.push_back({MendCode::change_stated_count,
                          {read_.stated->count, made},
                          {{read_.stated->where, std::to_string(made)}},
                          made});
        ReadRound as_worked = read_;
        as_worked.diagnostics.clear();
        comes_to_.push_back(std::move(as_worked));
    }

    // An 8 stands next to the sign for times on no keyboard by chance: "] 8 6", "] 86".
    void mend_signs() {
        for (std::size_t i = 1; i < body_end() && !enough(); ++i) {
            const Token& token = tokens_[i];
            if (token.kind != TokenKind::number || token.raw.empty() || token.raw[0] != '8' ||
                !is_closer(tokens_[i - 1]))
                continue;
            const bool apart =
                token.raw == "8" && i + 1 < tokens_.size() && tokens_[i + 1].kind == TokenKind::number;
            if (apart) offer(MendCode::times_sign, {std::string("8"), tokens_[i + 1].number}, {{i, 1, "x"}});
            if (token.raw.size() > 1)
                offer(MendCode::times_sign,
                      {std::string("8"), token.number % power_of_ten(token.raw.size() - 1)},
                      {{i, 1, "x " + std::string(token.raw.substr(1))}});
        }
    }

    static int power_of_ten(std::size_t digits) {
        int power = 1;
        for (std::size_t i = 0; i < std::min<std::size_t>(digits, 9); ++i) power *= 10;
        return power;
    }

    void mend_spelling() {
        for (const ReadDiagnostic& d : read_.diagnostics) {
            if (d.code != ReadCode::unknown_words && d.code != ReadCode::other_terms) continue;
            for (std::size_t i = 0; i < tokens_.size() && !enough(); ++i) {
                const bool within = tokens_[i].where.line == d.where.line &&
                                    tokens_[i].where.column >= d.where.column &&
                                    tokens_[i].where.column < d.where.column + d.where.length;
                if (!within || tokens_[i].kind != TokenKind::word) continue;
                const std::string_view near = nearest_known_word(tokens_[i].text, setting_.terms);
                if (near.empty()) continue;
                offer(MendCode::spell, {std::string(tokens_[i].raw), std::string(near)},
                      {{i, 1, std::string(near)}});
            }
        }
    }

    void mend_brackets() {
        if (const ReadDiagnostic* open = first_of(ReadCode::bracket_not_closed)) close_bracket(*open);
        if (has(ReadCode::bracket_not_opened)) open_bracket();
    }

    const ReadDiagnostic* first_of(ReadCode code) const {
        const auto found = std::find_if(read_.diagnostics.begin(), read_.diagnostics.end(),
                                        [&](const ReadDiagnostic& d) { return d.code == code; });
        return found == read_.diagnostics.end() ? nullptr : &*found;
    }

    // A bracket too many goes, where another one does its work.
    void remove_bracket(const TextSpan& where) {
        for (std::size_t i = 0; i < tokens_.size() && !enough(); ++i)
            if (tokens_[i].where == where)
                offer(MendCode::remove_words, {std::string(tokens_[i].raw)}, {{i, 1, ""}});
    }

    void close_bracket(const ReadDiagnostic& open) {
        const auto kind = [&](bool (*is_kind)(const Token&)) {
            return std::count_if(tokens_.begin(), tokens_.begin() + static_cast<std::ptrdiff_t>(body_end()),
                                 is_kind);
        };
        if (kind(is_closer) > 0 && kind(is_opener) > 1) remove_bracket(open.where);
        const std::string closer(closer_of(std::get<std::string>(open.arguments.at(0))));
        for (std::size_t i = 1; i <= tokens_.size() && !enough(); ++i) {
            if (tokens_[i - 1].where == open.where) continue;
            const bool before_times =
                i < tokens_.size() && (tokens_[i].is("x") || tokens_[i].is("*") ||
                                       (tokens_[i].kind == TokenKind::number && i + 1 < tokens_.size() &&
                                        (tokens_[i + 1].is("times") || tokens_[i + 1].is("x"))));
            const bool before_count = i < tokens_.size() && is_opener(tokens_[i]);
            if (before_times || before_count || i == tokens_.size())
                offer(MendCode::close_bracket, {closer}, {{i, 0, closer}});
        }
    }

    void open_bracket() {
        const ReadDiagnostic* closing = first_of(ReadCode::bracket_not_opened);
        const bool another = std::any_of(tokens_.begin(), tokens_.end(), [&](const Token& token) {
            return is_closer(token) && !(token.where == closing->where) &&
                   token.where.column < closing->where.column;
        });
        if (another) remove_bracket(closing->where);
        const std::string opener = std::get<std::string>(closing->arguments.at(0)) == ")" ? "(" : "[";
        for (std::size_t i = 0; i < tokens_.size() && !enough() && !(tokens_[i].where == closing->where); ++i)
            if (i == 0 || tokens_[i - 1].is(",") || tokens_[i - 1].is(":"))
                offer(MendCode::open_bracket, {opener}, {{i, 0, opener}});
    }

    int below() const { return setting_.work.into_ring ? 0 : setting_.work.loops_below; }

    // "[sc, inc] (18)", "*sc, inc* (18)": how often must it be worked?
    void add_times() {
        for (std::size_t i = 1; i <= body_end() && !enough(); ++i) {
            const bool closed = is_closer(tokens_[i - 1]) || (i > 2 && tokens_[i - 1].is("*"));
            if (!closed) continue;
            const ReadRound twice = tried(without_count({{i, 0, "x 2"}}));
            const ReadRound once = tried(without_count({}));
            const int loops = twice.taken - once.taken;
            if (loops <= 0 || below() - once.taken <= 0 || (below() - once.taken) % loops != 0) continue;
            const int number = 1 + (below() - once.taken) / loops;
            offer(MendCode::add_times, {number, loops, below()}, {{i, 0, "x " + std::to_string(number)}});
        }
    }

    // "sc 1, inc (18)": brackets and number are left out.
    void repeat_all() {
        const int once = read_.taken;
        if (!found_.empty() || !read_.stated || once < 2 || below() <= once || below() % once != 0 ||
            enough())
            return;
        const int number = below() / once;
        offer(MendCode::add_brackets, {number},
              {{0, 0, "["}, {end_of_stitches(), 0, "] x " + std::to_string(number)}});
    }

    // "[sc 3, inc] x 6 30", "... (3O)": the count is there, but not as one.
    void mend_count() {
        for (std::size_t i = 1; i < tokens_.size() && !enough(); ++i) {
            const bool letter = tokens_[i].is("o") && !tokens_[i].spaced;
            const Token& token = tokens_[letter ? i - 1 : i];
            if (token.kind != TokenKind::number || token.number >= largest_number / 10) continue;
            if (letter) {
                const std::string number = std::to_string(token.number * 10);
                offer(MendCode::spell, {std::string(token.raw) + std::string(tokens_[i].raw), number},
                      {{i - 1, 2, number}});
            } else if (i + 1 == tokens_.size()) {
                offer(MendCode::bracket_count, {token.number}, {{i, 1, "(" + std::string(token.raw) + ")"}});
            }
        }
    }

    // A stitch of the other terms: the same stitch in these.
    void mend_terms() {
        if (!has(ReadCode::other_terms)) return;
        std::vector<TokenEdit> all;
        std::string word;
        std::string fresh;
        for (std::size_t i = 0; i < body_end(); ++i) {
            const auto name = match_name(std::span(tokens_).subspan(i), setting_.terms);
            if (!name || !name->other_terms || name->what != NameKind::stitch) continue;
            word = tokens_[i].raw;
            fresh = abbreviation(name->stitch, english_behind(setting_.terms));
            all.push_back({i, static_cast<std::size_t>(name->length), fresh});
        }
        if (!all.empty()) offer(MendCode::change_stitch, {word, fresh}, all);
    }

    // Misprints sit more often in how often something is worked than in the stitches.
    void change_numbers(bool times) {
        for (std::size_t i = 0; i < body_end() && !enough(); ++i)
            if (tokens_[i].kind == TokenKind::number && !is_feet(i) && is_times(i) == times) change_number(i);
    }

    bool is_feet(std::size_t i) const { return i + 1 < tokens_.size() && tokens_[i + 1].is("tog"); }

    // The loops taken grow by a fixed number with every one added, unless an "around" takes up the slack;
    // then the neighbours are tried.
    void change_number(std::size_t i) {
        const int number = tokens_[i].number;
        if (number >= largest_number - 2) return;
        const int now = read_.taken;
        const int grows = tried(without_count({{i, 1, std::to_string(number + 1)}})).taken - now;
        const int missing = below() - now;
        if (grows > 0 && missing != 0 && missing % grows == 0) {
            const int wanted = number + missing / grows;
            if (wanted >= 1) offer_number(i, wanted, grows);
        }
        if (grows == 0 || has(ReadCode::repeat_does_not_fit)) {
            for (const int wanted : {number - 1, number + 1, number - 2, number + 2})
                if (wanted >= 1 && !enough()) offer_number(i, wanted, 0);
        }
    }

    void offer_number(std::size_t i, int wanted, int grows) {
        const int number = tokens_[i].number;
        const int taken = read_.taken;
        if (is_times(i)) {
            offer(MendCode::change_times, {number, wanted, grows, taken, below()},
                  {{i, 1, std::to_string(wanted)}});
            return;
        }
        const int one_repeat = grows > 1 && taken % grows == 0 ? taken / grows : 0;
        offer(MendCode::change_number, {number, wanted, word_beside(i), one_repeat, grows, taken, below()},
              {{i, 1, std::to_string(wanted)}});
    }

    bool is_times(std::size_t i) const {
        const bool star =
            i > 0 && tokens_[i - 1].is("*") && !match_name(std::span(tokens_).subspan(i + 1), setting_.terms);
        const bool after = star || (i > 0 && (tokens_[i - 1].is("x") || is_closer(tokens_[i - 1])));
        const bool before = i + 1 < tokens_.size() && (tokens_[i + 1].is("times") || tokens_[i + 1].is("x") ||
                                                       tokens_[i + 1].is("more"));
        return after || before;
    }

    std::string word_beside(std::size_t i) const {
        const auto named = [&](std::size_t at) {
            return at < tokens_.size() &&
                   match_name(std::span(tokens_).subspan(at), setting_.terms).has_value();
        };
        if (i > 0 && named(i - 1)) return std::string(tokens_[i - 1].raw);
        if (named(i + 1)) return std::string(tokens_[i + 1].raw);
        return i > 0 ? std::string(tokens_[i - 1].raw) : "";
    }

    // "sc 1, inc x 6": the brackets are left out.
    void add_brackets() {
        for (std::size_t i = 1; i < body_end() && !enough(); ++i) {
            const bool crossed = (tokens_[i].is("x") || tokens_[i].is("*")) && i + 1 < tokens_.size() &&
                                 tokens_[i + 1].kind == TokenKind::number;
            const bool timed =
                tokens_[i].kind == TokenKind::number && i + 1 < tokens_.size() && tokens_[i + 1].is("times");
            if (!crossed && !timed) continue;
            const int number = crossed ? tokens_[i + 1].number : tokens_[i].number;
            for (std::size_t from = 0; from < i && !enough(); ++from)
                if (from == 0 || tokens_[from - 1].is(","))
                    offer(MendCode::add_brackets, {number}, {{from, 0, "["}, {i, 0, "]"}});
        }
    }

    void change_stitches() {
        static constexpr auto swaps = std::to_array<std::string_view>({"inc", "dec", "sc"});
        for (std::size_t i = 0; i < body_end() && !enough(); ++i) {
            const auto name = match_name(std::span(tokens_).subspan(i), setting_.terms);
            if (!name || name->length != 1 || name->what == NameKind::skipping) continue;
            for (std::string_view other : swaps) {
                const std::string word(
                    other == "sc" ? abbreviation(StitchKind::single_crochet, english_behind(setting_.terms))
                                  : other);
                if (!enough() && !tokens_[i].is(word))
                    offer(MendCode::change_stitch, {std::string(tokens_[i].raw), word}, {{i, 1, word}});
            }
        }
    }

    void add_stitches() {
        const int missing = below() - read_.taken;
        const bool only_notes = body_end() == 0 && !tokens_.empty() && !read_.stated;
        if (missing <= 0 || enough() || only_notes) return;
        const std::string name(abbreviation(StitchKind::single_crochet, english_behind(setting_.terms)));
        const std::string joint = body_end() == 0 ? "" : ", ";
        offer(MendCode::add_stitches, {missing},
              {{end_of_stitches(), 0, joint + name + " " + std::to_string(missing)}});
    }

    std::size_t end_of_stitches() const {
        std::size_t end = body_end();
        while (end > 1 && (tokens_[end - 1].is(",") || tokens_[end - 1].is(".") || tokens_[end - 1].is(";")))
            --end;
        return end;
    }

    void remove_words() {
        for (std::size_t from = 0; from < body_end() && !enough();) {
            std::size_t to = from;
            while (to < body_end() && !tokens_[to].is(",")) ++to;
            if (to < body_end() || from > 0) {
                const bool last = to >= body_end();
                const std::size_t first = last ? from - 1 : from;
                const std::size_t end = last ? to : to + 1;
                offer(MendCode::remove_words, {said(std::span(tokens_).subspan(from, to - from))},
                      {{first, end - first, ""}});
            }
            from = to + 1;
        }
    }

    // The words cannot be saved, but the count they state can be reached.
    void space_evenly() {
        const int count = read_.stated->count;
        if (count < 1 || count > setting_.work.most_stitches || budget_.left <= count) return;
        StitchGraph graph;
        WorkedEvenly even;
        even.stitches = count;
        graph.rounds.push_back(even_round(even, below(), SpacingPhase::at_end, 0));
        offer(MendCode::space_evenly, {count, below()},
              {{0, body_end(), round_words(graph, 0, english_behind(setting_.terms))}});
    }

    // Two slips at once: the words and the count that goes with them.
    void mend_without_count() {
        ignore_count_ = true;
        add_times();
        change_numbers(true);
        change_numbers(false);
        remove_words();
        add_stitches();
    }
};

}  // namespace

void find_mends(ReadRound& read, const std::vector<Token>& tokens, const RoundSetting& setting,
                const YarnTable& yarns, bool count_is_right) {
    const auto worst = std::find_if(read.diagnostics.begin(), read.diagnostics.end(),
                                    [](const ReadDiagnostic& d) { return d.severity == Severity::error; });
    if (worst == read.diagnostics.end()) return;
    MendBudget own;
    MendBudget& shared = setting.budget != nullptr ? *setting.budget : own;
    const std::int64_t lent = std::min(shared.left, most_for_one_round);
    MendBudget budget{lent};
    MendFinder finder(read, tokens, setting, yarns, budget);
    finder.find(worst->code, count_is_right);
    shared.left -= lent - budget.left;
    worst->mends = finder.take_mends();
    read.mended = finder.take_rounds();
}

void put_first(ReadRound& read, int stitches) {
    const auto worst = std::find_if(read.diagnostics.begin(), read.diagnostics.end(),
                                    [](const ReadDiagnostic& d) { return !d.mends.empty(); });
    if (worst == read.diagnostics.end() || worst->mends.size() != read.mended.size()) return;
    std::size_t next = 0;
    for (std::size_t i = 0; i < worst->mends.size(); ++i) {
        if (worst->mends[i].stitches != stitches) continue;
        const auto to = static_cast<std::ptrdiff_t>(next++);
        const auto from = static_cast<std::ptrdiff_t>(i);
        std::rotate(worst->mends.begin() + to, worst->mends.begin() + from, worst->mends.begin() + from + 1);
        std::rotate(read.mended.begin() + to, read.mended.begin() + from, read.mended.begin() + from + 1);
    }
}

}  // namespace roundwright
