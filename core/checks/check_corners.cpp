#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/checks/families.h"
#include "core/checks/flat_growth.h"
#include "core/checks/stacked_increases.h"

namespace roundwright {

namespace {

/// Corners that stand out by less than this many stitches do not show: a starting value of our own.
constexpr double showing_stitches = 1;
constexpr int fewest_corners = 3;

/// Stuffing draws corners round, so they are looked for where the fabric is meant to lie flat.
bool is_flat(const CheckInput& input, int round) {
    const bool meant =
        input.piece.area_stretch <= 0 || input.piece.rounds[static_cast<std::size_t>(round)].lies_flat;
    return meant && input.lies[static_cast<std::size_t>(round)].lie == Lie::lies_flat;
}

bool continues_corners(const CheckInput& input, int round) {
    const auto& rounds = input.graph.graph.rounds;
    return is_flat(input, round) &&
           are_stacked(rounds[static_cast<std::size_t>(round) - 1], rounds[static_cast<std::size_t>(round)]);
}

/// How far a corner stands out from the circle's edge to the middle of a side, at most: k straight sectors
/// tend to a regular k-gon, of the same length around as the circle that the stitches make. Its corners lie
/// at r pi / (k tan(pi / k) cos(pi / k)), its sides at r pi / (k tan(pi / k)) (regular polygon; a hexagon's
/// ratio is 2 / sqrt 3). The rounds inside the run stay round.
double corner_mm(const CheckInput& input, RoundRun run, int corners) {
    const double angle = std::numbers::pi / corners;
    const auto& loops = input.measures.loops;
    const double grown = loops[static_cast<std::size_t>(run.last) + 1].radius_mm -
                         loops[static_cast<std::size_t>(run.first)].radius_mm;
    return grown * angle / std::tan(angle) * (1 / std::cos(angle) - 1);
}

/// The increases of each round put between those of the round below, where all of the run is worked evenly.
std::vector<Cure> staggered(const CheckInput& input, RoundRun run) {
    Cure cure{CureKind::stagger_increases, {}, run.first, run.last - run.first + 1};
    for (int i = run.first; i <= run.last; ++i) {
        Round round = input.piece.rounds[static_cast<std::size_t>(i)];
        auto* even = std::get_if<WorkedEvenly>(&round.working);
        if (even == nullptr) return {};
        even->spacing = Spacing::staggered;
        cure.rounds.push_back(round);
    }
    return {cure};
}

void check_run(const CheckInput& input, RoundRun run, std::vector<Check>& checks) {
    const auto& edge = input.graph.graph.rounds[static_cast<std::size_t>(run.last)];
    const int corners = static_cast<int>(increase_places(edge).size());
    if (corners < fewest_corners) return;
    const double out_mm = corner_mm(input, run, corners);
    if (out_mm <= showing_stitches * input.stitch_width_mm()) return;
    checks.push_back({CheckCode::corners,
                      Severity::note,
                      input.piece_index,
                      run.last,
                      {corners, Millimetres{out_mm}, run.first + 1, run.last + 1},
                      staggered(input, run)});
}

}  // namespace

void check_corners(const CheckInput& input, std::vector<Check>& checks) {
    const ShapeProblem& problem = input.problem;
    if (input.piece.joining == Joining::rows || problem.equivalent_round || problem.limp) return;
    const int rounds = input.rounds_with_lie();
    for (int first = 1; first < rounds; ++first) {
        int last = first - 1;
        while (last + 1 < rounds && continues_corners(input, last + 1)) ++last;
        if (last < first) continue;
        check_run(input, {first, last}, checks);
        first = last;
    }
}

}  // namespace roundwright
