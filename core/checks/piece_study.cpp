#include "core/checks/piece_study.h"

#include "core/checks/run_checks.h"
#include "core/checks/stitch_limit.h"
#include "core/gauge/usual_gauge.h"

namespace roundwright {

namespace {

void set_gauge(PieceStudy& study, const Toy& toy) {
    const std::optional<Gauge> known = gauge_from(toy.gauge, toy.hook_mm);
    study.gauge_known = known.has_value();
    study.gauge = known ? *known : usual_gauge(toy.hook_mm);
}

void solve(PieceStudy& study, const Piece& piece, const PieceStudy* warm, std::stop_token stop) {
    study.graph = piece_graph(piece);
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

}  // namespace

PieceStudy study_piece(const Toy& toy, std::size_t index, const PieceStudy* warm, std::stop_token stop) {
    const Piece& piece = toy.pieces[index];
    PieceStudy study;
    set_gauge(study, toy);
    if (!exceeds_stitch_limit(piece)) solve(study, piece, warm, std::move(stop));
    if (study.shape.usable())
        study.size = size_range(study.problem, study.shape, study.gauge, stretch_error(toy, piece));
    study.checks = run_checks(toy, index, study);
    return study;
}

}  // namespace roundwright
