#include "core/reshape/choose_counts.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/reshape/count_cost.h"
#include "core/reshape/count_windows.h"
#include "core/rounds/workable_counts.h"

namespace roundwright {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

struct Column {
    std::vector<double> cost;  // least cost of the rounds up to here, one a candidate
    std::vector<int> from;     // candidate of the round below that it goes with
};

Column blank_column(const Window& window) {
    const auto size = static_cast<std::size_t>(window.size());
    return {std::vector<double>(size, infinity), std::vector<int>(size, 0)};
}

Column first_column(const CountProblem& problem, const CountCost& cost, const Window& window) {
    Column column = blank_column(window);
    for (int k = 0; k < window.size(); ++k) {
        const int count = window.low + k;
        if (!can_be_worked(problem.loops_below, count)) continue;
        column.cost[k] = cost.of_step(0, problem.loops_below, count) + cost.of_count(0, count);
    }
    return column;
}

// Candidates of the round below that a count can be worked over.
Window reach(int count, const Window& below) {
    const CountRange loops = workable_counts(count);
    return {std::max(below.low, loops.least), std::min(below.high, loops.most)};
}

/// The best sequence within windows; candidates that cost more than `most` by themselves are left out.
class Search {
  public:
    Search(const CountProblem& problem, const std::vector<Window>& windows, double most)
        : problem_(problem), cost_(problem), windows_(windows), most_(most * (1 + 1e-12)) {}

    CountChoice run() {
        const std::size_t kept = std::min(problem_.kept.size(), windows_.size());
        for (std::size_t i = 0; i < windows_.size(); ++i)
            columns_.push_back(i < kept ? Column{{0.0}, {0}}
                               : i == 0 ? first_column(problem_, cost_, windows_[0])
                                        : next_column(i));
        return traced();
    }

  private:
    Column next_column(std::size_t i) const {
        Column column = blank_column(windows_[i]);
        const auto& before = columns_.back().cost;
        for (int k = 0; k < windows_[i].size(); ++k) {
            const int count = windows_[i].low + k;
            const double own = cost_.of_count(i, count);
            const Window below = reach(count, windows_[i - 1]);
            for (int m = below.low; m <= below.high; ++m) {
                const int from = m - windows_[i - 1].low;
                if (own + before[from] > most_) continue;
                const double sum = before[from] + own + cost_.of_step(i, m, count);
                if (sum >= column.cost[k]) continue;
                column.cost[k] = sum;
                column.from[k] = from;
            }
        }
        return column;
    }

    CountChoice traced() const {
        const auto& last = columns_.back().cost;
        auto best = static_cast<int>(std::min_element(last.begin(), last.end()) - last.begin());
        CountChoice choice;
        choice.cost = last[best];
        choice.counts.resize(columns_.size());
        for (std::size_t i = columns_.size(); i-- > 0;) {
            choice.counts[i] = windows_[i].low + best;
            best = columns_[i].from[best];
        }
        return choice;
    }

    const CountProblem& problem_;
    CountCost cost_;
    const std::vector<Window>& windows_;
    double most_;
    std::vector<Column> columns_;
};

double pairs(const std::vector<Window>& windows) {
    double sum = 0;
    for (std::size_t i = 1; i < windows.size(); ++i)
        sum += double(windows[i].size()) * double(windows[i - 1].size());
    return sum;
}

}  // namespace

CountChoice choose_counts(const CountProblem& problem) {
    if (problem.wanted.empty()) return {};
    const auto likely = likely_windows(problem);
    CountChoice choice = Search(problem, likely, infinity).run();
    const auto all = windows_within(problem, choice.cost, likely);
    if (!(pairs(all) <= problem.most_pairs)) return choice;
    choice = Search(problem, all, choice.cost).run();
    choice.is_least = true;
    return choice;
}

}  // namespace roundwright
