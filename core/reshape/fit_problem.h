#pragma once

#include <functional>
#include <stop_token>
#include <vector>

#include "core/gauge/gauge.h"
#include "core/reshape/choose_counts.h"
#include "core/reshape/rounds_for_meridian.h"
#include "core/reshape/size.h"
#include "core/shape/lie.h"
#include "core/shape/shape_problem.h"

namespace roundwright {

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
    /// How many half rounds off the wanted size is near enough to stop looking. At no more than the factor by
    /// which a piece is made smaller, one that is made larger again comes out within a round of what it was:
    /// its first miss grows with it to half a round at most, and the second adds no more than that.
    double near_enough = 1;
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
    Silhouette outline;         ///< wanted, at its wanted size; empty: any that has the size
    std::vector<Lie> own_lies;  ///< of the old rounds: what ruffles on purpose may go on ruffling
    double own_rounds = 0;      ///< how many they are, the closing among them
    bool has_gaps = false;      ///< the old piece shows its stuffing already
    std::stop_token stop;
};

/// One cut of a profile into whole rounds and stitches.
struct RoundsCut {
    ProfileScale scale;
    CountProblem problem;
    std::vector<int> counts;
    int foundation = 0;           ///< loops; 0: a magic ring
    std::vector<double> ends_at;  ///< as in RoundsDraft
    double tidiness = 0.5;        ///< with which its counts were chosen

    [[nodiscard]] RoundsDraft draft() const;
};

/// The cheapest cut (`choose_counts`) into so many rounds.
[[nodiscard]] RoundsCut cut_profile(const FitProblem& problem, const ProfileScale& scale, int rounds,
                                    double tidiness);

/// Chooses the counts of a cut for its problem as it is now, and what it starts from.
void choose_counts_of(const FitProblem& problem, RoundsCut& cut);

/// The profile in so many rounds with stitches that need not be whole, each round a little higher or lower
/// than one worked, such that together they are as long as the scaled profile: what shape it would have.
[[nodiscard]] RoundsDraft draft_in_parts(const FitProblem& problem, const ProfileScale& scale, int rounds);

/// The problem that cutting a profile into rounds that end at such places poses.
[[nodiscard]] CountProblem count_problem(const FitProblem& problem, const ProfileScale& scale,
                                         const std::vector<double>& places);

/// Whole numbers of rounds, the nearest first, and never so few that none is left after those kept.
[[nodiscard]] std::vector<int> nearest_numbers_of_rounds(const FitProblem& problem,
                                                         const ProfileScale& scale);

/// Stitches in the ring of a new piece in single crochet: six, by common practice, where that many more a
/// round lie flat in this gauge; else as many as do.
[[nodiscard]] int usual_start_count(const Gauge& gauge);

/// Stitches more a round that lie flat: 2 pi h / w.
[[nodiscard]] double flat_growth(const Gauge& gauge);

/// Places as parts (0..1) of the length of a profile.
[[nodiscard]] std::vector<double> as_parts(const std::vector<double>& places, const StitchProfile& profile);

}  // namespace roundwright
