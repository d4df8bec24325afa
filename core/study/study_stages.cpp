#include "core/study/study_stages.h"

#include <set>

#include "core/checks/stitch_limit.h"
#include "core/gauge/offered_circle.h"

namespace roundwright {

namespace {

StitchInputs inputs_of(const Piece& piece) {
    StitchInputs inputs{piece.start, {}};
    inputs.rounds.reserve(piece.rounds.size());
    for (const Round& round : piece.rounds) inputs.rounds.push_back({round.working, round.yarn});
    return inputs;
}

std::vector<std::uint16_t> yarns_of(const StitchGraph& graph) {
    std::set<std::uint16_t> yarns;
    for (const GraphRound& round : graph.rounds)
        for (const GraphStitch& made : round.stitches) yarns.insert(made.stitch.yarn);
    return {yarns.begin(), yarns.end()};
}

/// The same again would come out of the same problem.
bool is_final(Termination termination) {
    return termination == Termination::converged || termination == Termination::unusable_problem;
}

SizeRange exactly(const PieceMeasures& measures) {
    const auto at = [](double value) { return Range{value, value}; };
    return {at(measures.width_mm), at(measures.height_mm), at(measures.volume_mm3)};
}

SizeRange in_proportion(const SizeRange& range, const PieceMeasures& from, const PieceMeasures& to) {
    const auto scaled = [](const Range& given, double at, double wanted) {
        return at > 0 ? Range{given.low * wanted / at, given.high * wanted / at} : Range{wanted, wanted};
    };
    return {scaled(range.width_mm, from.width_mm, to.width_mm),
            scaled(range.height_mm, from.height_mm, to.height_mm),
            scaled(range.volume_mm3, from.volume_mm3, to.volume_mm3)};
}

Shared<SizeStage> sizes_in_proportion(const Shared<ShapeStage>& shape, const Gauge& gauge,
                                      double stretch_error, const Shared<SizeStage>& before) {
    const Shared<SizeStage>& earlier = before && before->round_solved ? before->round_solved : before;
    auto stage = std::make_shared<SizeStage>();
    stage->round_solved = size_stage(shape->round_solved, gauge, stretch_error, earlier);
    stage->shape = shape;
    stage->gauge = gauge;
    stage->stretch_error = stretch_error;
    const PieceMeasures& from = shape->round_solved->measures;
    stage->size = in_proportion(stage->round_solved->size, from, shape->measures);
    if (const auto& with_circle = stage->round_solved->with_circle)
        stage->with_circle = in_proportion(*with_circle, from, shape->measures);
    return stage;
}

}  // namespace

Shared<StitchStage> stitch_stage(const Piece& piece, const Shared<StitchStage>& before,
                                 const SharedGraph* graph) {
    StitchInputs inputs = inputs_of(piece);
    if (before && before->inputs == inputs) return before;
    auto stage = std::make_shared<StitchStage>();
    stage->inputs = std::move(inputs);
    if (exceeds_stitch_limit(piece)) return stage;
    stage->graph = graph != nullptr ? graph->get() : piece_graph(piece);
    stage->yarns = yarns_of(stage->graph.graph);
    return stage;
}

Shared<ShapeStage> shape_stage(const ShapeProblem& problem, const Shared<ShapeStage>& before,
                               std::stop_token stop) {
    if (before && before->problem == problem && is_final(before->measures.termination)) return before;
    auto stage = std::make_shared<ShapeStage>();
    ShapeOptions options;
    options.stop = std::move(stop);
    stage->problem = problem;
    stage->revolved = solve_shape(problem, options, before ? &round_stage(*before).revolved : nullptr);
    stage->measures = measures_of(problem, stage->revolved);
    if (!stage->revolved.usable()) return stage;
    stage->lies = lie_of_rounds(problem, stage->revolved);
    stage->signs = fabric_signs(problem, stage->revolved);
    return stage;
}

const ShapeStage& round_stage(const ShapeStage& stage) {
    return stage.round_solved ? *stage.round_solved : stage;
}

const Shared<ShapeStage>& round_stage(const Shared<ShapeStage>& stage) {
    return stage->round_solved ? stage->round_solved : stage;
}

bool takes_the_place_of(const ShapeStage& next, const ShapeStage& shown) {
    if (next.problem != shown.problem) return true;
    if (next.stitches && shown.stitches && next.stitches->inputs != shown.stitches->inputs) return true;
    if (shown.measures.converged() && !next.measures.converged()) return false;
    return next.measures.fidelity >= shown.measures.fidelity;
}

Shared<SizeStage> size_stage(const Shared<ShapeStage>& shape, const Gauge& gauge, double stretch_error,
                             const Shared<SizeStage>& before) {
    if (before && before->shape == shape && before->gauge == gauge && before->stretch_error == stretch_error)
        return before;
    if (shape->round_solved) return sizes_in_proportion(shape, gauge, stretch_error, before);
    auto stage = std::make_shared<SizeStage>();
    stage->shape = shape;
    stage->gauge = gauge;
    stage->stretch_error = stretch_error;
    stage->size = shape->revolved.usable() ? size_range(shape->problem, shape->revolved, gauge, stretch_error)
                                           : exactly(shape->measures);
    const std::optional<Gauge> then = gauge_with_circle(gauge);
    if (then && shape->revolved.usable())
        stage->with_circle = size_range(shape->problem, shape->revolved, *then, stretch_error);
    return stage;
}

}  // namespace roundwright
