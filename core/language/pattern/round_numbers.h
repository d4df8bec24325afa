#pragma once

#include <map>
#include <optional>
#include <utility>

#include "core/language/pattern/pattern_lines.h"

namespace roundwright {

/// The numbers that a pattern gives the rounds of one piece, and those of a list ("Rnds 7, 9 and 11") whose
/// turn has not come.
class RoundNumbers {
  public:
    explicit RoundNumbers(const PatternLine& first);
    /// `next`: the number of the round that comes first.
    explicit RoundNumbers(int next) : next_(next) {}

    int next() const { return next_; }
    void count_on() { ++next_; }
    /// The text's numbers leap ahead: the next round is `number`.
    void leap_to(int number) { next_ = number; }
    bool numbered() const { return numbered_; }
    void note_header(const PatternLine& line) { numbered_ = numbered_ && line.header.length > 0; }

    /// Rounds of a line that come now; those that come later are kept.
    int take(const PatternLine& line);
    /// The line whose round is next by its list, as a line of those rounds alone.
    [[nodiscard]] std::optional<PatternLine> take_later();
    /// The first round of a list whose turn has not come, and its line; none when there is none.
    [[nodiscard]] std::optional<std::pair<int, const PatternLine*>> take_last();

  private:
    struct Later {
        int last = 0;
        const PatternLine* line = nullptr;
    };

    bool numbered_ = true;
    int next_ = 1;
    std::map<int, Later> later_;  // by the first of a run
};

}  // namespace roundwright
