#include "core/shape/oval_plan.h"

#include <algorithm>
#include <numbers>

namespace roundwright {

bool starts_oval(const ShapeProblem& problem) {
    return problem.equivalent_round && problem.first == MeridianEnd::drawn_closed &&
           problem.first_fan_height_mm > 0;
}

ShapeProblem ends_as_disc(const ShapeProblem& oval, int ends) {
    ShapeProblem disc = oval;
    disc.first = MeridianEnd::pole;
    disc.first_fan_height_mm = 0;
    disc.equivalent_round = false;
    const double sides = oval.rest_loop_mm.front();
    for (double& loop : disc.rest_loop_mm) loop = std::max(0.0, loop - sides) * 2 / ends;
    return disc;
}

std::optional<OvalPlan> oval_plan(const ShapeProblem& problem, const PieceMeasures& round) {
    if (!starts_oval(problem) || problem.area_stretch > 0) return std::nullopt;
    if (!round.usable() || round.fidelity != Fidelity::equivalent_round) return std::nullopt;
    const auto [least, most] = std::ranges::minmax(round.loops, {}, &LoopMeasures::radius_mm);
    const double chain_radius = round.loops.front().radius_mm;
    if (least.radius_mm < chain_radius) return std::nullopt;
    const double length = std::numbers::pi * chain_radius;
    const double width = 2 * (most.radius_mm - chain_radius);
    return OvalPlan{length + width, width};
}

}  // namespace roundwright
