#include "core/language/pattern/round_header.h"

#include <algorithm>
#include <array>

#include "core/base/limits.h"
#include "core/language/pattern/unread_work.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

/// More rounds than a piece can have are more than enough to say so.
constexpr int most_rounds_said = static_cast<int>(max_rounds_per_piece) + 1;

// "R9 -> R10", "R6 > R8": only between two rounds.
bool is_arrow(const Token& token) { return token.is("=") || token.is(">"); }

bool is_range_sign(const Token& token) {
    return token.is("-") || token.is("to") || token.is("through") || token.is("thru") || token.is("&") ||
           token.is("and") || token.is(",") || token.is("/") || token.is("+") || token.is("~") ||
           token.is("until") || token.is("till") || token.is("up") || is_arrow(token);
}
bool is_span_sign(const Token& token) {
    return token.is("-") || token.is("to") || token.is("through") || token.is("thru") || token.is("~") ||
           token.is("until") || token.is("till") || token.is(".") || token.is("up") || is_arrow(token);
}
bool is_header_end(const Token& token) {
    return token.is(":") || token.is(".") || token.is(")") || token.is("-") || token.is("=") ||
           token.is("]") || token.is("|") || token.is(";") || token.is("/");
}

// Points that stand for what is left out: "..", "...", or one sign. How many tokens.
std::size_t dots_at(Tokens tokens, std::size_t at) {
    std::size_t end = at;
    while (end < tokens.size() && tokens[end].is(".")) ++end;
    return end - at > 1 || (end > at && tokens[at].raw.size() > 1) ? end - at : 0;
}

// "R3+:", "R3 and on:", "Row 4 to ...:"
constexpr auto open_ends = std::to_array<std::string_view>(
    {"+", "and on", "and up", "and so on", "onwards", "onward", "and following", "ff", "to ?", "to end",
     "to the end", "until end", "and onwards", "upwards"});

bool is_start_word(const Token& token) {
    return token.is("start") || token.is("begin") || token.is("beginning") || token.is("base") ||
           token.is("foundation");
}

}  // namespace

bool RoundHeaderReader::read(PatternLine& line) {
    while (at_ < tokens_.size() && tokens_[at_].is("**")) ++at_;
    const std::size_t start = start_ = at_;
    if (!(words_first(line) || ordinal_first(line) || next_round(line) || number_first(line) ||
          start_first(line) || bare_number(line) || plain_number(line) || roman_number(line)))
        return false;
    const Token& last = tokens_[std::max(last_, start)];
    line.header = tokens_[start].where;
    line.header.length = last.where.column + last.where.length - line.header.column;
    line.kind = LineKind::round;
    return true;
}

// "Rnd 3:", "R3.", "Rnds 6-10:", "Round #4 -", "Rows 2 and 3:"
bool RoundHeaderReader::words_first(PatternLine& line) {
    const bool bracket = at_ < tokens_.size() && is_opener(tokens_[at_]) && is_round_here(1);
    if (bracket) ++at_;
    if (!is_round_here()) return back();
    const bool bare_r = is("r");
    line.row = is("row") || is("rows");
    several_ = tokens_[at_].text.size() > 1 && tokens_[at_].text.back() == 's';
    ++at_;
    while (is(".") || is("#") || is("_") || is("no") || is("nr") || (is("-") && is_number(1))) ++at_;
    if (!is_number() || (bare_r && tokens_[at_].number > static_cast<int>(max_rounds_per_piece)))
        return back();
    if (!numbers(line)) return back();
    if (bracket && !(at_ < tokens_.size() && is_closer(tokens_[at_]))) return back();
    if (bracket) ++at_;
    aside(line);
    if (!take_open_end(line) && !ends() && !bracket) return back();
    rounds_aside(line);
    skip_marks();
    return true;
}

bool RoundHeaderReader::take_open_words(PatternLine& line) {
    static constexpr Phrases phrases(open_ends);
    auto end = static_cast<std::size_t>(match_any(tokens_.subspan(std::min(at_, tokens_.size())), phrases));
    if (end == 0 && (is("to") || is("-")) && dots_at(tokens_, at_ + 1) > 0) end = 1;
    if (end == 0) return false;
    while (is(".", end) || is("?", end)) ++end;
    const bool sign = is(":", end) || is("-", end);
    if (!sign && !looks_like_work(tokens_.subspan(std::min(at_ + end, tokens_.size())), terms_)) return false;
    line.open_end = true;
    at_ += end + (sign ? 1 : 0);
    return true;
}

// "3-??", "3-?", "3-:", "3 - end": where the range ends is left to the maker.
bool RoundHeaderReader::take_open_end(PatternLine& line) {
    if (line.numbers.size() != 1 || line.numbers[0].size() != 1) return false;
    if (take_open_words(line)) return true;
    if (!is("-")) return false;
    std::size_t ahead = 1;
    while (is("?", ahead)) ++ahead;
    const bool asks = ahead > 1 || is("end", ahead) || is("x", ahead) || is("n", ahead);
    if (is("end", ahead) || ((is("x", ahead) || is("n", ahead)) && is(":", ahead + 1))) ++ahead;
    const bool ends_here = is(":", ahead) || is(".", ahead);
    if (!ends_here || (!asks && !is(":", 1))) return false;
    line.open_end = true;
    at_ += ahead + 1;
    return true;
}

// "4 row: ...", "4. rnd - ...", "3-5 rows: ...". "3 rounds of sc" numbers none.
bool RoundHeaderReader::number_first(PatternLine& line) {
    if (!is_number() || tokens_[at_].raw[0] < '0' || tokens_[at_].raw[0] > '9' || !numbers(line))
        return back();
    if (is(".") && is_round_here(1)) ++at_;
    if (!is_round_here() || is("r")) return back();
    const bool plural = tokens_[at_].text.back() == 's';
    if (plural && line.rounds < 2) return back();
    line.row = is("row") || is("rows");
    last_ = at_++;
    const bool marked = at_ < tokens_.size() && is_header_end(tokens_[at_]);
    const bool works = at_ < tokens_.size() && looks_like_work(tokens_.subspan(at_), terms_);
    if (!marked && !works) return back();
    if (marked) ends();
    rounds_aside(line);
    skip_marks();
    return true;
}

// "Start: 6 sc in MR", "Foundation round: ...": the first round, without a number.
bool RoundHeaderReader::start_first(PatternLine& line) {
    if (at_ >= tokens_.size() || !is_start_word(tokens_[at_])) return false;
    const std::size_t colon = is_round_here(1) ? 2 : 1;
    if (!is(":", colon)) return false;
    line.row = is("row", 1);
    last_ = at_ + colon - 1;
    at_ += colon + 1;
    line.starts = true;
    return looks_like_work(tokens_.subspan(at_), terms_) || back();
}

// "3 sc in each st (12)" as round 3. A column of a table is as good as a sign.
bool RoundHeaderReader::plain_number(PatternLine& line) {
    const bool circled = is_number() && (static_cast<unsigned char>(tokens_[at_].raw[0]) & 0x80u) != 0;
    const bool digits = is_number() && tokens_[at_].raw[0] >= '0' && tokens_[at_].raw[0] <= '9';
    if (!(circled || digits) || !numbers(line)) return back();
    const bool column = circled || (at_ < tokens_.size() && tokens_[at_].tabbed);
    const bool next = line.first_number == last_number_ + 1;
    // A table's columns may be cut by commas: 2,"inc x 6",12
    const bool comma = next && (plain_ || last_number_ == 0) && is(",") && at_ + 1 < tokens_.size() &&
                       !tokens_[at_].spaced && !tokens_[at_ + 1].spaced && is("\"", 1);
    if (comma) ++at_;
    const Tokens rest = tokens_.subspan(at_);
    if (rest.empty() || !(column || (next && (plain_ || last_number_ == 0)))) return back();
    const bool works = looks_like_work(rest, terms_) || (next && work_sign(rest, terms_) == WorkSign::work);
    if (!works) return back();
    if (!column && !comma && line.first_number == 1 && rest[0].kind != TokenKind::number &&
        !rest[0].is("mr") && !rest[0].is("magic"))
        return back();
    line.bare = line.plain = true;
    return true;
}

// "III. (sc, inc) x 6": only as the next round, since single letters name stitches too.
bool RoundHeaderReader::roman_number(PatternLine& line) {
    static constexpr auto numerals = std::to_array<std::string_view>(
        {"I",  "II",  "III",  "IV",  "V",  "VI",  "VII",  "VIII",  "IX",  "X",
         "XI", "XII", "XIII", "XIV", "XV", "XVI", "XVII", "XVIII", "XIX", "XX"});
    if (at_ + 1 >= tokens_.size() || last_number_ < 0) return false;
    const auto found = std::find(numerals.begin(), numerals.end(), tokens_[at_].raw);
    const int number = static_cast<int>(found - numerals.begin()) + 1;
    if (found == numerals.end() || number != last_number_ + 1) return false;
    if (!(is(".", 1) || is(")", 1) || is(":", 1))) return false;
    if (!looks_like_work(tokens_.subspan(at_ + 2), terms_)) return false;
    line.numbers = {{number, number}};
    line.first_number = line.last_number = number;
    line.rounds = 1;
    line.bare = true;
    last_ = at_ + 1;
    at_ += 2;
    return true;
}

// "1st rnd:", "Third round:"
bool RoundHeaderReader::ordinal_first(PatternLine& line) {
    if (at_ >= tokens_.size() || tokens_[at_].kind != TokenKind::ordinal || !is_round_here(1)) return false;
    line.row = is("row", 1);
    line.first_number = line.last_number = tokens_[at_].number;
    line.numbers = {{tokens_[at_].number, tokens_[at_].number}};
    last_ = at_ + 1;
    at_ += 2;
    return ends() || back();
}

// "Next rnd:", "Next 5 rnds:", "Last rnd:"
bool RoundHeaderReader::next_round(PatternLine& line) {
    const std::size_t start = at_;
    if (is("for")) ++at_;
    if (is("the")) ++at_;
    if (!is("next") && !is("following") && !is("last") && !is("final")) return at_ = start, false;
    const bool number = is_number(1);
    if (!is_round_here(number ? 2 : 1)) return at_ = start, false;
    line.rounds = number ? std::max(tokens_[at_ + 1].number, 1) : 1;
    line.row = is("row", number ? 2 : 1);
    last_ = at_ + (number ? 2 : 1);
    at_ = last_ + 1;
    return (is(":") || is("-") || is(".")) && (ends() || back());
}

// "3: ...", "3. ...", "3) ...", "(3) ...", "6-10: ..."
bool RoundHeaderReader::bare_number(PatternLine& line) {
    const bool bracket = (is("(") || is("[")) && is_number(1);
    if (bracket) ++at_;
    if (!is_number() || !numbers(line)) return back();
    if (bracket && !(is(")") || is("]"))) return back();
    if (take_open_end(line)) return looks_like_work(tokens_.subspan(at_), terms_) || back();
    if (!(at_ < tokens_.size() && is_header_end(tokens_[at_]))) return back();
    ++at_;
    while (is("**") || is(":")) ++at_;
    rounds_aside(line);
    skip_marks();
    line.bare = true;
    const Tokens rest = tokens_.subspan(at_);
    const bool next = last_number_ > 0 && line.first_number == last_number_ + 1 &&
                      work_sign(rest, terms_) == WorkSign::work;
    return (before_remarks_ && !rest.empty()) || next || looks_like_work(rest, terms_) || back();
}

bool RoundHeaderReader::numbers(PatternLine& line) {
    line.numbers = {{tokens_[at_].number, tokens_[at_].number}};
    line.first_number = line.last_number = tokens_[at_].number;
    last_ = at_++;
    std::size_t ahead = 0;
    bool span = false;
    while (line.numbers.size() < max_rounds_per_piece && skip_to_next_number(ahead, span)) {
        last_ = at_ + ahead;
        add_number(line, tokens_[last_].number, span);
        at_ = last_ + 1;
    }
    if (line.numbers.back().size() > 1 && (is("inclusive") || is("incl"))) ++at_;
    line.rounds = 0;
    for (const RoundRange& range : line.numbers) line.rounds += std::min(range.size(), most_rounds_said);
    return true;
}

// The next number of a range or a list, `ahead` of here: "- 8", "to R5", ". - 8", "and 11".
bool RoundHeaderReader::skip_to_next_number(std::size_t& ahead, bool& span) const {
    const std::size_t dots = dots_at(tokens_, at_);
    const bool point = is(".") && at_ + 1 < tokens_.size() && is_range_sign(tokens_[at_ + 1]);
    const std::size_t sign = dots > 0 ? dots - 1 : point ? 1 : 0;
    if (dots == 0 && is(".") && sign == 0) return false;
    if (at_ + sign + 1 >= tokens_.size() || (dots == 0 && !is_range_sign(tokens_[at_ + sign]))) return false;
    span = is_span_sign(tokens_[at_ + sign]);
    ahead = sign + 1;
    const bool arrow = dots == 0 && is_arrow(tokens_[at_ + sign]);
    if (is("up", sign)) {
        if (!is("to", ahead)) return false;
        while (is("to", ahead) || is("and", ahead) || is("including", ahead)) ++ahead;
    }
    bool named = false;
    for (; is_round_here(ahead) || is(".", ahead) || is("-", ahead) || is("#", ahead); ++ahead)
        named = named || is_round_here(ahead);
    if (!is_number(ahead) || (arrow && !named)) return false;
    const bool pointed = point && !is("-", 1) && ahead == sign + 1;
    if (pointed && !is(".", ahead + 1)) return false;  // "3. + 4 sc"
    const bool tight = tight_is_range_ && is("-") && !tokens_[at_].spaced && ahead == 1 &&
                       at_ + 1 < tokens_.size() && !tokens_[at_ + 1].spaced;
    const bool column = at_ + ahead + 1 < tokens_.size() && tokens_[at_ + ahead + 1].tabbed;
    const bool plainly_a_range =
        named || column || tight || dots > 0 || pointed || (span && (several_ || !is("-", sign)));
    return plainly_a_range || !starts_stitches(ahead);
}

// "Rnd 3 - 12 sc": the second number begins the stitches.
bool RoundHeaderReader::starts_stitches(std::size_t ahead) const {
    const Tokens after = tokens_.subspan(std::min(at_ + ahead + 1, tokens_.size()));
    return match_name(after, terms_) || (!after.empty() && (after[0].is("blo") || after[0].is("flo")));
}

void RoundHeaderReader::add_number(PatternLine& line, int next, bool span) {
    RoundRange& last = line.numbers.back();
    if (next > last.last && (span || next == last.last + 1))
        last.last = next;
    else
        line.numbers.push_back({next, next});
    line.last_number = next;
}

// "(RS)", "(5 rounds)" between number and colon
void RoundHeaderReader::aside(PatternLine& line) {
    if (!is("(") && !is("[")) return;
    std::size_t ahead = 1;
    constexpr std::size_t longest = 6;
    while (ahead < longest && at_ + ahead < tokens_.size() && !is_closer(tokens_[at_ + ahead])) ++ahead;
    if (at_ + ahead + 1 >= tokens_.size() || !is_closer(tokens_[at_ + ahead]) ||
        !tokens_[at_ + ahead + 1].is(":"))
        return;
    if (match_name(tokens_.subspan(at_ + 1), terms_)) return;
    if (is_number(1) && is_round_here(2)) return rounds_aside(line);
    const Tokens inside = tokens_.subspan(at_, ahead + 1);
    if (has_count(inside)) count_ = inside;
    at_ += ahead + 1;
}

// "(3 rows)": how many rounds the numbers before it are.
void RoundHeaderReader::rounds_aside(PatternLine& line) {
    if (at_ + 3 >= tokens_.size() || !is_opener(tokens_[at_]) || !is_number(1) || !is_round_here(2) ||
        !is_closer(tokens_[at_ + 3]))
        return;
    line.rounds_said = tokens_[at_ + 1].number;
    if (line.rounds <= 1) line.rounds = std::max(line.rounds_said, 1);
    at_ += 4;
}

void RoundHeaderReader::skip_marks() {
    while (is(":") || is("-") || is(".") || is("=") || is("|") || is(";")) ++at_;
}

bool RoundHeaderReader::ends() {
    bool sign = false;
    while (at_ < tokens_.size() && (is_header_end(tokens_[at_]) || is("**") || is(","))) {
        if (is("-") && is_number(1) && sign) break;
        sign = true;
        ++at_;
    }
    return sign || at_ >= tokens_.size() || looks_like_work(tokens_.subspan(at_), terms_);
}

}  // namespace roundwright
