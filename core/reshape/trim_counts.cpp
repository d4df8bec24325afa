#include "core/reshape/trim_counts.h"

#include <cmath>
#include <limits>

namespace roundwright {
namespace {

struct Step {
    std::size_t round = 0;
    int by = 0;
    double merit = std::numeric_limits<double>::infinity();
};

class Trimmer {
  public:
    Trimmer(const CountProblem& problem, const SizeSlope& slope, double allowed_mm)
        : problem_(problem), slope_(slope), allowed_mm_(allowed_mm) {}

    double merit(const std::vector<int>& counts, const Size& missing) const {
        const double w = missing.width_mm / allowed_mm_;
        const double h = missing.height_mm / allowed_mm_;
        return w * w + h * h + counts_cost(problem_, counts) / double(counts.size());
    }

    Size missing_after(const Size& missing, const Step& step) const {
        return {missing.width_mm - step.by * slope_.width_mm[step.round],
                missing.height_mm - step.by * slope_.height_mm[step.round]};
    }

    Step best_step(std::vector<int>& counts, const Size& missing) const {
        Step best;
        for (std::size_t i = problem_.kept.size(); i < counts.size(); ++i) {
            for (int by : {-1, 1}) {
                Step step{i, by, 0};
                counts[i] += by;
                step.merit = merit(counts, missing_after(missing, step));
                counts[i] -= by;
                if (step.merit < best.merit) best = step;
            }
        }
        return best;
    }

  private:
    const CountProblem& problem_;
    const SizeSlope& slope_;
    double allowed_mm_;
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
                                const Size& missing, double allowed_mm) {
    const Trimmer trimmer(problem, slope, allowed_mm);
    Size left = missing;
    double merit = trimmer.merit(counts, left);
    for (std::size_t steps = 0; steps < 4 * counts.size(); ++steps) {
        const Step step = trimmer.best_step(counts, left);
        if (!(step.merit < merit)) break;
        counts[step.round] += step.by;
        left = trimmer.missing_after(left, step);
        merit = step.merit;
    }
    return counts;
}

}  // namespace roundwright
