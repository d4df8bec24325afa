#include "core/reshape/fabric_flaws.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/reshape/carry_over.h"
#include "core/shape/fabric_limits.h"
#include "core/shape/fabric_signs.h"
#include "core/shape/growth.h"
#include "core/shape/reads_as_flat.h"

namespace roundwright {
namespace {

constexpr double no_limit = std::numeric_limits<double>::infinity();

// Whether the old piece lies so at the same height, or at the round next to it.
bool is_own(const FitProblem& problem, int source, Lie lie) {
    const auto& lies = problem.own_lies;
    const int last = static_cast<int>(lies.size()) - 1;
    for (int i = std::max(0, source - 1); i <= std::min(last, source + 1); ++i)
        if (lies[static_cast<std::size_t>(i)] == lie) return true;
    return false;
}

// Whether what lay flat is to stay so: a disc that does not come out as wide as is wanted is better than a
// bowl that does.
bool is_to_lie_flat(const FitProblem& problem, const ShapeProblem& made) {
    const auto has = [&](Lie lie) {
        return std::find(problem.own_lies.begin(), problem.own_lies.end(), lie) != problem.own_lies.end();
    };
    if (made.area_stretch > 0 || made.limp) return false;
    if (!has(Lie::lies_flat) || has(Lie::cups) || has(Lie::even)) return false;
    return made.on_its_face || reads_as_flat(made, problem.wanted.width_mm, problem.wanted.height_mm);
}

bool shows_gaps(const ShapeProblem& problem, const Shape& shape) {
    const auto signs = fabric_signs(problem, shape);
    return std::any_of(signs.begin(), signs.end(),
                       [](const FabricSign& sign) { return sign.kind == FabricSignKind::gaps; });
}

std::vector<double> flat_of_rounds(const FitProblem& problem, const RoundsDraft& draft) {
    std::vector<double> flat;
    for (const double height : problem.problem_of(draft).rest_height_mm)
        flat.push_back(flat_increase(height, problem.gauge.stitch_width_mm));
    return flat;
}

struct Reach {
    std::size_t first;
    std::size_t last;
};

Reach about(std::size_t round, int neighbours, std::size_t kept, std::size_t rounds) {
    const auto by = static_cast<std::size_t>(neighbours);
    return {std::max(kept, round > by ? round - by : 0), std::min(rounds - 1, round + by)};
}

// Whatever is wanted between rounds must be within reach of the limits too.
void hold_back_wanted(CountProblem& counts) {
    auto& wanted = counts.wanted;
    const std::size_t kept = counts.kept.size();
    for (std::size_t i = std::max<std::size_t>(kept, 1); i < wanted.size(); ++i) {
        const double below = i == kept ? counts.kept.back() : wanted[i - 1];
        wanted[i] = std::min(wanted[i], below + counts.most_growth[i]);
    }
    for (std::size_t i = wanted.size(); i-- > kept + 1;)
        wanted[i - 1] = std::min(wanted[i - 1], wanted[i] + counts.most_closing[i]);
}

}  // namespace

int most_growth(double flat) { return std::max(1, static_cast<int>((1 + ruffles_above_share) * flat)); }
int most_closing(double flat) { return std::max(1, static_cast<int>(-gathers_below_growth * flat)); }

FabricFlaws fabric_flaws(const FitProblem& problem, const RoundsDraft& draft, const Shape& shape) {
    FabricFlaws flaws;
    const ShapeProblem made = problem.problem_of(draft);
    const auto lies = lie_of_rounds(made, shape);
    const int own = static_cast<int>(problem.own_lies.size());
    std::vector<int> sources(lies.size(), -1);
    if (own > 0) sources = rounds_at_same_height(draft.ends_at, own, problem.own_rounds);
    const bool stays_flat = is_to_lie_flat(problem, made);
    for (std::size_t i = problem.kept.size(); i < lies.size(); ++i) {
        const Lie lie = lies[i].lie;
        if (stays_flat && lie == Lie::cups) flaws.cups.push_back(i);
        if ((lie != Lie::ruffles && lie != Lie::gathers) || is_own(problem, sources[i], lie)) continue;
        (lie == Lie::ruffles ? flaws.ruffles : flaws.gathers).push_back(i);
    }
    flaws.gaps = !problem.has_gaps && shows_gaps(made, shape);
    return flaws;
}

RoundsCut recut_without(const FabricFlaws& flaws, const FitProblem& problem, RoundsCut cut, int attempt) {
    const auto flat = flat_of_rounds(problem, cut.draft());
    CountProblem& counts = cut.problem;
    const std::size_t rounds = flat.size();
    counts.most_growth.resize(rounds, no_limit);
    counts.most_closing.resize(rounds, no_limit);
    const double less = attempt > 0 ? 1 : 0;
    for (const std::size_t round : flaws.ruffles)
        for (auto [i, last] = about(round, attempt, problem.kept.size(), rounds); i <= last; ++i)
            counts.most_growth[i] = std::max(
                1.0, std::min(counts.most_growth[i] - (i == round ? less : 0), double(most_growth(flat[i]))));
    for (const std::size_t round : flaws.gathers)
        for (auto [i, last] = about(round, attempt, problem.kept.size(), rounds); i <= last; ++i)
            counts.most_closing[i] = std::max(1.0, std::min(counts.most_closing[i] - (i == round ? less : 0),
                                                            double(most_closing(flat[i]))));
    hold_back_wanted(counts);
    choose_counts_of(problem, cut);
    return cut;
}

void hold_to_sound_fabric(const FitProblem& problem, const RoundsDraft& draft, CountProblem& counts) {
    const auto flat = flat_of_rounds(problem, draft);
    counts.most_growth.assign(flat.size(), no_limit);
    counts.most_closing.assign(flat.size(), no_limit);
    for (std::size_t i = std::max<std::size_t>(counts.kept.size(), 1); i < flat.size(); ++i) {
        const double wanted = std::ceil(std::abs(counts.wanted[i] - counts.wanted[i - 1]));
        counts.most_growth[i] = std::max(double(most_growth(flat[i])), wanted);
        counts.most_closing[i] = std::max(double(most_closing(flat[i])), wanted);
    }
}

}  // namespace roundwright
