#pragma once

#include <cstdint>
#include <memory_resource>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/text_span.h"

namespace roundwright {

enum class TokenKind : std::uint8_t {
    word,     ///< letters, lower case
    number,   ///< digits or a number word ("six"); the largest is `largest_number`
    ordinal,  ///< "2nd", "second"
    mark,     ///< one sign, or "**"
};

inline constexpr int largest_number = 1'000'000'000;

/// A word, number or sign of a text. Dashes of every width read as "-", multiplication signs as "x", bullets
/// as a bullet, curly quotes as straight ones, arrows as "=", ligatures as their letters, numbers in a circle
/// as numbers, and letters of other alphabets as the Latin ones that they look like. Words and digits that
/// stand together ("sc2tog", "R3", "8inc") are split.
struct Token {
    TokenKind kind = TokenKind::mark;
    bool spaced = false;    ///< white space, or a line's start, before it
    bool tabbed = false;    ///< a tab before it: it begins a column of a table
    bool renamed = false;   ///< written in another language; `text` is English
    int number = 0;         ///< of a number or an ordinal
    std::string_view text;  ///< as it is read
    std::string_view raw;   ///< as it was written
    TextSpan where;

    bool is(std::string_view wanted) const { return text == wanted; }
};

/// One line of a text, without its line break.
struct SourceLine {
    std::string_view raw;
    std::vector<Token> tokens;
    int number = 1;
    bool too_long = false;  ///< longer than was asked for: it has no tokens
};

/// A text cut into lines and tokens. `source` must outlive it. Lines of more than `longest_line` bytes are
/// not cut into tokens.
class LexedText {
  public:
    explicit LexedText(std::string_view source, int first_line = 1,
                       std::size_t longest_line = std::string_view::npos);
    LexedText(const LexedText&) = delete;
    LexedText& operator=(const LexedText&) = delete;

    const std::vector<SourceLine>& lines() const { return lines_; }
    /// To read tokens as others ("X" as "sc" where the text says so).
    std::vector<SourceLine>& lines() { return lines_; }

    /// Where the first byte stands that is not UTF-8; signs of Windows-1252 are known, the others are not.
    const std::optional<TextSpan>& not_utf8() const { return not_utf8_; }

    /// A copy of a text that lasts as long as this does, for tokens that are read as others.
    std::string_view keep(std::string_view text);

  private:
    friend class Lexer;
    std::pmr::monotonic_buffer_resource pool_;  // what the texts of tokens point into: nothing in it moves
    std::vector<SourceLine> lines_;
    std::optional<TextSpan> not_utf8_;
};

/// The tokens of all lines, one after the other; they point into the text.
[[nodiscard]] std::vector<Token> all_tokens(const LexedText& text);

}  // namespace roundwright
