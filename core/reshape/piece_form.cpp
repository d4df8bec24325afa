#include "core/reshape/piece_form.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/gauge/usual_gauge.h"
#include "core/reshape/carry_over.h"
#include "core/shape/curled_strip.h"
#include "core/shape/fabric_signs.h"
#include "core/shape/lies_limp.h"
#include "core/stitches/stitch_measure.h"

namespace roundwright {
namespace {

double closing_rounds(const PieceForm& form) {
    const ShapeProblem& p = form.problem;
    return p.last == MeridianEnd::drawn_closed ? p.fan_height_mm / p.rest_height_mm.back() : 0;
}

double rounds_with_closing(const PieceForm& form) {
    return double(form.piece.rounds.size()) + closing_rounds(form);
}

// Height in single crochets of a new round that takes after each old one.
std::vector<double> heights_in_sc(const PieceForm& form) {
    std::vector<double> heights;
    for (std::size_t i = 0; i < form.piece.rounds.size(); ++i) {
        const auto* even = std::get_if<WorkedEvenly>(&form.piece.rounds[i].working);
        const StitchKind kind = even != nullptr ? even->kind : worked_mostly(form.graph.graph.rounds[i]).kind;
        heights.push_back(std::max(height_in_sc(kind), 0.01));
    }
    return heights;
}

Foundation foundation_of(const Piece& piece) {
    if (std::holds_alternative<MagicRing>(piece.start)) return Foundation::none;
    if (std::holds_alternative<ChainRing>(piece.start)) return Foundation::ring_of_chains;
    if (std::holds_alternative<OpenTube>(piece.start)) return Foundation::loops;
    return Foundation::loops_in_pairs;
}

// Everything of a shape problem but its lengths.
ShapeProblem ends_of(const PieceForm& form, const StitchProfile& profile, const Gauge& gauge) {
    ShapeProblem ends = form.problem;
    ends.rest_loop_mm.clear();
    ends.rest_height_mm.clear();
    ends.fan_height_mm = gauge.stitch_width_mm / 2;
    ends.stitch_width_mm = gauge.stitch_width_mm;
    ends.last = profile.drawn_closed ? MeridianEnd::drawn_closed : MeridianEnd::open;
    ends.sewn_straight = ends.sewn_straight && !profile.drawn_closed;
    return ends;
}

std::vector<int> sources_of(const Fit& fit, const PieceForm& old, std::size_t kept) {
    std::vector<int> sources = rounds_at_same_height(fit.ends_at, static_cast<int>(old.piece.rounds.size()),
                                                     rounds_with_closing(old));
    const int last = static_cast<int>(old.piece.rounds.size()) - 1;
    for (std::size_t i = 0; i < sources.size(); ++i)
        sources[i] = i < kept ? int(i) : std::max(sources[i], std::min(static_cast<int>(kept), last));
    return sources;
}

}  // namespace

bool PieceForm::usable() const {
    return !piece.rounds.empty() && graph.problems.empty() && shape.usable() && shape.width_mm > 0 &&
           shape.termination != Termination::cancelled;
}

SizeRange size_range(const PieceForm& form) {
    return size_range(form.problem, form.shape, form.gauge, stuffing_error_share * form.piece.area_stretch);
}

Gauge gauge_of(const Toy& toy) { return gauge_or_usual(toy.gauge, toy.hook_mm); }

PieceForm piece_form(const Piece& piece, const Gauge& gauge, const Shape* warm, std::stop_token stop) {
    PieceForm form{piece, gauge, piece_graph(piece), {}, {}};
    form.problem = shape_problem(piece, form.graph.graph, gauge);
    if (curls(piece, stitch_counts(form.graph.graph))) form.fidelity = Fidelity::every_stitch;
    ShapeOptions options;
    options.stop = stop;
    form.shape = solve_shape(form.problem, options, warm);
    return form;
}

int start_count(const Piece& piece, const StitchGraph& graph) {
    if (graph.rounds.empty()) return 6;
    if (graph.foundation_loops == 0 && std::holds_alternative<MagicRing>(piece.start))
        return std::max(graph.rounds.front().loops_left, 1);
    std::map<int, int> changes;
    for (std::size_t i = 1; i < graph.rounds.size(); ++i)
        ++changes[std::abs(graph.rounds[i].loops_left - graph.rounds[i - 1].loops_left)];
    changes.erase(0);
    const auto most = std::max_element(changes.begin(), changes.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == changes.end() ? 1 : most->first;
}

FitProblem fit_problem(const PieceForm& form, StitchProfile profile, const Gauge& gauge) {
    FitProblem problem;
    const auto ends = ends_of(form, profile, gauge);
    problem.gauge = gauge;
    problem.foundation = foundation_of(form.piece);
    problem.start_count = start_count(form.piece, form.graph.graph);
    const auto heights = heights_in_sc(form);
    problem.fan_rounds = gauge.stitch_width_mm / 2 / (gauge.round_height_mm * heights.back());
    const double old_rounds = rounds_with_closing(form);
    const double old_foundation = form.problem.rest_loop_mm.front();
    const Joining form_joining = form.piece.joining;
    problem.problem_of = [=](const RoundsDraft& draft) {
        ShapeProblem shape = ends;
        shape.rest_loop_mm.push_back(draft.foundation * gauge.stitch_width_mm);
        for (double stitches : draft.stitches) shape.rest_loop_mm.push_back(stitches * gauge.stitch_width_mm);
        for (int source : rounds_at_same_height(draft.ends_at, int(heights.size()), old_rounds))
            shape.rest_height_mm.push_back(gauge.round_height_mm * heights[source] * draft.height_factor);
        if (shape.first == MeridianEnd::drawn_closed)
            shape.first_fan_height_mm *= shape.rest_loop_mm.front() / old_foundation;
        lay_unstuffed(shape, form_joining);
        return shape;
    };
    problem.profile = std::move(profile);
    return problem;
}

void set_own_fabric(const PieceForm& form, FitProblem& problem) {
    problem.own_rounds = rounds_with_closing(form);
    problem.own_lies.clear();
    for (const RoundLie& lie : lie_of_rounds(form.problem, form.shape)) problem.own_lies.push_back(lie.lie);
    const auto signs = fabric_signs(form.problem, form.shape);
    problem.has_gaps = std::any_of(signs.begin(), signs.end(),
                                   [](const FabricSign& sign) { return sign.kind == FabricSignKind::gaps; });
}

CarriedOver carried_over(const PieceForm& old, const Fit& fit, std::size_t kept) {
    return carry_over(old.piece, old.graph.graph, fit.counts, fit.foundation, sources_of(fit, old, kept),
                      kept);
}

FittedPiece fitted_piece(const PieceForm& old, const FitProblem& problem, const Fit& fit) {
    CarriedOver carried = carried_over(old, fit, problem.kept.size());
    return {piece_form(carried.piece, problem.gauge, nullptr, problem.stop), std::move(carried.rewritten)};
}

}  // namespace roundwright
