#pragma once

#include <functional>
#include <stop_token>
#include <vector>

#include "core/gauge/gauge.h"
#include "core/reshape/choose_counts.h"
#include "core/reshape/rounds_for_meridian.h"
#include "core/shape/shape_problem.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

struct Size {
    double width_mm = 0;
    double height_mm = 0;

    friend bool operator==(const Size&, const Size&) = default;
};

/// What a size is allowed to miss: half a round, or 2 %, whichever is more; mm.
[[nodiscard]] double size_tolerance_mm(double wanted_mm, const Gauge& gauge);

/// The largest miss over what is allowed, of the width, of the height, and of the height over the width (half
/// a round, or 3 %): within tolerance at 1 or less.
[[nodiscard]] double size_miss(const Size& reached, const Size& wanted, const Gauge& gauge);

/// Counts with the place on the profile at which each round ends, as a part (0..1) of its length.
struct RoundsDraft {
    double foundation = 0;         ///< loops the piece starts from; 0: a magic ring
    std::vector<double> stitches;  ///< one a round; whole numbers but while a scale is being looked for
    std::vector<double> ends_at;   ///< one a round
    double height_factor = 1;      ///< of every round's height; 1 but while a scale is being looked for
};

/// What a profile begins with.
enum class Foundation {
    none,            ///< a magic ring
    ring_of_chains,  ///< round 1 is worked into the ring, as many stitches as fit
    loops,           ///< round 1 is worked into the loops of a chain
    loops_in_pairs,  ///< the same, on both sides of a chain
};

/// A profile to be cut into whole rounds and stitches that come out at a size.
struct FitProblem {
    StitchProfile profile;
    ProfileScale scale;         ///< to start from
    bool in_proportion = true;  ///< the size wanted is the profile's own, larger or smaller
    Size wanted;
    Gauge gauge;
    Foundation foundation = Foundation::none;
    double fan_rounds = 0.5;  ///< what closes a drawn end, in rounds
    int start_count = 6;
    double tidiness = 0.5;
    std::vector<int> kept;
    int kept_foundation = 0;  ///< loops that the kept rounds stand on
    /// Counts at such places of the profile that are never held awkward (0: none), as in CountProblem; or
    /// empty.
    std::function<std::vector<int>(const std::vector<double>& places)> accepted_at;
    /// The shape problem of a draft: knows the kinds of stitches and the ends.
    std::function<ShapeProblem(const RoundsDraft&)> problem_of;
    std::stop_token stop;
};

struct Fit {
    std::vector<int> counts;
    int foundation = 0;           ///< loops; 0: a magic ring
    std::vector<double> ends_at;  ///< as in RoundsDraft
    ProfileScale scale;
    Shape shape;
    double miss = 0;  ///< `size_miss` of the shape
    bool found = false;
};

/// Finds a scale of the profile at which whole counts come out nearest to the wanted size. An outline that
/// comes out within tolerance as it is drawn is left so. Else: first with counts that need not be whole
/// (Broyden's method on the logarithms of both scales; a profile in proportion scales exactly and needs
/// none), then with whole ones for the numbers of rounds next to it, corrected by what the solved shape
/// misses, and less tidy where tidy counts cannot come near enough.
[[nodiscard]] Fit fit_rounds(const FitProblem& problem);

/// One cut of the profile at a scale, without looking for a better one; for live drags.
[[nodiscard]] Fit cut_rounds(const FitProblem& problem, const Shape* warm);

/// The problem that cutting a profile into `rounds` rounds poses.
[[nodiscard]] CountProblem count_problem(const FitProblem& problem, const ProfileScale& scale,
                                         const std::vector<double>& places);

}  // namespace roundwright
