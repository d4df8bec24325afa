#pragma once

#include <span>

#include "core/language/pattern/pattern_lines.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {

/// Reads the number or numbers a line of a pattern begins with: "Rnd 3:", "R3.", "Rnds 6-10:", "3rd rnd:",
/// "Next 5 rnds:", "(3)".
class RoundHeaderReader {
  public:
    RoundHeaderReader(std::span<const Token> tokens, Terms terms) : tokens_(tokens), terms_(terms) {}

    /// A bare number before a remark, "5. Stuff the head.", may be a round's too when the stitches follow.
    RoundHeaderReader& before_remarks() {
        before_remarks_ = true;
        return *this;
    }

    /// The number of the round before; 0: there is none. "3. wibble (12)" is round 3 after round 2. `plain`:
    /// the rounds before had no sign behind their numbers, and "3 sc in each st (12)" is round 3 too.
    RoundHeaderReader& after(int number, bool plain) {
        last_number_ = number;
        plain_ = plain;
        return *this;
    }

    /// "4-6 sc around" is of rounds 4 to 6 where no round before had a dash behind its number.
    RoundHeaderReader& with_dash_as_range(bool range) {
        tight_is_range_ = range;
        return *this;
    }

    /// Fills what the header says into `line`; false when the tokens begin no round.
    bool read(PatternLine& line);
    /// The token after the header.
    std::size_t end() const { return at_; }
    /// "(6)" in "Rnd 1 (6): ...": the count of the round, which stands in front.
    std::span<const Token> count() const { return count_; }

  private:
    bool is(std::string_view text, std::size_t ahead = 0) const {
        return at_ + ahead < tokens_.size() && tokens_[at_ + ahead].is(text);
    }
    bool is_number(std::size_t ahead = 0) const {
        return at_ + ahead < tokens_.size() && tokens_[at_ + ahead].kind == TokenKind::number;
    }
    bool is_round_here(std::size_t ahead = 0) const {
        return at_ + ahead < tokens_.size() && is_round_word(tokens_[at_ + ahead].text);
    }
    bool back() {
        at_ = start_;
        return false;
    }
    bool words_first(PatternLine& line);
    bool number_first(PatternLine& line);
    bool start_first(PatternLine& line);
    bool plain_number(PatternLine& line);
    bool take_open_end(PatternLine& line);
    bool take_open_words(PatternLine& line);
    bool roman_number(PatternLine& line);
    bool ordinal_first(PatternLine& line);
    bool next_round(PatternLine& line);
    bool bare_number(PatternLine& line);
    bool numbers(PatternLine& line);
    bool skip_to_next_number(std::size_t& ahead, bool& span) const;
    bool starts_stitches(std::size_t ahead) const;
    static void add_number(PatternLine& line, int next, bool span);
    void aside(PatternLine& line);
    void rounds_aside(PatternLine& line);
    void skip_marks();
    bool ends();

    std::span<const Token> tokens_;
    Terms terms_;
    std::span<const Token> count_;
    bool before_remarks_ = false;
    int last_number_ = -1;
    bool plain_ = false;
    bool tight_is_range_ = false;
    bool several_ = false;  // "Rnds": the number after the first ends a range
    std::size_t start_ = 0;
    std::size_t at_ = 0;
    std::size_t last_ = 0;
};

}  // namespace roundwright
