#include "core/study/fabric_stage.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/mesh/fabric_surface.h"
#include "core/shape/fabric/cells_start.h"
#include "core/shape/fabric/lay_flat.h"
#include "core/shape/fabric/measure_stitches.h"
#include "core/shape/fabric/settle_ruffle.h"
#include "core/shape/fabric/stand_upright.h"
#include "core/shape/oval_plan.h"
#include "core/shape/solve_shape.h"
#include "core/study/coil_stage.h"

namespace roundwright {
namespace {

/// Whether the round solver's shape is one of this piece, and not of a round one in its place.
bool starts_round(const StitchCells& cells, const ShapeStage& round) {
    const auto is_partial = [](const LaidRound& laid) {
        return std::ranges::any_of(laid.cells, [](const LaidStitch& cell) { return cell.carried; });
    };
    return round.revolved.usable() && !round.problem.equivalent_round && !cells.rows && !cells.around_chain &&
           std::ranges::none_of(cells.rounds, is_partial);
}

/// Where the nodes start, and, where the round shape is one of the piece, how they stand in the end.
struct Starts {
    std::vector<std::vector<Vec3>> nodes;  ///< the best one first
    std::vector<Vec3> standing;
    std::vector<Vec3> lying;  ///< of what is not stuffed: with no waves
};

Starts starts_of(const StitchCells& cells, const ShapeStage& round, const ShapeStage* before,
                 std::optional<std::vector<Vec3>> plane) {
    Starts starts;
    if (plane) {
        starts.lying = std::move(*plane);
        starts.nodes.push_back(starts.lying);
    }
    if (before != nullptr && before->stitched) {
        const SolvedStitches& from = *before->stitched;
        if (from.cells.rows == cells.rows && from.cells.around_chain == cells.around_chain)
            starts.nodes.push_back(carried_start(cells, from.cells, from.shape.nodes));
    }
    if (starts_round(cells, round)) {
        starts.standing = revolved_start(cells, round.revolved);
        starts.nodes.push_back(starts.standing);
        starts.lying = starts.standing;
    }
    starts.nodes.push_back(scaled_start(cells));
    return starts;
}

bool is_settled(Termination termination) {
    return termination == Termination::converged || termination == Termination::cancelled;
}

/// How the rounds lie by the round solve; around a chain, those of the disc that its ends make.
std::vector<RoundLie> lies_in_the_round(const PieceStudy& round) {
    if (!starts_oval(round.problem())) return round_stage(*round.shape).lies;
    const ShapeProblem disc = ends_as_disc(round.problem());
    return lie_of_rounds(disc, solve_shape(disc));
}

/// Half of each edge's waves, which fade inwards; nothing where nothing ruffles.
std::vector<double> wave_amplitudes(const PieceStudy& round, std::size_t edges) {
    const std::vector<RoundLie> lies = lies_in_the_round(round);
    if (std::ranges::none_of(lies, [](const RoundLie& lie) { return lie.lie == Lie::ruffles; })) return {};
    std::vector<double> amplitude(edges, 0);
    for (std::size_t i = 0; i + 1 < edges && i < lies.size(); ++i)
        amplitude[i + 1] = std::max(lies[i].wave_height_mm / 2, amplitude[i] / 2);
    return amplitude;
}

SolvedStitches solve(StitchCells cells, const Starts& starts, const PieceStudy& round,
                     const std::stop_token& stop) {
    FabricOptions options;
    options.stop = stop;
    if (!(cells.problem.area_stretch > 0) && !starts.lying.empty()) {
        const std::vector<double> amplitude = wave_amplitudes(round, cells.edges.size());
        if (!amplitude.empty()) {
            const auto ruffled = ruffled_starts(cells, starts.lying, amplitude);
            return settle_ruffle(std::move(cells), ruffled, options);
        }
    }
    SolvedStitches solved{std::move(cells), {}, {}};
    for (const auto& start : starts.nodes) {
        if (solved.cells.problem.area_stretch > 0 && !(enclosed_mm3(solved.cells, start) > 0)) continue;
        FabricShape found = solve_fabric(solved.cells.problem, start, options);
        const bool settled = is_settled(found.termination);
        if (settled || !solved.shape.usable()) solved.shape = std::move(found);
        if (settled) break;
    }
    return solved;
}

/// The loops as the round solver's judgement of how rounds lie reads them.
Shape as_circles(const SolvedStitches& stitches, const PieceMeasures& measures) {
    Shape shape;
    shape.termination = measures.termination;
    shape.pressure = stitches.shape.pressure;
    shape.radius_mm = drawn_tight_radii_mm(stitches);
    for (std::size_t i = 0; i < measures.loops.size(); ++i) {
        shape.z_mm.push_back(measures.loops[i].height_mm);
        shape.course_stretch.push_back(measures.loops[i].course_stretch);
        if (i > 0) shape.wale_stretch.push_back(measures.loops[i].wale_stretch);
    }
    shape.area_stretch = measures.area_stretch;
    shape.width_mm = measures.width_mm;
    shape.height_mm = measures.height_mm;
    shape.depth_mm = measures.depth_mm;
    return shape;
}

Shared<ShapeStage> stage_of(SolvedStitches solved, const PieceStudy& round) {
    auto stage = std::make_shared<ShapeStage>();
    stage->problem = round.problem();
    stage->stitches = round.stitches;
    stage->measures = measure_stitches(solved);
    stage->round_solved = round_stage(round.shape);
    const Shape circles = as_circles(solved, stage->measures);
    stage->lies = lie_of_rounds(stage->problem, circles);
    for (std::size_t i = 0; i < stage->lies.size(); ++i) {
        if (stage->lies[i].lie != Lie::ruffles) continue;
        const EdgeWaves seen = edge_waves(solved, i + 1);
        stage->lies[i].waves = seen.waves;
        stage->lies[i].wave_height_mm = seen.height_mm;
    }
    stage->signs = fabric_signs(stage->problem, circles);
    stage->stitched = std::make_shared<const SolvedStitches>(std::move(solved));
    return stage;
}

std::size_t stitches_of(const PieceGraph& graph) {
    std::size_t stitches = 0;
    for (const GraphRound& made : graph.graph.rounds) stitches += made.stitches.size();
    return stitches;
}

/// How rounds lie is judged by the round solver, whose checks and cures stand beside the shape; only how high
/// they wave is seen in the finer one.
Shared<ShapeStage> judged_alike(const ShapeStage& finer, const ShapeStage& round) {
    auto stage = std::make_shared<ShapeStage>(finer);
    for (std::size_t i = 0; i < std::min(stage->lies.size(), round.lies.size()); ++i) {
        const RoundLie seen = std::exchange(stage->lies[i], round.lies[i]);
        if (round.lies[i].lie != Lie::ruffles) continue;
        stage->lies[i].waves = seen.waves;
        stage->lies[i].wave_height_mm = seen.wave_height_mm;
    }
    return stage;
}

FabricStage refused(EveryStitchRefusal why, CellsRefusal cells = CellsRefusal::none) {
    FabricStage stage;
    stage.refusal = why;
    stage.cells = cells;
    return stage;
}

}  // namespace

FabricStage fabric_stage(const Piece& piece, const PieceStudy& round, const Shared<ShapeStage>& before,
                         std::stop_token stop, double slant_stitches) {
    if (is_coil(round)) return {round.shape};
    const bool same =
        before && before->stitched && before->problem == round.problem() &&
        before->stitches->inputs == round.stitches->inputs && before->measures.converged() &&
        (before->stitched->cells.rows || before->stitched->cells.slant_stitches == slant_stitches);
    if (same) return {before};
    const ShapeProblem& problem = round.problem();
    if (problem.limp || problem.on_its_face) return refused(EveryStitchRefusal::lies_limp);
    StitchCells cells =
        stitch_cells(piece, round.graph().graph, round.gauge, yielded_shares(problem), slant_stitches);
    if (!cells.usable()) return refused(EveryStitchRefusal::no_cells, cells.refusal);
    auto plane = lay_flat(cells, flat_parts_of_oval(problem, cells.rows), stop);
    const Starts starts = starts_of(cells, round_stage(*round.shape), before.get(), std::move(plane));
    SolvedStitches solved = solve(std::move(cells), starts, round, stop);
    if (!solved.shape.usable()) return refused(EveryStitchRefusal::not_solved);
    if (starts.standing.empty())
        stand_upright(solved.cells, solved.shape.nodes);
    else
        stand_upright_as(starts.standing, solved.shape.nodes);
    return {stage_of(std::move(solved), round)};
}

EveryStitchStudy with_every_stitch(const std::shared_ptr<const PieceStudy>& round, const Toy& toy,
                                   std::size_t index, const EveryStitchOptions& options) {
    if (options.most_stitches > 0 && stitches_of(round->graph()) > options.most_stitches)
        return {round, EveryStitchRefusal::too_large};
    const FabricStage found = fabric_stage(toy.pieces[index], *round, options.before, options.stop);
    if (!found.shape->measures.converged())
        return {round,
                found.refusal == EveryStitchRefusal::none ? EveryStitchRefusal::not_solved : found.refusal,
                found.cells};
    PieceStudy finer = with_shape(*round, found.shape == options.before
                                              ? found.shape
                                              : judged_alike(*found.shape, round_stage(*round->shape)));
    return {std::make_shared<const PieceStudy>(with_sizes(std::move(finer), toy, index, round.get()))};
}

bool is_round_as_worked(const Piece& piece, const PieceStudy& study) {
    if (is_coil(study)) return true;
    if (study.problem().equivalent_round) return false;
    const auto is_left_alone = [](const LaidStitch& cell) { return cell.carried; };
    return std::ranges::none_of(lay_fabric(piece, study.graph().graph), [&](const LaidRound& laid) {
        return std::ranges::any_of(laid.cells, is_left_alone);
    });
}

PieceStudy as_worked(PieceStudy study, const Toy& toy, std::size_t index, std::stop_token stop) {
    if (study.shape->stitched || !study.measures().converged() ||
        is_round_as_worked(toy.pieces[index], study))
        return study;
    EveryStitchOptions options;
    options.most_stitches = most_stitches_as_worked;
    options.stop = std::move(stop);
    return *with_every_stitch(std::make_shared<const PieceStudy>(std::move(study)), toy, index, options)
                .study;
}

}  // namespace roundwright
