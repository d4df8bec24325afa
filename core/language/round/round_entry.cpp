#include "core/language/round/round_entry.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <tuple>

#include "core/base/limits.h"

namespace roundwright {

namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);
constexpr int most_rounds = static_cast<int>(max_rounds_per_piece);
constexpr std::int64_t beyond_all = 1'000'000'000;

enum class Sign { digit, plus, minus, equals, times, separator, other, end };

/// One code point of the text.
struct Character {
    Sign sign = Sign::other;
    int digit = 0;
    std::size_t bytes = 1;
};

std::size_t bytes_of_code_point(unsigned char first) {
    if (first < 0xC0) return 1;
    if (first < 0xE0) return 2;
    return first < 0xF0 ? 3 : 4;
}

Character ascii(char c) {
    if (c >= '0' && c <= '9') return {Sign::digit, c - '0', 1};
    switch (c) {
        case '+':
            return {Sign::plus, 0, 1};
        case '-':
            return {Sign::minus, 0, 1};
        case '=':
            return {Sign::equals, 0, 1};
        case 'x':
        case 'X':
        case '*':
            return {Sign::times, 0, 1};
        case ',':
        case ';':
        case ' ':
        case '\t':
        case '\r':
        case '\n':
            return {Sign::separator, 0, 1};
        default:
            return {Sign::other, 0, 1};
    }
}

Character character_at(std::string_view text) {
    if (text.empty()) return {Sign::end, 0, 0};
    if (static_cast<unsigned char>(text[0]) < 0x80) return ascii(text[0]);
    const std::size_t bytes = std::min(bytes_of_code_point(static_cast<unsigned char>(text[0])), text.size());
    const std::string_view sign = text.substr(0, bytes);
    if (sign == "\xC3\x97") return {Sign::times, 0, bytes};      // U+00D7
    if (sign == "\xE2\x88\x92") return {Sign::minus, 0, bytes};  // U+2212
    if (sign == "\xE2\x80\x93") return {Sign::minus, 0, bytes};  // U+2013
    if (sign == "\xC2\xA0") return {Sign::separator, 0, bytes};  // U+00A0
    return {Sign::other, 0, bytes};
}

/// A count entry as it stands in a text; its numbers are not held to any limit yet.
struct Item {
    using Kind = CountEntry::Kind;
    Kind kind = Kind::count;
    std::int64_t number = 0;
    std::int64_t times = 1;
    TextSpan where;
};

class Parser {
  public:
    Parser(std::string_view text, const EntryContext& context)
        : text_(text), context_(context), below_(context.below) {}

    RoundEntry parse() {
        for (skip_separators(); sign() != Sign::end; skip_separators()) {
            start_ = here_;
            if (const auto item = read_item()) add(*item);
        }
        return std::move(entry_);
    }

    /// The one item that the text is; nothing if there is anything besides.
    std::optional<Item> parse_one() {
        skip_spaces();
        start_ = here_;
        const auto item = read_item();
        skip_spaces();
        return item && sign() == Sign::end ? item : std::nullopt;
    }

  private:
    [[nodiscard]] Sign sign() const { return character_at(text_.substr(at_)).sign; }

    void step() {
        const bool line_end = text_[at_] == '\n';
        at_ += character_at(text_.substr(at_)).bytes;
        if (line_end)
            here_ = {here_.line + 1, 1, 0};
        else
            ++here_.column;
    }

    void skip_separators() {
        while (sign() == Sign::separator) step();
    }

    void skip_spaces() {
        while (sign() == Sign::separator && text_[at_] != ',' && text_[at_] != ';' && text_[at_] != '\n')
            step();
    }

    /// The place from where the item began to here; at least one character long.
    [[nodiscard]] TextSpan span() const {
        return {start_.line, start_.column, std::max(1, here_.column - start_.column)};
    }

    void note(EntryProblemCode code, TextSpan where, int number = 0) {
        entry_.problems.push_back({code, where, number});
    }

    /// Notes a problem with the next character and passes over the rest of the item.
    std::nullopt_t problem_here(EntryProblemCode code) {
        note(code, {here_.line, here_.column, sign() == Sign::end ? 0 : 1});
        while (sign() != Sign::separator && sign() != Sign::end) step();
        return std::nullopt;
    }

    std::optional<std::int64_t> read_number() {
        if (sign() != Sign::digit) return std::nullopt;
        std::int64_t number = 0;
        for (; sign() == Sign::digit; step()) {
            number = std::min(beyond_all, number * 10 + character_at(text_.substr(at_)).digit);
        }
        return number;
    }

    std::optional<Item> read_item() {
        Item item;
        const Sign first = sign();
        if (first != Sign::digit) item.kind = Item::Kind::change;
        if (first == Sign::plus || first == Sign::minus || first == Sign::equals) step();
        if (first != Sign::equals) {
            if (first != Sign::digit) skip_spaces();
            const auto number = read_number();
            if (!number) return problem_here(EntryProblemCode::expected_count);
            item.number = first == Sign::minus ? -*number : *number;
        }
        return read_repeat(item);
    }

    std::optional<Item> read_repeat(Item item) {
        item.where = span();
        const auto back = std::pair(at_, here_);
        skip_spaces();
        if (sign() != Sign::times) {
            std::tie(at_, here_) = back;
        } else {
            step();
            skip_spaces();
            const auto times = read_number();
            if (!times || *times == 0) return problem_here(EntryProblemCode::expected_repeat);
            item.times = *times;
            item.where = span();
        }
        if (sign() != Sign::separator && sign() != Sign::end) {
            return problem_here(EntryProblemCode::expected_separator);
        }
        return item;
    }

    void add(const Item& item) {
        const bool on_a_ring = item.kind == Item::Kind::change && below_ == 0;
        if (on_a_ring && !entry_.problems.empty()) return;
        if (on_a_ring) return note(EntryProblemCode::nothing_below, item.where);
        for (std::int64_t i = 0; i < item.times; ++i) {
            const std::int64_t count = item.kind == Item::Kind::change ? below_ + item.number : item.number;
            if (count < 1) return note(EntryProblemCode::count_too_small, item.where, below_);
            if (count > most_stitches)
                return note(EntryProblemCode::count_too_large, item.where, most_stitches);
            if (context_.rounds_there + entry_.rounds.size() >= max_rounds_per_piece) {
                return note(EntryProblemCode::too_many_rounds, item.where, most_rounds);
            }
            below_ = static_cast<int>(count);
            entry_.rounds.push_back(round_of(below_));
        }
    }

    [[nodiscard]] Round round_of(int stitches) const {
        Round round;
        WorkedEvenly even;
        if (const auto* worked = std::get_if<WorkedEvenly>(&context_.like.working)) even = *worked;
        even.stitches = stitches;
        round.working = even;
        round.yarn = context_.like.yarn;
        return round;
    }

    std::string_view text_;
    const EntryContext& context_;
    RoundEntry entry_;
    int below_;
    std::size_t at_ = 0;
    TextSpan here_{1, 1, 0};
    TextSpan start_;
};

}  // namespace

std::optional<CountEntry> parse_count_entry(std::string_view utf8) {
    const EntryContext none;
    const auto item = Parser(utf8, none).parse_one();
    if (!item || std::abs(item->number) > most_stitches || item->times > most_rounds) return std::nullopt;
    if (item->kind == CountEntry::Kind::count && item->number < 1) return std::nullopt;
    return CountEntry{item->kind, static_cast<int>(item->number), static_cast<int>(item->times)};
}

RoundEntry parse_round_entry(std::string_view utf8, const EntryContext& context) {
    return Parser(utf8, context).parse();
}

bool looks_like_round_entry(std::string_view utf8) {
    while (!utf8.empty()) {
        const Character character = character_at(utf8);
        if (character.sign == Sign::other) return false;
        utf8.remove_prefix(character.bytes);
    }
    return true;
}

std::string write_round_entry(std::span<const int> counts) {
    std::string text;
    for (auto count = counts.begin(); count != counts.end();) {
        const auto next = std::find_if(count, counts.end(), [count](int other) { return other != *count; });
        if (!text.empty()) text += ", ";
        text += std::to_string(*count);
        if (next - count > 1) text += "x" + std::to_string(next - count);
        count = next;
    }
    return text;
}

}  // namespace roundwright
