#include "core/reshape/finished_piece.h"

#include "core/rounds/piece_graph.h"

namespace roundwright {

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

}  // namespace roundwright
