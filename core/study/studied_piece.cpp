#include "core/study/studied_piece.h"

namespace roundwright {

std::shared_ptr<const StitchSurface> StudiedPiece::surface() const {
    if (!drawn) return nullptr;
    return {drawn, &drawn->surface};
}

StudiedPiece with_surface(std::shared_ptr<const PieceStudy> study, const Toy& toy, std::size_t piece,
                          const StudiedPiece& before, const SurfaceWanted& wanted,
                          const std::stop_token& stop) {
    StudiedPiece made{study, study, nullptr};
    if (stop.stop_requested()) return made;
    if (wanted.unstuffed)
        made.shown = std::make_shared<const PieceStudy>(
            unstuffed(*study, toy.pieces[piece], before.shown.get(), stop));
    if (!stop.stop_requested() && made.shown->measures().usable())
        made.drawn = surface_stage(toy, piece, *made.shown, wanted.options, before.drawn);
    return made;
}

StudiedPiece study_in_stages(const Toy& toy, std::size_t piece, const StudiedPiece& before,
                             const std::optional<SurfaceWanted>& wanted, const std::stop_token& stop,
                             const std::function<void(const StudiedPiece&)>& shape_is_there) {
    const PieceStudy* earlier = before.study.get();
    auto shape = std::make_shared<const PieceStudy>(study_shape(toy, piece, earlier, stop));
    StudiedPiece made{shape, shape, nullptr};
    if (wanted) made = with_surface(shape, toy, piece, before, *wanted, stop);
    if (shape_is_there && !stop.stop_requested()) shape_is_there(made);
    made.study = std::make_shared<const PieceStudy>(with_sizes_and_checks(*shape, toy, piece, earlier, stop));
    if (made.shown == shape) made.shown = made.study;
    return made;
}

}  // namespace roundwright
