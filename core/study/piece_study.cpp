#include "core/study/piece_study.h"

#include <algorithm>

#include "core/checks/run_checks.h"
#include "core/checks/sound_cures.h"
#include "core/checks/stitch_limit.h"
#include "core/gauge/usual_gauge.h"

namespace roundwright {

namespace {

void set_gauge(PieceStudy& study, const Toy& toy) {
    const std::optional<Gauge> known = gauge_from(toy.gauge, toy.hook_mm);
    study.gauge_known = known.has_value();
    study.gauge = known ? *known : usual_gauge(toy.hook_mm);
}

void solve(PieceStudy& study, const Piece& piece, const PieceStudy* warm, std::stop_token stop,
           const SharedGraph* graph) {
    study.graph = graph != nullptr ? graph->get() : piece_graph(piece);
    study.problem = shape_problem(piece, study.graph.graph, study.gauge);
    ShapeOptions options;
    options.stop = std::move(stop);
    study.shape = solve_shape(study.problem, options, warm == nullptr ? nullptr : &warm->shape);
    if (study.shape.usable()) study.lies = lie_of_rounds(study.problem, study.shape);
}

/// The errors of a gauge found on this very piece are those of its size, the stuffing's included.
double stretch_error(const Toy& toy, const Piece& piece) {
    const auto* given = std::get_if<GivenGauge>(&toy.gauge);
    const bool measured_here = given != nullptr && !given->found_on.empty() && given->found_on == piece.name;
    return measured_here ? 0 : stuffing_error_share * piece.area_stretch;
}

PieceStudy with_all_cures(const Toy& toy, std::size_t index, const PieceStudy* warm, std::stop_token stop,
                          const SharedGraph* graph = nullptr) {
    const Piece& piece = toy.pieces[index];
    PieceStudy study;
    set_gauge(study, toy);
    if (!exceeds_stitch_limit(piece)) solve(study, piece, warm, std::move(stop), graph);
    if (study.shape.usable())
        study.size = size_range(study.problem, study.shape, study.gauge, stretch_error(toy, piece));
    study.checks = run_checks(toy, index, study);
    return study;
}

/// Trying a cure takes a study of its own, so a large piece has few of them tried.
int most_cures_tried(const PieceStudy& study) {
    constexpr std::size_t most_stitches_tried = 40'000;
    constexpr std::size_t most = 24;
    std::size_t stitches = 1;
    for (const GraphRound& round : study.graph.graph.rounds) stitches += round.stitches.size();
    return static_cast<int>(std::clamp<std::size_t>(most_stitches_tried / stitches, 1, most));
}

}  // namespace

PieceStudy study_piece(const Toy& toy, std::size_t index, const PieceStudy* warm, std::stop_token stop,
                       const SharedGraph* graph) {
    PieceStudy study = with_all_cures(toy, index, warm, stop, graph);
    if (std::ranges::all_of(study.checks, [](const Check& check) { return check.cures.empty(); }))
        return study;
    Toy trial = toy;
    keep_sound_cures(toy.pieces[index], study.checks, most_cures_tried(study), [&](const Piece& cured) {
        trial.pieces[index] = cured;
        return stop.stop_requested() ? std::vector<Check>{}
                                     : with_all_cures(trial, index, &study, stop).checks;
    });
    return study;
}

}  // namespace roundwright
