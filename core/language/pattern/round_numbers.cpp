#include "core/language/pattern/round_numbers.h"

#include <algorithm>

namespace roundwright {

RoundNumbers::RoundNumbers(const PatternLine& first)
    : numbered_(first.header.length > 0), next_(first.numbers.empty() ? 1 : first.numbers.front().first) {}

int RoundNumbers::take(const PatternLine& line) {
    if (line.numbers.size() < 2) return std::max(line.rounds, 1);
    for (std::size_t i = 1; i < line.numbers.size(); ++i)
        later_[line.numbers[i].first] = {line.numbers[i].last, &line};
    return line.numbers.front().size();
}

std::optional<PatternLine> RoundNumbers::take_later() {
    if (later_.empty() || later_.begin()->first != next_) return std::nullopt;
    const Later later = later_.begin()->second;
    PatternLine line = *later.line;
    line.numbers = {{next_, later.last}};
    line.rounds = line.numbers.front().size();
    later_.erase(later_.begin());
    return line;
}

std::optional<std::pair<int, const PatternLine*>> RoundNumbers::take_last() {
    if (later_.empty()) return std::nullopt;
    const auto first = later_.begin();
    const std::pair<int, const PatternLine*> last{first->first, first->second.line};
    later_.erase(first);
    return last;
}

}  // namespace roundwright
