#include "core/study/piece_study.h"

#include <algorithm>
#include <atomic>

#include "core/checks/run_checks.h"
#include "core/checks/sound_cures.h"
#include "core/checks/stitch_limit.h"
#include "core/gauge/combined_gauge.h"
#include "core/gauge/usual_gauge.h"
#include "core/study/coil_stage.h"

namespace roundwright {

namespace {

std::atomic<std::uint64_t> derived_for_cures{0};

const PieceStudy& or_none(const PieceStudy* study) {
    static const PieceStudy none;
    return study == nullptr ? none : *study;
}

void set_gauge(PieceStudy& study, const Toy& toy) {
    const std::optional<Gauge> known = gauge_from(toy.gauge, toy.hook_mm);
    study.gauge_known = known.has_value();
    study.gauge = known ? *known : usual_gauge(toy.hook_mm);
}

ShapeProblem problem_of(const Piece& piece, const PieceStudy& study, const Gauge& gauge) {
    return shape_problem(piece, study.graph().graph, gauge, study.fabric.mm);
}

/// What the solver starts from, or takes over where nothing has changed. A coil helps no solver, and the
/// round solver's problem may be the same for stitches that lie elsewhere.
Shared<ShapeStage> start_from(const PieceStudy& before, const StitchStage& stitches) {
    if (!before.shape || is_coil(before)) return nullptr;
    const bool of_others = before.shape->stitches && before.shape->stitches->inputs != stitches.inputs;
    return of_others ? round_stage(before.shape) : before.shape;
}

/// Once the stitches are known.
void set_shape(PieceStudy& study, const Piece& piece, const PieceStudy& before, std::stop_token stop) {
    if (exceeds_stitch_limit(piece)) return;
    ShapeProblem problem = problem_of(piece, study, study.gauge);
    if (const auto coil = coil_of(piece, problem, study.fabric.mm)) {
        study.shape = coil_stage(*coil, std::move(problem), study.fabric.mm, before.shape);
        return;
    }
    study.shape = shape_stage(std::move(problem), start_from(before, *study.stitches), std::move(stop));
}

/// The thickest of the yarns that its stitches are worked in: a washer has to pass it, and a ball to fit in.
FabricThickness fabric_of(const Toy& toy, const PieceStudy& study) {
    FabricThickness thickest;
    for (const std::uint16_t yarn : study.stitches->yarns) {
        if (yarn >= toy.yarns.size()) continue;
        const FabricThickness fabric = fabric_thickness(toy.yarns[yarn].weight, study.gauge.stitch_width_mm);
        if (fabric.mm > thickest.mm) thickest = fabric;
    }
    return thickest.mm > 0 ? thickest : fabric_thickness(study.gauge.stitch_width_mm);
}

bool is_found_on(const GivenGauge& given, const Piece& piece) {
    return !given.found_on.empty() && given.found_on == piece.name;
}
bool is_found_on(const FinishedPieceGauge& finished, const Piece& piece) {
    return !finished.lines.empty() && finished.piece == piece.name;
}
template <class Measurement>
bool is_found_on(const Measurement&, const Piece&) {
    return false;
}

/// The errors of a gauge found on this very piece are those of its size, the stuffing's included.
double stretch_error(const Toy& toy, const Piece& piece) {
    const bool measured_here =
        std::ranges::any_of(measurements_of(toy.gauge), [&](const GaugeMeasurement& measurement) {
            return measurement.counts &&
                   std::visit([&](const auto& what) { return is_found_on(what, piece); }, measurement.what);
        });
    return measured_here ? 0 : stuffing_error_share * piece.area_stretch;
}

std::vector<Check> checks_with_all_cures(const PieceStudy& study, const Piece& piece, std::size_t index) {
    const ShapeStage& shape = round_stage(*study.shape);
    return run_checks({piece, static_cast<int>(index), study.graph(), study.gauge, study.gauge_known,
                       shape.problem, shape.measures, shape.lies, shape.signs, shape.revolved, study.fabric});
}

/// Trying a cure takes a study of its own, so a large piece has few of them tried.
int most_cures_tried(const PieceStudy& study) {
    constexpr std::size_t most_stitches_tried = 40'000;
    constexpr std::size_t most = 24;
    std::size_t stitches = 1;
    for (const GraphRound& round : study.graph().graph.rounds) stitches += round.stitches.size();
    return static_cast<int>(std::clamp<std::size_t>(most_stitches_tried / stitches, 1, most));
}

std::vector<Check> checks_with_sound_cures(const PieceStudy& study, const Piece& piece, std::size_t index,
                                           const std::stop_token& stop) {
    std::vector<Check> checks = checks_with_all_cures(study, piece, index);
    keep_sound_cures(piece, checks, most_cures_tried(study), [&](const Piece& cured) {
        if (stop.stop_requested()) return std::vector<Check>{};
        PieceStudy trial{study.gauge, study.gauge_known, stitch_stage(cured, study.stitches)};
        trial.fabric = study.fabric;
        set_shape(trial, cured, study, stop);
        if (trial.stitches != study.stitches) ++derived_for_cures;
        return checks_with_all_cures(trial, cured, index);
    });
    return checks;
}

Piece as_checks_read_it(Piece piece) {
    piece.name.clear();
    piece.make = 1;
    piece.worked = {};
    return piece;
}

/// The same piece at another place in the toy.
Shared<CheckStage> renumbered(const CheckStage& stage, int index) {
    auto other = std::make_shared<CheckStage>(stage);
    other->piece_index = index;
    for (Check& check : other->checks)
        if (check.piece >= 0) check.piece = index;
    return other;
}

Shared<CheckStage> check_stage(const PieceStudy& study, const Piece& piece, std::size_t index,
                               const Shared<CheckStage>& before, const std::stop_token& stop) {
    CheckInputs inputs{study.stitches,    round_stage(study.shape), study.gauge,
                       study.gauge_known, as_checks_read_it(piece), study.fabric};
    const auto place = static_cast<int>(index);
    if (before->complete && before->inputs == inputs)
        return before->piece_index == place ? before : renumbered(*before, place);
    auto stage = std::make_shared<CheckStage>();
    stage->inputs = std::move(inputs);
    stage->piece_index = place;
    stage->checks = checks_with_sound_cures(study, piece, index, stop);
    stage->complete = !stop.stop_requested();
    return stage;
}

}  // namespace

std::uint64_t graphs_of_cures() { return derived_for_cures; }

PieceStudy study_shape(const Toy& toy, std::size_t index, const PieceStudy* before, std::stop_token stop,
                       const SharedGraph* graph) {
    PieceStudy study;
    const Piece& piece = toy.pieces[index];
    set_gauge(study, toy);
    study.stitches = stitch_stage(piece, or_none(before).stitches, graph);
    study.fabric = fabric_of(toy, study);
    set_shape(study, piece, or_none(before), std::move(stop));
    return study;
}

PieceStudy with_sizes(PieceStudy study, const Toy& toy, std::size_t index, const PieceStudy* before) {
    const Piece& piece = toy.pieces[index];
    const Shared<SizeStage>& old = or_none(before).sizes;
    study.sizes = is_coil(study) ? coil_size_stage(piece, study, old)
                                 : size_stage(study.shape, study.gauge, stretch_error(toy, piece), old);
    return study;
}

PieceStudy with_checks(PieceStudy study, const Toy& toy, std::size_t index, const PieceStudy* before,
                       std::stop_token stop) {
    study.checked = check_stage(study, toy.pieces[index], index, or_none(before).checked, stop);
    return study;
}

PieceStudy study_piece(const Toy& toy, std::size_t index, const PieceStudy* before, std::stop_token stop,
                       const SharedGraph* graph) {
    return with_checks(with_sizes(study_shape(toy, index, before, stop, graph), toy, index, before), toy,
                       index, before, stop);
}

PieceStudy unstuffed(const PieceStudy& study, const Piece& piece, const PieceStudy* before,
                     std::stop_token stop) {
    if (exceeds_stitch_limit(piece) || is_coil(study)) return study;
    Piece empty = piece;
    empty.area_stretch = unstuffed_stretch;
    const ShapeProblem problem = problem_of(empty, study, study.gauge);
    const PieceStudy& earlier = or_none(before);
    PieceStudy shown{study.gauge, study.gauge_known, study.stitches};
    shown.fabric = study.fabric;
    shown.shape = shape_stage(problem, earlier.problem() == problem ? earlier.shape : study.shape, stop);
    shown.sizes = size_stage(shown.shape, shown.gauge, 0, earlier.sizes);
    return shown;
}

PieceStudy with_shape(PieceStudy study, Shared<ShapeStage> next) {
    if (takes_the_place_of(*next, *study.shape)) study.shape = std::move(next);
    return study;
}

PieceStudy as_round_solved(PieceStudy study) {
    study.shape = round_stage(study.shape);
    if (study.sizes->round_solved) study.sizes = study.sizes->round_solved;
    return study;
}

PieceMeasures measures_at(const Gauge& gauge, const Piece& piece, const PieceStudy& study) {
    const ShapeProblem problem = problem_of(piece, study, gauge);
    if (is_coil(study)) {
        const auto coil = coil_of(piece, problem, study.fabric.mm);
        return coil ? coil_measures(*coil, problem) : PieceMeasures{};
    }
    const ShapeStage& round = round_stage(*study.shape);
    if (!round.revolved.usable()) return {};
    PieceMeasures there = measures_of(problem, solve_shape(problem, {}, &round.revolved));
    const PieceMeasures &here = round.measures, &finer = study.measures();
    const auto carry = [](double& there_mm, double here_mm, double finer_mm) {
        if (here_mm > 0) there_mm *= finer_mm / here_mm;
    };
    carry(there.width_mm, here.width_mm, finer.width_mm);
    carry(there.depth_mm, here.depth_mm, finer.depth_mm);
    carry(there.height_mm, here.height_mm, finer.height_mm);
    return there;
}

}  // namespace roundwright
