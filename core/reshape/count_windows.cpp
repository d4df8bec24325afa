#include "core/reshape/count_windows.h"

#include <algorithm>
#include <cmath>

#include "core/reshape/count_cost.h"
#include "core/rounds/workable_counts.h"

namespace roundwright {
namespace {

constexpr int widest_window = 64;

// Largest and smallest sequences that the growth rule makes of the wanted counts: each raised (or lowered)
// only as far as its neighbours need to be within reach.
std::vector<double> raised(std::vector<double> c, std::size_t from) {
    for (std::size_t i = from + 1; i < c.size(); ++i)
        c[i] = std::max(c[i], c[i - 1] / most_loops_in_a_stitch);
    for (std::size_t i = c.size(); i-- > from + 1;)
        c[i - 1] = std::max(c[i - 1], c[i] / most_loops_in_a_stitch);
    return c;
}
std::vector<double> lowered(std::vector<double> c, std::size_t from) {
    for (std::size_t i = from + 1; i < c.size(); ++i)
        c[i] = std::min(c[i], most_stitches_in_a_loop * c[i - 1]);
    for (std::size_t i = c.size(); i-- > from + 1;)
        c[i - 1] = std::min(c[i - 1], most_stitches_in_a_loop * c[i]);
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
    const Window reach{workable_counts(below.low).least, workable_counts(below.high).most};
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

}  // namespace

std::vector<Window> likely_windows(const CountProblem& problem) {
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
        const Window window = approach.widened(about(low[i], high[i], tidy_unit(problem), problem.least));
        const int below = problem.loops_below;
        if (i > 0)
            result.push_back(within_reach(window, result.back(), tidy_unit(problem)));
        else
            result.push_back(below > 0 ? within_reach(window, {below, below}, tidy_unit(problem)) : window);
    }
    return result;
}

std::vector<Window> windows_within(const CountProblem& problem, double cost,
                                   const std::vector<Window>& likely) {
    const CountCost terms(problem);
    std::vector<Window> windows = likely;
    for (std::size_t i = problem.kept.size(); i < windows.size(); ++i) {
        const double most_off = std::min(terms.tolerance(i) * std::sqrt(cost), 1e8);
        const int low = static_cast<int>(std::ceil(std::max(terms.wanted(i) - most_off, 0.0)));
        const int high = static_cast<int>(std::floor(std::min(terms.wanted(i), 1e8) + most_off));
        windows[i] = {std::max(problem.least, std::min(windows[i].low, low)),
                      std::max(windows[i].high, high)};
    }
    return windows;
}

}  // namespace roundwright
