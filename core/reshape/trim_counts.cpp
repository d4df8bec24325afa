#include "core/reshape/trim_counts.h"

#include <cmath>
#include <limits>

namespace roundwright {
namespace {

struct Step {
    std::size_t first = 0;
    std::size_t last = 0;
    int by = 0;
    double merit = std::numeric_limits<double>::infinity();
};

void take(const Step& step, std::vector<int>& counts, int times = 1) {
    for (std::size_t i = step.first; i <= step.last; ++i) counts[i] += times * step.by;
}

// How often the piece turns from growing to closing in, or back.
int turns(const std::vector<int>& counts) {
    int found = 0;
    int before = 0;
    for (std::size_t i = 1; i < counts.size(); ++i) {
        const int change = counts[i] - counts[i - 1];
        if (change == 0) continue;
        found += before != 0 && (before > 0) != (change > 0);
        before = change;
    }
    return found;
}

// Every run of equal counts, and its first and its last round, a stitch narrower or wider.
std::vector<Step> steps_of(const std::vector<int>& counts, std::size_t kept) {
    std::vector<Step> steps;
    const auto add = [&](std::size_t first, std::size_t last) {
        steps.push_back({first, last, -1});
        steps.push_back({first, last, 1});
    };
    for (std::size_t first = kept, last; first < counts.size(); first = last + 1) {
        last = first;
        while (last + 1 < counts.size() && counts[last + 1] == counts[first]) ++last;
        add(first, last);
        if (last > first) add(first, first);
        if (last > first) add(last, last);
    }
    return steps;
}

class Trimmer {
  public:
    Trimmer(const CountProblem& problem, const SizeSlope& slope, double allowed_mm, double cost_weight)
        : problem_(problem), slope_(slope), allowed_mm_(allowed_mm), cost_weight_(cost_weight) {}

    double merit(const std::vector<int>& counts, const Size& missing) const {
        const double w = missing.width_mm / allowed_mm_;
        const double h = missing.height_mm / allowed_mm_;
        return w * w + h * h + cost_weight_ * counts_cost(problem_, counts);
    }

    Size missing_after(const Size& missing, const Step& step) const {
        Size left = missing;
        for (std::size_t i = step.first; i <= step.last; ++i) {
            left.width_mm -= step.by * slope_.width_mm[i];
            left.height_mm -= step.by * slope_.height_mm[i];
        }
        return left;
    }

    Step best_step(std::vector<int>& counts, const Size& missing) const {
        Step best;
        const int before = turns(counts);
        for (Step step : steps_of(counts, problem_.kept.size())) {
            take(step, counts);
            if (turns(counts) <= before) step.merit = merit(counts, missing_after(missing, step));
            take(step, counts, -1);
            if (step.merit < best.merit) best = step;
        }
        return best;
    }

  private:
    const CountProblem& problem_;
    const SizeSlope& slope_;
    double allowed_mm_;
    double cost_weight_;
};

}  // namespace

SizeSlope size_slope(const RoundsDraft& draft, const Shape& shape, std::size_t kept, DraftSolver& solver) {
    SizeSlope slope{std::vector<double>(draft.stitches.size(), 0.0),
                    std::vector<double>(draft.stitches.size(), 0.0)};
    for (std::size_t i = kept; i < draft.stitches.size(); ++i) {
        RoundsDraft more = draft;
        ++more.stitches[i];
        const Shape wider = solver.solve(more);
        if (!wider.usable()) continue;
        slope.width_mm[i] = wider.width_mm - shape.width_mm;
        slope.height_mm[i] = wider.height_mm - shape.height_mm;
    }
    return slope;
}

std::vector<int> trimmed_counts(const CountProblem& problem, std::vector<int> counts, const SizeSlope& slope,
                                const Size& missing, double allowed_mm, double cost_weight) {
    const Trimmer trimmer(problem, slope, allowed_mm, cost_weight);
    Size left = missing;
    double merit = trimmer.merit(counts, left);
    for (std::size_t steps = 0; steps < 4 * counts.size(); ++steps) {
        const Step step = trimmer.best_step(counts, left);
        if (!(step.merit < merit)) break;
        take(step, counts);
        left = trimmer.missing_after(left, step);
        merit = step.merit;
    }
    return counts;
}

}  // namespace roundwright
