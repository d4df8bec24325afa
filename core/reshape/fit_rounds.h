#pragma once

#include "core/reshape/fit_problem.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

struct Fit {
    std::vector<int> counts;
    int foundation = 0;           ///< loops; 0: a magic ring
    std::vector<double> ends_at;  ///< as in RoundsDraft
    ProfileScale scale;
    Shape shape;
    double miss = 0;        ///< `size_miss` of the shape
    std::size_t flaws = 0;  ///< rounds that ruffle or gather, and did not in the old piece
    bool found = false;
};

/// Finds a scale of the profile at which whole counts come out nearest to the wanted size. An outline that
/// comes out within tolerance as it is drawn is left so. Else: first with counts that need not be whole
/// (`find_scale`; a profile in proportion scales exactly and needs none), then with whole ones for the
/// numbers of rounds next to it, corrected by what the solved shape misses, stitch by stitch at last
/// (`trimmed_counts`), and less tidy where tidy counts cannot come near enough. Counts that make the fabric
/// ruffle or gather where it did not are cut again without (`recut_without`); if none are left, the size is
/// missed rather.
[[nodiscard]] Fit fit_rounds(const FitProblem& problem);

/// One cut of the profile into so many rounds, without looking for a better one; for live drags.
[[nodiscard]] Fit cut_rounds(const FitProblem& problem, int rounds, const Shape* warm);

}  // namespace roundwright
