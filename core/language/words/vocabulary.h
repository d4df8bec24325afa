#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"
#include "core/stitches/stitch.h"

namespace roundwright {

/// What a name of the trade stands for.
enum class NameKind : std::uint8_t { stitch, increase, decrease, invisible_decrease, skipping };

struct Name {
    NameKind what = NameKind::stitch;
    StitchKind stitch = StitchKind::single_crochet;
    bool of_its_own = true;    ///< false: a near relation (a popcorn, a puff) read as the stitch
    bool other_terms = false;  ///< only the other terms have this name
    int length = 1;            ///< tokens
};

/// The longest name that stands at the front of `tokens`, abbreviated or in full, singular or plural. Names
/// that only the other terms have ("hdc" in UK terms) are found too, and marked. Source of the abbreviations:
/// Craft Yarn Council, Standards and Guidelines for Crochet and Knitting; "invdec", "MR" and their like are
/// trade use.
[[nodiscard]] std::optional<Name> match_name(std::span<const Token> tokens, Terms terms);

/// Tokens of the front of `tokens` that are `words` (one string, spaces between); 0 when they are not.
/// Hyphens and full points between the words do not matter.
[[nodiscard]] int match_words(std::span<const Token> tokens, std::string_view words);

/// Phrases of one or more words, with the letters that any of them begins with: most tokens begin none, and
/// every token is asked for many lists. The array must live as long as the program.
class Phrases {
  public:
    template <std::size_t count>
    consteval Phrases(const std::array<std::string_view, count>& phrases) : phrases_(phrases) {
        for (const std::string_view phrase : phrases) firsts_ |= bit(phrase[0]);
    }
    [[nodiscard]] constexpr bool may_begin(char first) const { return (firsts_ & bit(first)) != 0; }
    [[nodiscard]] constexpr std::span<const std::string_view> all() const { return phrases_; }

  private:
    /// Letters have a bit each, shared with other signs: "a" and "!" are 32 apart.
    static constexpr std::uint32_t bit(char c) { return 1u << (static_cast<unsigned char>(c) & 31u); }

    std::span<const std::string_view> phrases_;
    std::uint32_t firsts_ = 0;
};

/// The longest match of any of them.
[[nodiscard]] int match_any(std::span<const Token> tokens, const Phrases& phrases);

/// Every word the reader knows, for mending a slip of the pen and for completion.
[[nodiscard]] std::span<const std::string_view> known_words(Terms terms);

/// Whether the reader knows a word that names no stitch: "next", "around", ...
[[nodiscard]] bool is_plain_word(std::string_view word);

/// The known word nearest to `word` by one or two slips (insert, drop, change, swap); empty when none is
/// near.
[[nodiscard]] std::string_view nearest_known_word(std::string_view word, Terms terms);

}  // namespace roundwright
