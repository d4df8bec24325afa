#include "core/reshape/finished_piece.h"

#include "core/gauge/combined_gauge.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {

namespace {

bool is_found_on(const GivenGauge& given, const std::string& piece) {
    return !given.found_on.empty() && given.found_on == piece;
}
bool is_found_on(const FinishedPieceGauge& finished, const std::string& piece) {
    return finished.piece == piece;
}
template <class Measurement>
bool is_found_on(const Measurement&, const std::string&) {
    return false;
}

SeveralGauge others_of(const Toy& toy, std::size_t piece) {
    SeveralGauge others{measurements_of(toy.gauge)};
    std::erase_if(others.measurements, [&](const GaugeMeasurement& one) {
        return std::visit([&](const auto& what) { return is_found_on(what, toy.pieces[piece].name); },
                          one.what);
    });
    return others;
}

}  // namespace

Calibration calibrate_piece(const Piece& piece, const std::vector<Measured>& measured, KnownBefore known,
                            const ShapeOptions& options) {
    if (piece.area_stretch > 0) known.presumed_stretch = piece.area_stretch;
    return calibrate(shape_problem(piece, piece_graph(piece).graph, Gauge{1, 1, 0, 0}), measured, known,
                     options);
}

Toy with_calibration(Toy toy, std::size_t piece, const Calibration& found) {
    toy.gauge = GivenGauge{found.gauge, toy.pieces[piece].name};
    toy.pieces[piece].area_stretch = found.area_stretch;
    return toy;
}

Toy with_finished_piece(Toy toy, const FinishedPiece& finished, const Calibration& found, bool others_count) {
    SeveralGauge several = others_of(toy, finished.piece);
    const bool replaces = !others_count && !std::holds_alternative<SeveralGauge>(toy.gauge);
    if (replaces || several.measurements.empty() || found.lines.empty())
        return with_calibration(std::move(toy), finished.piece, found);
    if (!others_count)
        for (GaugeMeasurement& other : several.measurements) other.counts = false;
    const FinishedPieceGauge lines{toy.pieces[finished.piece].name, finished.measured, found.lines,
                                   toy.hook_mm};
    if (several.measurements.size() >= most_gauge_measurements)
        several.measurements.erase(several.measurements.begin());
    several.measurements.push_back({lines, {}, finished.measured_on});
    toy.gauge = std::move(several);
    toy.pieces[finished.piece].area_stretch = found.area_stretch;
    return toy;
}

std::optional<Gauge> gauge_of_others(const Toy& toy, std::size_t piece) {
    return gauge_from(others_of(toy, piece), toy.hook_mm);
}

}  // namespace roundwright
