#include "core/reshape/choose_counts.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include "core/instructions/even_spacing.h"

namespace roundwright {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr int widest_window = 64;
constexpr double repeated_round = 0.2;  // stitch in every stitch: no count is awkward to work
constexpr int largest_unit = 12;        // a start count above this gives no useful grid of tidy counts

int unit_of(const CountProblem& problem) {
    return problem.start_count <= largest_unit ? std::max(problem.start_count, 1) : 1;
}

double tidiness_weight(double tidiness) {
    const double t = std::clamp(tidiness, 0.0, 1.0);
    return t < 1 ? std::min(3 * t / (1 - t), 1e6) : 1e6;
}

// The terms of the cost, with what does not change from candidate to candidate worked out once.
class Cost {
  public:
    explicit Cost(const CountProblem& problem)
        : problem_(problem), unit_(unit_of(problem)), weight_(tidiness_weight(problem.tidiness)) {}

    double wanted(std::size_t i) const { return std::max(problem_.wanted[i], double(problem_.least)); }
    double tolerance(std::size_t i) const { return std::max(problem_.half_round, 0.02 * wanted(i)); }

    double of_count(std::size_t i, int count) const {
        const double off = (count - wanted(i)) / tolerance(i);
        return off * off;
    }

    double of_step(std::size_t i, int below, int count) const {
        if (below <= 0) return weight_ * awkwardness(i, count);
        const double excess = std::abs(count - below) - allowed_step(i) - 1;
        const double off = excess > 0 ? excess / tolerance(i) : 0;
        const bool uneven = !accepts(i, count) && !is_repeatable(below, count);
        const double awkward = awkwardness(i, count) * (count == below ? repeated_round : 1);
        return off * off + weight_ * (awkward + (uneven ? 0.5 : 0));
    }

  private:
    bool accepts(std::size_t i, int count) const {
        return i < problem_.accepted.size() && problem_.accepted[i] == count;
    }
    double awkwardness(std::size_t i, int count) const {
        if (count % unit_ == 0 || accepts(i, count)) return 0;
        return 2 * count % unit_ == 0 ? 0.5 : 1;
    }
    double allowed_step(std::size_t i) const {
        const double below = i > 0 ? problem_.wanted[i - 1] : problem_.loops_below;
        return std::max(problem_.flat_growth, std::abs(problem_.wanted[i] - below));
    }

    const CountProblem& problem_;
    int unit_;
    double weight_;
};

bool can_be_worked(int below, int count) { return below <= 0 || (count <= 2 * below && 2 * count >= below); }

struct Window {
    int low = 0;
    int high = 0;
    int size() const { return high - low + 1; }
};

// Largest and smallest sequences that the growth rule makes of the wanted counts: each raised (or lowered)
// only as far as its neighbours need to be within reach.
std::vector<double> raised(std::vector<double> c, std::size_t from) {
    for (std::size_t i = from + 1; i < c.size(); ++i) c[i] = std::max(c[i], c[i - 1] / 2);
    for (std::size_t i = c.size(); i-- > from + 1;) c[i - 1] = std::max(c[i - 1], c[i] / 2);
    return c;
}
std::vector<double> lowered(std::vector<double> c, std::size_t from) {
    for (std::size_t i = from + 1; i < c.size(); ++i) c[i] = std::min(c[i], 2 * c[i - 1]);
    for (std::size_t i = c.size(); i-- > from + 1;) c[i - 1] = std::min(c[i - 1], 2 * c[i]);
    return c;
}

Window about(double low_wanted, double high_wanted, int unit, int least) {
    const int low = static_cast<int>(std::floor(low_wanted));
    const int high = static_cast<int>(std::ceil(high_wanted));
    Window window{std::min(low - 2, low / unit * unit), std::max(high + 2, (high + unit - 1) / unit * unit)};
    if (window.size() > widest_window) window = {high - widest_window / 2, high + widest_window / 2};
    return {std::max(window.low, least), std::max(window.high, least)};
}

// Cuts a window to what can be worked over the one below; what is cut away on one side is made up on the
// other.
Window within_reach(const Window& window, const Window& below, int unit) {
    const Window reach{(below.low + 1) / 2, 2 * below.high};
    const int least_size = unit + 5;
    Window cut{std::clamp(window.low, reach.low, reach.high), std::clamp(window.high, reach.low, reach.high)};
    if (cut.high < window.high) cut.low = std::max(reach.low, std::min(cut.low, cut.high - least_size));
    if (cut.low > window.low) cut.high = std::min(reach.high, std::max(cut.high, cut.low + least_size));
    return cut;
}

// Rounds between a count that is given and the ones that are wanted: as far off as flat growth leads.
class Approach {
  public:
    Approach(const CountProblem& problem, int from)
        : step_(problem.flat_growth), level_(from), least_(problem.least) {}

    Window widened(Window window) {
        if (level_ <= 0) return window;
        if (level_ > window.high) level_ = std::max<double>(window.high, level_ - step_);
        if (level_ < window.low) level_ = std::min<double>(window.low, level_ + step_);
        if (level_ >= window.low && level_ <= window.high) level_ = 0;
        if (level_ <= 0) return window;
        return {std::min(window.low, std::max(least_, static_cast<int>(level_) - 2)),
                std::max(window.high, static_cast<int>(level_) + 3)};
    }

  private:
    double step_;
    double level_;
    int least_;
};

std::vector<Window> windows(const CountProblem& problem) {
    const std::size_t kept = std::min(problem.kept.size(), problem.wanted.size());
    std::vector<double> wanted;
    for (double c : problem.wanted) wanted.push_back(std::clamp(c, double(problem.least), 1e8));
    const auto high = raised(wanted, kept);
    const auto low = lowered(wanted, kept);
    Approach approach(problem, kept > 0 ? problem.kept[kept - 1] : problem.loops_below);
    std::vector<Window> result;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        if (i < kept) {
            result.push_back({problem.kept[i], problem.kept[i]});
            continue;
        }
        const Window window = approach.widened(about(low[i], high[i], unit_of(problem), problem.least));
        const int below = problem.loops_below;
        if (i > 0)
            result.push_back(within_reach(window, result.back(), unit_of(problem)));
        else
            result.push_back(below > 0 ? within_reach(window, {below, below}, unit_of(problem)) : window);
    }
    return result;
}

struct Column {
    std::vector<double> cost;  // least cost of the rounds up to here, one a candidate
    std::vector<int> from;     // candidate of the round below that it goes with
};

Column next_column(const Cost& cost, std::size_t i, const Window& here, const Window& below,
                   const Column& before) {
    Column column;
    column.cost.assign(static_cast<std::size_t>(here.size()), infinity);
    column.from.assign(static_cast<std::size_t>(here.size()), 0);
    for (int k = 0; k < here.size(); ++k) {
        const int count = here.low + k;
        const int first = std::max(below.low, (count + 1) / 2);
        const int last = std::min(below.high, 2 * count);
        for (int m = first; m <= last; ++m) {
            const double sum = before.cost[m - below.low] + cost.of_step(i, m, count);
            if (sum < column.cost[k]) {
                column.cost[k] = sum;
                column.from[k] = m - below.low;
            }
        }
        column.cost[k] += cost.of_count(i, count);
    }
    return column;
}

Column first_column(const CountProblem& problem, const Cost& cost, const Window& window, bool kept) {
    Column column;
    for (int count = window.low; count <= window.high; ++count)
        column.cost.push_back(kept ? 0
                                   : cost.of_step(0, problem.loops_below, count) + cost.of_count(0, count));
    column.from.assign(column.cost.size(), 0);
    return column;
}

}  // namespace

CountChoice choose_counts(const CountProblem& problem) {
    CountChoice choice;
    const std::size_t rounds = problem.wanted.size();
    if (rounds == 0) return choice;
    const std::size_t kept = std::min(problem.kept.size(), rounds);
    const Cost cost(problem);
    const auto window = windows(problem);
    std::vector<Column> columns{first_column(problem, cost, window[0], kept > 0)};
    for (std::size_t i = 1; i < rounds; ++i)
        columns.push_back(i < kept ? Column{{0.0}, {0}}
                                   : next_column(cost, i, window[i], window[i - 1], columns.back()));
    const auto& last = columns.back().cost;
    auto best = static_cast<int>(std::min_element(last.begin(), last.end()) - last.begin());
    choice.cost = last[best];
    choice.counts.resize(rounds);
    for (std::size_t i = rounds; i-- > 0;) {
        choice.counts[i] = window[i].low + best;
        best = columns[i].from[best];
    }
    return choice;
}

double counts_cost(const CountProblem& problem, const std::vector<int>& counts) {
    if (counts.size() != problem.wanted.size()) return infinity;
    const Cost cost(problem);
    double sum = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        if (i < problem.kept.size()) {
            if (counts[i] != problem.kept[i]) return infinity;
            continue;
        }
        const int below = i > 0 ? counts[i - 1] : problem.loops_below;
        if (counts[i] < problem.least || !can_be_worked(below, counts[i])) return infinity;
        sum += cost.of_step(i, below, counts[i]) + cost.of_count(i, counts[i]);
    }
    return sum;
}

}  // namespace roundwright
