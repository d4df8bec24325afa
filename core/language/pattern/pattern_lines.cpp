#include "core/language/pattern/pattern_lines.h"

#include <algorithm>
#include <array>

#include "core/language/pattern/round_header.h"
#include "core/language/round/token_cursor.h"
#include "core/language/round/worked_on_words.h"
#include "core/language/words/in_language.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

constexpr std::string_view bullet = "\xE2\x80\xA2";

constexpr auto unfinished_words = std::to_array<std::string_view>(
    {",",  "x", "in",   "next", "of",   "each",  "the",    "and",  "rep",    "repeat", "from",
     "to", "&", "+",    "into", "over", "last",  "first",  "with", "then",   "ea",     "every",
     "a",  "*", "same", "for",  "back", "front", "single", "half", "double", "treble", "slip"});
constexpr auto work_words = std::to_array<std::string_view>(
    {"in",    "into",     "work",   "blo",   "flo",       "mr",  "magic", "even",       "rep",      "repeat",
     "ch",    "chain",    "join",   "turn",  "invisible", "inv", "with",  "change",     "continue", "make",
     "start", "starting", "starts", "begin", "working",   "as",  "same",  "foundation", "unchanged"});
constexpr auto going_on_words =
    std::to_array<std::string_view>({",", "around", "tog", "times", "x", "next", "each", "same", "more",
                                     "only", "from", "ring", "crochet", "together", "last", "-"});
constexpr auto before_reference = std::to_array<std::string_view>(
    {"rep", "repeat", "between", "for",     "as",        "from", "in",   "until", "after",  "on",
     "of",  "and",    "to",      "through", "at",        "the",  "last", "till",  "before", "during",
     "by",  "&",      "-",       "with",    "following", "over", "or",   "than"});

int bracket_depth(Tokens tokens) {
    int depth = 0;
    for (const Token& token : tokens) depth += is_opener(token) ? 1 : is_closer(token) ? -1 : 0;
    return depth;
}

bool is_unfinished(const PatternLine& line) {
    return line.tokens.empty() || line.open_brackets > 0 ||
           is_one_of(line.tokens.back().text, unfinished_words);
}

// Takes in tokens that have been put at the end of a line.
void count_in(PatternLine& line, std::size_t from) {
    constexpr std::size_t overlap = 6;
    const Tokens all(line.tokens);
    line.open_brackets = std::max(0, line.open_brackets + bracket_depth(all.subspan(from)));
    line.counted = line.counted || has_count(all.subspan(from > overlap ? from - overlap : 0));
}

bool is_rule(Tokens tokens) {
    return !tokens.empty() && std::all_of(tokens.begin(), tokens.end(), [](const Token& t) {
        return t.is("-") || t.is("=") || t.is("*") || t.is("**") || t.is("_") || t.is("~") || t.is("|");
    });
}

// "...", "…", "etc.": a line for rounds that are not written out.
bool is_dots(Tokens tokens) {
    const std::size_t dots = tokens.size() - (!tokens.empty() && tokens[0].is("etc") ? 1 : 0);
    return !tokens.empty() &&
           std::all_of(tokens.end() - static_cast<std::ptrdiff_t>(dots), tokens.end(),
                       [](const Token& t) { return t.is("."); }) &&
           (tokens.size() > 1 || tokens[0].raw.size() > 1 || tokens[0].is("etc"));
}

class LineCutter {
  public:
    LineCutter(Terms terms, std::deque<std::string>& joined) : terms_(terms), joined_(joined) {}

    void cut(const SourceLine& source) {
        Tokens tokens(source.tokens);
        const bool rule = is_rule(tokens);
        if (rule) underline(source, tokens);
        if (rule || tokens.empty()) return blank(source);
        PatternLine line;
        line.first_line = line.last_line = source.number;
        const std::size_t from = bullets(tokens, line);
        tokens = tokens.subspan(from);
        for (std::size_t next = split_at(tokens); next > 0; next = split_at(tokens)) {
            cut_part(line, tokens.first(next), source);
            tokens = tokens.subspan(next);
            line = PatternLine{};
            line.first_line = line.last_line = source.number;
        }
        cut_part(line, tokens, source);
    }

    /// The same for a line that goes on to line `last`.
    void cut_to(const SourceLine& source, int last) {
        cut(source);
        lines_.back().last_line = last;
    }

    std::vector<PatternLine> take() { return std::move(lines_); }

  private:
    // A line drawn under a text makes it a heading, even where it begins like stitches ("Bobble", "Ring").
    void underline(const SourceLine& source, Tokens rule) {
        constexpr std::size_t shortest = 3;
        if (lines_.empty() || rule.size() < shortest || rule[0].is("*") || rule[0].is("**")) return;
        PatternLine& line = lines_.back();
        const bool numbered = line.header.length > 0;
        if (numbered || line.kind == LineKind::blank || line.first_line + 1 != source.number) return;
        line.kind = LineKind::text;
        line.heading_level = rule[0].is("=") ? 1 : rule[0].is("-") ? 2 : 3;
    }

    void blank(const SourceLine& source) {
        PatternLine line;
        line.kind = LineKind::blank;
        line.first_line = line.last_line = source.number;
        lines_.push_back(std::move(line));
    }

    static std::size_t bullets(Tokens tokens, PatternLine& line) {
        std::size_t at = 0;
        if (tokens.size() > 2 && tokens[0].is("|")) ++at;  // a table's border
        while (at < tokens.size() && tokens[at].is("#")) {
            ++line.heading_level;
            ++at;
        }
        const bool dash = at + 1 < tokens.size() && tokens[at + 1].spaced &&
                          (tokens[at].is("-") || tokens[at].is("+") || tokens[at].is("*") ||
                           tokens[at].is("o") || tokens[at].is(">"));
        const bool star_is_bullet = !dash || !tokens[at].is("*") ||
                                    std::none_of(tokens.begin() + static_cast<std::ptrdiff_t>(at) + 1,
                                                 tokens.end(), [](const Token& t) { return t.is("*"); });
        if (at < tokens.size() && (tokens[at].is(bullet) || (dash && star_is_bullet))) {
            line.bulleted = true;
            ++at;
        }
        at += quoted(tokens.subspan(at));
        return at + box(tokens.subspan(at));
    }

    // ">> R3: ...": text that was sent on.
    static std::size_t quoted(Tokens tokens) {
        std::size_t at = 0;
        while (at < tokens.size() && tokens[at].is(">")) ++at;
        return at > 1 ? at : 0;
    }

    // "[x] R2: ...", "[ ] R3: ...": a box to tick before a round.
    static std::size_t box(Tokens tokens) {
        if (tokens.size() < 4 || !(tokens[0].is("[") || tokens[0].is("("))) return 0;
        const std::size_t closer = tokens[1].is("x") ? 2 : 1;
        const bool closed = tokens[closer].is("]") || tokens[closer].is(")");
        return closed && is_round_word(tokens[closer + 1].text) ? closer + 1 : 0;
    }

    // Where the next round begins in a line that holds several: "... (6) Rnd 2: inc (12)". 0: nowhere.
    std::size_t split_at(Tokens tokens) const {
        if (is_marked_note(tokens)) return 0;
        PatternLine first;
        RoundHeaderReader header(tokens, terms_);
        const std::size_t from = header.read(first) ? header.end() : 0;
        for (std::size_t i = std::max<std::size_t>(from, 2); i + 2 < tokens.size(); ++i) {
            if (!is_round_word(tokens[i].text) || tokens[i + 1].kind != TokenKind::number) continue;
            if (is_one_of(tokens[i - 1].text, before_reference)) continue;
            PatternLine line;
            if (RoundHeaderReader(tokens.subspan(i), terms_).read(line) && has_colon(tokens.subspan(i)))
                return i;
        }
        return 0;
    }

    static bool has_colon(Tokens tokens) {
        constexpr std::size_t longest = 8;
        for (std::size_t i = 2; i < std::min(tokens.size(), longest); ++i)
            if (tokens[i].is(":")) return true;
        return tokens.size() > 2 && tokens[2].is(".");
    }

    void cut_part(PatternLine& line, Tokens tokens, const SourceLine& source) {
        if (is_marked_note(tokens)) return push_text(std::move(line), tokens, source);
        RoundHeaderReader header(tokens, terms_);
        PatternLine* last = last_work();
        const bool goes_on = last != nullptr && continues(*last, tokens);
        const bool indented = goes_on_indented(tokens);
        const bool bracket = tokens.size() > 2 && is_opener(tokens[0]) && is_round_word(tokens[1].text);
        const bool said_round = !tokens.empty() && (bracket || is_round_word(tokens[0].text) ||
                                                    tokens[0].kind == TokenKind::ordinal);
        const bool within = indented || (goes_on && is_unfinished(*last));
        if (!within) header.after(last_number_, plain_);
        header.with_dash_as_range(last_number_ > 0 && !dashes_);
        if ((said_round || !within || is_next_number(tokens)) && header.read(line)) {
            plain_ = line.plain || (plain_ && line.numbers.empty());
            for (std::size_t i = 0; i < header.end(); ++i) dashes_ = dashes_ || ends_in_dash(tokens, i, line);
            if (line.bare) line.raw = std::string(source.raw);
            return push_round(std::move(line), tokens.subspan(header.end()), header.count());
        }
        line.numbers.clear();
        line.rounds = 1;
        line.rounds_said = 0;
        line.row = line.bare = line.plain = line.starts = line.open_end = false;
        if (is_dots(tokens)) {
            line.dots = true;
            line.kind = LineKind::round;
            return push_text(std::move(line), tokens, source);
        }
        const bool works = line.heading_level == 0 && looks_like_work(tokens, terms_);
        if (works && !line.bulleted && remark_of_a_round(source.number))
            return append(lines_.back(), tokens, source.number);
        if ((goes_on || indented) && !line.bulleted)
            return append(goes_on ? *last : lines_.back(), tokens, source.number);
        line.kind = works ? (line.bulleted ? LineKind::round : LineKind::work) : LineKind::text;
        push_text(std::move(line), tokens, source);
    }

    // "R1-6 sc": the dash stands between number and stitches.
    static bool ends_in_dash(Tokens tokens, std::size_t at, const PatternLine& line) {
        return tokens[at].is("-") && !tokens[at].spaced && line.rounds == 1 && at > 0 &&
               tokens[at - 1].kind == TokenKind::number;
    }

    // "7. ..." after round 6, whatever that one has left open.
    bool is_next_number(Tokens tokens) const {
        if (tokens.size() < 3 || last_number_ == 0) return false;
        const Token& first = tokens[is_opener(tokens[0]) ? 1 : 0];
        const bool number = first.kind == TokenKind::number && first.number == last_number_ + 1 &&
                            first.raw[0] >= '0' && first.raw[0] <= '9';
        if (!number) return false;
        PatternLine line;
        return RoundHeaderReader(tokens, terms_).after(last_number_, false).read(line);
    }

    void push_text(PatternLine&& line, Tokens tokens, const SourceLine& source) {
        line.tokens.assign(tokens.begin(), tokens.end());
        line.raw = std::string(source.raw);
        count_in(line, 0);
        lines_.push_back(std::move(line));
    }

    void push_round(PatternLine&& line, Tokens tokens, Tokens count = {}) {
        line.tokens.assign(tokens.begin(), tokens.end());
        if (!has_count(tokens)) line.tokens.insert(line.tokens.end(), count.begin(), count.end());
        count_in(line, 0);
        last_number_ = line.numbers.empty() ? last_number_ + line.rounds : line.last_number;
        lines_.push_back(std::move(line));
    }

    // "5. Stuff the head." is round 5 when round 4 came before it and the line after it is worked; then it is
    // made so.
    bool remark_of_a_round(int number) {
        if (lines_.empty()) return false;
        PatternLine& remark = lines_.back();
        if (remark.kind != LineKind::text || remark.bulleted || remark.tokens.empty() ||
            remark.last_line + 1 != number ||
            (remark.tokens[0].kind != TokenKind::number && !remark.tokens[0].is("(")))
            return false;
        const std::vector<Token> tokens = remark.tokens;
        PatternLine round = remark;
        RoundHeaderReader header(tokens, terms_);
        if (!header.before_remarks().read(round) || round.first_number != last_number_ + 1) return false;
        lines_.pop_back();
        push_round(std::move(round), Tokens(tokens).subspan(header.end()));
        return true;
    }

    // The round or line of work that this line may go on with: the last one, but for notes in between if it
    // stands open.
    PatternLine* last_work() {
        for (std::size_t i = lines_.size(); i > 0; --i) {
            PatternLine& line = lines_[i - 1];
            if (line.kind == LineKind::round || line.kind == LineKind::work) {
                const bool apart = i < lines_.size();
                const bool numbered = line.header.length > 0;
                const bool near = lines_.size() - i <= 3 && (numbered || line.bulleted);
                return !apart || (is_unfinished(line) && near) ? &line : nullptr;
            }
            if (lines_.size() - i > 3) break;
        }
        return nullptr;
    }

    // A line set in under a round that has not come to its count goes on with it, whatever it begins with.
    bool goes_on_indented(Tokens tokens) const {
        if (tokens.empty() || lines_.empty()) return false;
        const PatternLine& last = lines_.back();
        return last.header.length > 0 && !last.counted && last.header.line == last.first_line &&
               tokens[0].where.column > last.header.column + 1;
    }

    bool continues(const PatternLine& last, Tokens tokens) const {
        if (tokens.empty()) return false;
        const bool noun = is_noun(tokens[0].text) || is_closer(tokens[0]);
        const bool works =
            looks_like_work(tokens, terms_) || noun || is_one_of(tokens[0].text, going_on_words);
        if (joins_word(last, tokens)) return true;
        if (is_unfinished(last))
            return works || tokens[0].kind == TokenKind::number || joins_word(last, tokens);
        if (last.counted) return false;
        const bool numbered = last.header.length > 0;
        return numbered ? works : noun || tokens[0].is(",");
    }

    void append(PatternLine& last, Tokens tokens, int number) {
        last.last_line = number;
        if (joins_word(last, tokens)) {
            last.tokens.pop_back();
            Token& half = last.tokens.back();
            joined_.push_back(std::string(half.text) + std::string(tokens[0].text));
            half.text = half.raw = joined_.back();
            tokens = tokens.subspan(1);
        }
        const std::size_t from = last.tokens.size();
        last.tokens.insert(last.tokens.end(), tokens.begin(), tokens.end());
        count_in(last, from);
    }

    // "mag-" at the end of a line and "ic" at the front of the next
    static bool joins_word(const PatternLine& last, Tokens tokens) {
        const std::size_t size = last.tokens.size();
        if (size < 2 || tokens.empty() || !last.tokens[size - 1].is("-") || last.tokens[size - 1].spaced)
            return false;
        const Token& half = last.tokens[size - 2];
        if (half.kind != TokenKind::word || tokens[0].kind != TokenKind::word) return false;
        return is_plain_word(std::string(half.text) + std::string(tokens[0].text)) ||
               is_name_part(std::string(half.text) + std::string(tokens[0].text));
    }

    static bool is_name_part(const std::string& word) {
        static constexpr auto parts =
            std::to_array<std::string_view>({"increase", "decrease", "single", "treble", "bobble",
                                             "invisible", "crochet", "stitches", "remaining", "invdec"});
        return is_one_of(word, parts);
    }

    Terms terms_;
    std::deque<std::string>& joined_;
    std::vector<PatternLine> lines_;
    int last_number_ = 0;  // of the round before
    bool plain_ = false;   // its number had no sign behind it
    bool dashes_ = false;  // a round's number had a dash behind it
};

std::string in_english(const SourceLine& line, Terms terms) {
    return is_english(terms) ? std::string(line.raw) : english_of(line.tokens);
}

std::string words_of(const std::vector<SourceLine>& lines, std::size_t first, std::size_t last, Terms terms) {
    std::string words = in_english(lines[first], terms);
    for (std::size_t at = first + 1; at <= last; ++at) {
        const std::string raw = in_english(lines[at], terms);
        words += ' ';
        words += raw.substr(std::min(raw.find_first_not_of(" \t"), raw.size()));
    }
    return words;
}

/// The last of the lines over which a page has broken our words for a piece that is worked on others.
std::size_t last_of_start(const std::vector<SourceLine>& lines, std::size_t first, Terms terms) {
    constexpr std::size_t most = 4;
    const bool english = is_english(terms);
    if (!begins_worked_on(english ? lines[first].raw : in_english(lines[first], terms))) return first;
    for (std::size_t last = first; last < std::min(first + most, lines.size()); ++last)
        if (worked_on_said(words_of(lines, first, last, terms))) return last;
    return first;
}

SourceLine one_line(const std::vector<SourceLine>& lines, std::size_t first, std::size_t last,
                    std::string_view words) {
    SourceLine whole = lines[first];
    whole.raw = words;
    for (std::size_t at = first + 1; at <= last; ++at)
        whole.tokens.insert(whole.tokens.end(), lines[at].tokens.begin(), lines[at].tokens.end());
    return whole;
}

}  // namespace

std::vector<PatternLine> pattern_lines(const LexedText& text, Terms terms, std::deque<std::string>& joined) {
    LineCutter cutter(terms, joined);
    const std::vector<SourceLine>& lines = text.lines();
    for (std::size_t at = 0; at < lines.size(); ++at) {
        const std::size_t last = last_of_start(lines, at, terms);
        if (last == at) {
            cutter.cut(lines[at]);
            continue;
        }
        joined.push_back(words_of(lines, at, last, Terms::us));
        cutter.cut_to(one_line(lines, at, last, joined.back()), lines[last].number);
        at = last;
    }
    return cutter.take();
}

bool looks_like_work(std::span<const Token> tokens, Terms terms) {
    std::size_t at = 0;
    while (at < tokens.size() &&
           (tokens[at].is("**") || tokens[at].is(":") || tokens[at].is("\"") || tokens[at].is("the") ||
            tokens[at].is("now") || tokens[at].is("just") || tokens[at].is("then")))
        ++at;
    if (at >= tokens.size()) return false;
    const Token& first = tokens[at];
    if (is_opener(first) || first.is("*") || match_name(tokens.subspan(at), terms)) return true;
    if (first.kind == TokenKind::number && at + 1 < tokens.size()) {
        const Token& next = tokens[at + 1];
        if (match_name(tokens.subspan(at + 1), terms) || next.is("x") || next.is("blo") || next.is("flo") ||
            is_opener(next) || is_noun(next.text))
            return true;
        const bool place = next.is("in") && at + 2 < tokens.size() &&
                           (tokens[at + 2].is("each") || tokens[at + 2].is("every"));
        return place || is_round_word(next.text) ||
               (next.is("more") && at + 2 < tokens.size() && is_round_word(tokens[at + 2].text));
    }
    return is_one_of(first.text, work_words);
}

// "total: 18)", "st 18)", "you now have 18 sts)"
[[nodiscard]] static bool says_total(std::span<const Token> tokens) {
    static constexpr auto words = std::to_array<std::string_view>(
        {"total", "of", "sts", "stitches", "st", ":", "=", "you", "now", "have", "count", "should"});
    std::size_t at = 0;
    while (at < tokens.size() && is_one_of(tokens[at].text, words)) ++at;
    return at > 0 && at < tokens.size() && tokens[at].kind == TokenKind::number;
}

bool has_count(std::span<const Token> tokens) {
    for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
        if (is_opener(tokens[i]) && says_total(tokens.subspan(i + 1))) return true;
        if (tokens[i + 1].kind != TokenKind::number) continue;
        const bool ends = i + 2 >= tokens.size();
        if (is_opener(tokens[i])) {
            std::size_t at = i + 2;
            while (at < tokens.size() && !is_closer(tokens[at]) && at < i + 6) ++at;
            const bool closed = at < tokens.size() && is_closer(tokens[at]);
            const bool short_count = at == i + 2 || is_noun(tokens[i + 2].text) ||
                                     (at == i + 3 && tokens[i + 2].kind == TokenKind::word &&
                                      !tokens[i + 2].is("x") && !tokens[i + 2].is("times"));
            const bool times_follow =
                at + 1 < tokens.size() &&
                (tokens[at + 1].is("x") || tokens[at + 1].is("in") || tokens[at + 1].is("into"));
            if (closed && short_count && !times_follow) return true;
        } else if (tokens[i].is("-") || tokens[i].is("=") || tokens[i].is("|")) {
            if (ends || is_noun(tokens[i + 2].text)) return true;
        } else if (!ends && is_noun(tokens[i + 2].text) && i + 3 >= tokens.size() &&
                   (tokens[i].is(".") || tokens[i].is(":"))) {
            return true;
        }
    }
    return false;
}

}  // namespace roundwright
