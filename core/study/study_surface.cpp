#include "core/study/study_surface.h"

namespace roundwright {

StitchSurface study_surface(const Toy& toy, std::size_t piece, const PieceStudy& study,
                            RevolveOptions options) {
    if (!study.shape.usable()) return {};
    std::vector<int> waves;
    std::vector<double> heights;
    for (const RoundLie& lie : study.lies) {
        waves.push_back(lie.waves);
        heights.push_back(lie.wave_height_mm);
    }
    options.stitch_width_mm = study.gauge.stitch_width_mm;
    return revolve(toy, toy.pieces[piece], study.graph.graph, study.shape, waves, heights, options);
}

}  // namespace roundwright
