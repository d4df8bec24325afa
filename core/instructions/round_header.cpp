#include "core/instructions/round_header.h"

#include <algorithm>

#include "core/base/limits.h"
#include "core/instructions/token_cursor.h"

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
    ++at_;
    while (is(".") || is("#") || (is("-") && is_number(1))) ++at_;
    if (!is_number() || (bare_r && tokens_[at_].number > static_cast<int>(max_rounds_per_piece)))
        return back();
    if (!numbers(line)) return back();
    aside(line);
    return ends() || back();
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

// "Next rnd:", "Next 5 rnds:"
bool RoundHeaderReader::next_round(PatternLine& line) {
    if (!is("next") && !is("following")) return false;
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
    const Tokens rest = tokens_.subspan(at_);
    return looks_like_work(rest, terms_) || back();
}

bool RoundHeaderReader::numbers(PatternLine& line) {
    line.numbers = {{tokens_[at_].number, tokens_[at_].number}};
    line.first_number = line.last_number = tokens_[at_].number;
    last_ = at_++;
    while (at_ + 1 < tokens_.size() && is_range_sign(tokens_[at_]) &&
           line.numbers.size() < max_rounds_per_piece) {
        std::size_t ahead = 1;
        while (is_round_here(ahead) || is(".", ahead) || is("-", ahead)) ++ahead;
        if (!is_number(ahead) || starts_stitches(ahead)) break;
        const bool span = is_span_sign(tokens_[at_]);
        last_ = at_ + ahead;
        add_number(line, tokens_[last_].number, span);
        at_ = last_ + 1;
    }
    line.rounds = 0;
    for (const RoundRange& range : line.numbers) line.rounds += std::min(range.size(), most_rounds_said);
    return true;
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
    if (is_number(1) && is_round_here(2)) line.rounds = std::max(line.rounds, tokens_[at_ + 1].number);
    at_ += ahead + 1;
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
