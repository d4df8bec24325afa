#include "core/reshape/continue_from_here.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/base/limits.h"
#include "core/reshape/fabric_flaws.h"
#include "core/reshape/silhouette.h"

namespace roundwright {
namespace {

constexpr double most_pairs = 5e6;  // a few hundredths of a second
constexpr int most_recuts = 5;

double length_cost(const FitProblem& problem, int rounds) {
    const double wanted = rounds_wanted(problem.profile, problem.scale, problem.fan_rounds);
    const double off = (rounds - wanted) / std::max(0.5, 0.02 * wanted);
    return off * off;
}

std::vector<double> places(const FitProblem& problem, int rounds) {
    return places_of_rounds(problem.profile, problem.scale, problem.fan_rounds, rounds,
                            static_cast<int>(problem.kept.size()));
}

CountProblem counts_of(const FitProblem& problem, int rounds) {
    CountProblem counts = count_problem(problem, problem.scale, places(problem, rounds));
    counts.most_pairs = most_pairs;
    RoundsDraft draft;
    draft.foundation = problem.kept_foundation;
    draft.stitches = counts.wanted;
    draft.ends_at = as_parts(places(problem, rounds), problem.profile);
    hold_to_sound_fabric(problem, draft, counts);
    return counts;
}

// What it costs that the piece ends with the last kept round.
double closing_cost(const FitProblem& problem, int rounds) {
    if (problem.kept.empty() || rounds != static_cast<int>(problem.kept.size())) return 0;
    CountProblem last = counts_of(problem, rounds);
    last.wanted = {last.wanted.back()};
    last.kept.clear();
    last.accepted.clear();
    last.tidiness = 0;
    last.loops_below = 0;
    return counts_cost(last, {std::max(problem.kept.back(), last.least)});
}

Continuation of_length(const FitProblem& problem, int rounds) {
    const CountChoice choice = choose_counts(counts_of(problem, rounds));
    Continuation made{choice.counts, places(problem, rounds), choice.cost};
    for (double& place : made.ends_at) place /= problem.profile.rounds();
    made.cost += length_cost(problem, rounds) + closing_cost(problem, rounds);
    return made;
}

RoundsCut cut_of(const FitProblem& problem, const Continuation& continuation) {
    RoundsCut cut;
    cut.scale = problem.scale;
    cut.problem = counts_of(problem, static_cast<int>(continuation.counts.size()));
    cut.counts = continuation.counts;
    cut.foundation = problem.kept_foundation;
    cut.ends_at = continuation.ends_at;
    cut.tidiness = problem.tidiness;
    return cut;
}

Fit fit_of(const FitProblem& problem, const RoundsCut& cut) {
    Fit fit;
    fit.counts = cut.counts;
    fit.ends_at = cut.ends_at;
    fit.scale = problem.scale;
    fit.foundation = problem.kept_foundation;
    fit.found = true;
    return fit;
}

int rounds_in_hand(const WorkedSoFar& worked) { return worked.rounds + (worked.stitches > 0 ? 1 : 0); }

class WaysOn {
  public:
    WaysOn(const PieceForm& form, ReshapeTask task, const Reshaped& wanted, const WorkedSoFar& worked)
        : form_(form), task_(std::move(task)), wanted_(wanted), worked_(worked) {
        task_.problem.scale = wanted.scale;
        outline_ = wanted.form.outline();
    }

    WayOn keeping(int rounds) {
        FitProblem& problem = task_.problem;
        const auto& graph = form_.graph.graph;
        problem.kept.clear();
        for (int i = 0; i < rounds; ++i) problem.kept.push_back(graph.rounds[std::size_t(i)].loops_left);
        problem.kept_foundation = foundation();
        RoundsCut cut = cut_of(problem, best_continuation(problem));
        FittedPiece made = fitted_piece(task_.base, problem, fit_of(problem, cut));
        for (int i = 0; i < most_recuts; ++i) {
            const FabricFlaws flaws = fabric_flaws(problem, cut.draft(), made.form.shape);
            if (flaws.rounds() == 0 || problem.stop.stop_requested()) break;
            cut = recut_without(flaws, problem, std::move(cut), i);
            made = fitted_piece(task_.base, problem, fit_of(problem, cut));
        }
        return way(std::move(made));
    }

    WayOn as_wanted() const {
        WayOn way{back_to(wanted_.form), wanted_, 0};
        return way;
    }

  private:
    int foundation() const {
        if (const auto* ring = std::get_if<ChainRing>(&form_.piece.start)) return ring->chains;
        return form_.graph.graph.foundation_loops;
    }

    FrogBack back_to(const PieceForm& made) const {
        return frog_back(form_.piece, form_.graph.graph, made.piece, made.graph.graph, worked_);
    }

    WayOn way(FittedPiece made) const {
        WayOn way;
        way.made = wanted_;
        way.made.form = std::move(made.form);
        way.made.rewritten = std::move(made.rewritten);
        way.made.code = verdict(way.made.reached(), wanted_.wanted, task_.problem.gauge);
        way.back = back_to(way.made.form);
        way.shape_error_mm = distance_mm(way.made.form.outline(), outline_);
        return way;
    }

    const PieceForm& form_;
    ReshapeTask task_;
    const Reshaped& wanted_;
    WorkedSoFar worked_;
    Silhouette outline_;
};

}  // namespace

double continuation_cost(const FitProblem& problem, const std::vector<int>& counts) {
    const int rounds = static_cast<int>(counts.size());
    if (counts.size() < std::max<std::size_t>(problem.kept.size(), 1))
        return std::numeric_limits<double>::infinity();
    return counts_cost(counts_of(problem, rounds), counts) + length_cost(problem, rounds) +
           closing_cost(problem, rounds);
}

Continuation best_continuation(const FitProblem& problem) {
    const double wanted = rounds_wanted(problem.profile, problem.scale, problem.fan_rounds);
    const int least = std::max(1, static_cast<int>(problem.kept.size()));
    const int most = static_cast<int>(max_rounds_per_piece);
    const int first = std::clamp(static_cast<int>(std::lround(wanted)), least, most);
    Continuation best = of_length(problem, first);
    const auto look_at = [&](int rounds) {
        if (length_cost(problem, rounds) >= best.cost) return false;
        Continuation made = of_length(problem, rounds);
        if (made.cost < best.cost) best = std::move(made);
        return true;
    };
    for (int rounds = first + 1; rounds <= most && look_at(rounds);) ++rounds;
    for (int rounds = first - 1; rounds >= least && look_at(rounds);) --rounds;
    return best;
}

std::vector<WayOn> continue_from_here(const PieceForm& form, const Target& target, const WorkedSoFar& so_far,
                                      int most_ripped, const ReshapeOptions& options) {
    if (target.gauge && *target.gauge != form.gauge) return {};
    const Reshaped wanted = resize(form, target, options);
    if (!has_piece(wanted.code)) return {};
    const WorkedSoFar worked = usable_progress(so_far, form.graph.graph);
    ReshapeTask task = reshape_task(form, target, options);
    WaysOn ways(form, std::move(task), wanted, worked);
    const WayOn whole = ways.as_wanted();
    std::vector<WayOn> list;
    const int in_hand = rounds_in_hand(worked);
    for (int ripped = 0; ripped <= std::min(most_ripped, in_hand); ++ripped) {
        if (options.stop.stop_requested()) return {};
        if (ripped >= whole.back.undo_rounds) {
            list.push_back(whole);
            break;
        }
        list.push_back(ways.keeping(in_hand - ripped));
    }
    return list;
}

}  // namespace roundwright
