#pragma once

#include <algorithm>
#include <cctype>
#include <string_view>

#include "core/language/pattern/read_pattern.h"

namespace roundwright::testing {

/// Counts the rounds that a text numbers in the plainest way, "Rnd 5:" or "Rnds 5-8:" at the front of a line,
/// by itself: it knows nothing of the reader. Shared with the fuzzer.
class NumberedRounds {
  public:
    explicit NumberedRounds(std::string_view text) : text_(text) {}

    long count() {
        long rounds = 0;
        while (at_ < text_.size()) {
            rounds += of_line();
            while (at_ < text_.size() && text_[at_] != '\n' && text_[at_] != '\r') ++at_;
            while (at_ < text_.size() && (text_[at_] == '\n' || text_[at_] == '\r')) ++at_;
        }
        return rounds;
    }

  private:
    long of_line() {
        if (!word("Rnds ") && !word("Rnd ") && !word("Round ") && !word("Row ")) return 0;
        const long first = number();
        const long last = first > 0 && word("-") ? number() : first;
        return first > 0 && last >= first && word(":") ? last - first + 1 : 0;
    }
    bool word(std::string_view wanted) {
        if (text_.substr(at_, wanted.size()) != wanted) return false;
        at_ += wanted.size();
        return true;
    }
    long number() {
        long value = 0;
        for (; at_ < text_.size() && std::isdigit(static_cast<unsigned char>(text_[at_])) != 0; ++at_)
            value = std::min(value * 10 + (text_[at_] - '0'), 1'000'000L);
        return value;
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

inline long numbered_rounds(std::string_view text) { return NumberedRounds(text).count(); }

inline long rounds_read(const ReadPattern& read) {
    long rounds = 0;
    for (const Piece& piece : read.pieces) rounds += static_cast<long>(piece.rounds.size());
    return rounds;
}

}  // namespace roundwright::testing
