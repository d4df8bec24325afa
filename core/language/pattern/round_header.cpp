#include "core/language/pattern/round_header.h"

#include <algorithm>

#include "core/base/limits.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

/// More rounds than a piece can have are more than enough to say so.
constexpr int most_rounds_said = static_cast<int>(max_rounds_per_piece) + 1;

bool is_range_sign(const Token& token) {
    return token.is("-") || token.is("to") || token.is("through") || token.is("thru") || token.is("&") ||
           token.is("and") || token.is(",") || token.is("/") || token.is("+");
}
bool is_span_sign(const Token& token) {
    return token.is("-") || token.is("to") || token.is("through") || token.is("thru");
}
bool is_header_end(const Token& token) {
    return token.is(":") || token.is(".") || token.is(")") || token.is("-") || token.is("=") ||
           token.is("]") || token.is("|");
}

}  // namespace

bool RoundHeaderReader::read(PatternLine& line) {
    while (at_ < tokens_.size() && tokens_[at_].is("**")) ++at_;
    const std::size_t start = start_ = at_;
    if (!(words_first(line) || ordinal_first(line) || next_round(line) || bare_number(line))) return false;
    const Token& last = tokens_[std::max(last_, start)];
    line.header = tokens_[start].where;
    line.header.length = last.where.column + last.where.length - line.header.column;
    line.kind = LineKind::round;
    return true;
}

// "Rnd 3:", "R3.", "Rnds 6-10:", "Round #4 -", "Rows 2 and 3:"
bool RoundHeaderReader::words_first(PatternLine& line) {
    if (!is_round_here()) return false;
    const bool bare_r = is("r");
    line.row = is("row") || is("rows");
    several_ = tokens_[at_].text.size() > 1 && tokens_[at_].text.back() == 's';
    ++at_;
    while (is(".") || is("#") || (is("-") && is_number(1))) ++at_;
    if (!is_number() || (bare_r && tokens_[at_].number > static_cast<int>(max_rounds_per_piece)))
        return back();
    if (!numbers(line)) return back();
    aside(line);
    if (!ends()) return back();
    rounds_aside(line);
    skip_marks();
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
    if (!is("next") && !is("following") && !is("last") && !is("final")) return false;
    const bool number = is_number(1);
    if (!is_round_here(number ? 2 : 1)) return false;
    line.rounds = number ? std::max(tokens_[at_ + 1].number, 1) : 1;
    line.row = is("row", number ? 2 : 1);
    last_ = at_ + (number ? 2 : 1);
    at_ = last_ + 1;
    return (is(":") || is("-") || is(".")) && (ends() || back());
}

// "3: ...", "3. ...", "3) ...", "(3) ...", "6-10: ..."
bool RoundHeaderReader::bare_number(PatternLine& line) {
    const bool bracket = is("(") && is_number(1) && is(")", 2);
    if (bracket) ++at_;
    if (!is_number() || !numbers(line)) return back();
    if (!(at_ < tokens_.size() && is_header_end(tokens_[at_]))) return back();
    ++at_;
    while (is("**") || is(":")) ++at_;
    rounds_aside(line);
    skip_marks();
    line.bare = true;
    const Tokens rest = tokens_.subspan(at_);
    return (before_remarks_ && !rest.empty()) || looks_like_work(rest, terms_) || back();
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
    line.rounds = 0;
    for (const RoundRange& range : line.numbers) line.rounds += std::min(range.size(), most_rounds_said);
    return true;
}

// The next number of a range or a list, `ahead` of here: "- 8", "to R5", ". - 8", "and 11".
bool RoundHeaderReader::skip_to_next_number(std::size_t& ahead, bool& span) const {
    const std::size_t sign = is(".") && is("-", 1) ? 1 : 0;
    if (at_ + sign + 1 >= tokens_.size() || !is_range_sign(tokens_[at_ + sign])) return false;
    span = is_span_sign(tokens_[at_ + sign]);
    ahead = sign + 1;
    bool named = false;
    for (; is_round_here(ahead) || is(".", ahead) || is("-", ahead); ++ahead)
        named = named || is_round_here(ahead);
    if (!is_number(ahead)) return false;
    const bool plainly_a_range = named || (span && (several_ || !is("-", sign)));
    return plainly_a_range || !starts_stitches(ahead);
}

// "Rnd 3 - 12 sc": the second number begins the stitches.
bool RoundHeaderReader::starts_stitches(std::size_t ahead) const {
    return match_name(tokens_.subspan(std::min(at_ + ahead + 1, tokens_.size())), terms_).has_value();
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
    while (is(":") || is("-") || is(".")) ++at_;
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
