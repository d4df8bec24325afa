#include "core/language/pattern/said_numbers.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

namespace roundwright {
namespace {

/// A word, a number with what is written against it ("5th"), or a sign.
struct Scrap {
    std::size_t at = 0;
    std::size_t length = 0;
    std::string text;  ///< in lower case; of a number without its digits
    int number = -1;

    [[nodiscard]] std::size_t end() const { return at + length; }
    [[nodiscard]] bool is_number() const { return number >= 0; }
};

constexpr auto round_words =
    std::to_array<std::string_view>({"round", "rounds", "rnd", "rnds", "row", "rows"});
constexpr auto stitch_words = std::to_array<std::string_view>({"stitch", "stitches", "st", "sts"});
constexpr auto words_of_all =
    std::to_array<std::string_view>({"the", "all", "its", "these", "those", "their"});
constexpr auto words_between =
    std::to_array<std::string_view>({"and", "to", "through", "or", "-", ",", "&", "/", "\xE2\x80\x93"});
constexpr auto endings_of_order = std::to_array<std::string_view>({"st", "nd", "rd", "th"});

template <std::size_t count>
bool is_one_of(std::string_view word, const std::array<std::string_view, count>& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }
/// Dashes and quotation marks beyond ASCII (U+2000 to U+203F).
bool is_sign_at(std::string_view text, std::size_t at) { return text.substr(at, 2) == "\xE2\x80"; }
bool is_letter_at(std::string_view text, std::size_t at) {
    const char c = text[at];
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || ((c & '\x80') != 0 && !is_sign_at(text, at));
}
bool is_space(char c) { return c == ' ' || c == '\t' || c == '\r'; }

std::string lowered(std::string_view text) {
    std::string lower(text);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return lower;
}

std::vector<Scrap> scraps_of(std::string_view text) {
    std::vector<Scrap> scraps;
    std::size_t at = 0;
    const auto end_of = [&](std::size_t from, auto&& belongs) {
        while (from < text.size() && belongs(from)) ++from;
        return from;
    };
    while (at < text.size()) {
        if (is_space(text[at])) {
            ++at;
            continue;
        }
        Scrap scrap;
        scrap.at = at;
        const std::size_t digits = end_of(at, [&](std::size_t i) { return is_digit(text[i]); });
        std::size_t end = end_of(digits, [&](std::size_t i) { return is_letter_at(text, i); });
        if (end == at) end += is_sign_at(text, at) ? std::min<std::size_t>(3, text.size() - at) : 1;
        if (digits > at) {
            const auto read = std::from_chars(text.data() + at, text.data() + digits, scrap.number);
            if (read.ec != std::errc{}) scrap.number = -1;
        }
        scrap.length = end - at;
        scrap.text = lowered(text.substr(digits, end - digits));
        scraps.push_back(std::move(scrap));
        at = end;
    }
    return scraps;
}

SaidNumbers::Number number_of(const Scrap& scrap) {
    return {scrap.at, scrap.length - scrap.text.size(), scrap.number};
}

bool is_plain_number(const Scrap& scrap) { return scrap.is_number() && scrap.text.empty(); }

class Scanner {
  public:
    explicit Scanner(std::string_view text) : scraps_(scraps_of(text)) {}

    std::vector<SaidNumbers> scan() {
        std::vector<SaidNumbers> all;
        for (at_ = 0; at_ < scraps_.size();) {
            auto found = rounds();
            if (!found) found = round_by_order();
            if (!found) found = stitches();
            if (found)
                all.push_back(std::move(*found));
            else
                ++at_;
        }
        return all;
    }

  private:
    [[nodiscard]] bool has(std::size_t i) const { return i < scraps_.size(); }

    [[nodiscard]] SaidNumbers phrase(SaidNumbers::Unit unit, std::size_t first, std::size_t last) const {
        SaidNumbers said;
        said.unit = unit;
        said.at = scraps_[first].at;
        said.length = scraps_[last].end() - said.at;
        for (std::size_t i = first; i <= last; ++i)
            if (scraps_[i].is_number()) said.numbers.push_back(number_of(scraps_[i]));
        return said;
    }

    // "rounds 19 and 22", "round 19 and round 22", "Rnds 3-5"
    std::optional<SaidNumbers> rounds() {
        const std::size_t first = at_;
        if (!is_one_of(scraps_[first].text, round_words) || !has(first + 1) ||
            !is_plain_number(scraps_[first + 1]))
            return std::nullopt;
        std::size_t last = first + 1;
        while (has(last + 2) && is_one_of(scraps_[last + 1].text, words_between)) {
            std::size_t next = last + 2;
            if (is_one_of(scraps_[next].text, round_words)) ++next;
            if (!has(next) || !is_plain_number(scraps_[next]) || counts_stitches(next)) break;
            last = next;
        }
        at_ = last + 1;
        return phrase(SaidNumbers::Unit::rounds, first, last);
    }

    // "round 4, 6 stitches apart": the 6 is none of the rounds.
    [[nodiscard]] bool counts_stitches(std::size_t i) const {
        return has(i + 1) && !scraps_[i + 1].is_number() && is_one_of(scraps_[i + 1].text, stitch_words);
    }

    // "the 5th round"
    std::optional<SaidNumbers> round_by_order() {
        const Scrap& scrap = scraps_[at_];
        if (!scrap.is_number() || !is_one_of(scrap.text, endings_of_order) || !has(at_ + 1) ||
            !is_one_of(scraps_[at_ + 1].text, round_words))
            return std::nullopt;
        at_ += 2;
        return phrase(SaidNumbers::Unit::rounds, at_ - 2, at_ - 1);
    }

    // "the 15 stitches", "all 30 open sts"
    std::optional<SaidNumbers> stitches() {
        const std::size_t first = at_;
        if (!is_one_of(scraps_[first].text, words_of_all) || !has(first + 2) ||
            !is_plain_number(scraps_[first + 1]))
            return std::nullopt;
        std::size_t last = first + 2;
        if (has(last + 1) && !is_one_of(scraps_[last].text, stitch_words)) ++last;
        if (!is_one_of(scraps_[last].text, stitch_words) || scraps_[last].is_number()) return std::nullopt;
        at_ = last + 1;
        return phrase(SaidNumbers::Unit::stitches, first, last);
    }

    std::vector<Scrap> scraps_;
    std::size_t at_ = 0;
};

std::string_view ending_of(int number) {
    if (number / 10 % 10 == 1) return "th";
    return number % 10 == 1 ? "st" : number % 10 == 2 ? "nd" : number % 10 == 3 ? "rd" : "th";
}

}  // namespace

std::vector<SaidNumbers> said_numbers(std::string_view utf8) { return Scanner(utf8).scan(); }

std::string said_with(std::string_view utf8, const SaidNumbers& said, const std::vector<int>& numbers) {
    std::string phrase;
    std::size_t from = said.at;
    for (std::size_t i = 0; i < std::min(numbers.size(), said.numbers.size()); ++i) {
        const SaidNumbers::Number& old = said.numbers[i];
        phrase += utf8.substr(from, old.at - from);
        phrase += std::to_string(numbers[i]);
        from = old.at + old.length;
        const std::string after = lowered(utf8.substr(from, 2));
        if (!is_one_of(after, endings_of_order)) continue;
        phrase += ending_of(numbers[i]);
        from += 2;
    }
    return phrase += utf8.substr(from, said.at + said.length - from);
}

}  // namespace roundwright
