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
                             const SharedGraph* graph) {
    const PieceStudy* earlier = before.study.get();
    auto study = std::make_shared<const PieceStudy>(
        with_sizes(study_shape(toy, piece, earlier, stop, graph), toy, piece, earlier));
    if (wanted) return with_surface(study, toy, piece, before, *wanted, stop);
    return {study, study, nullptr};
}

StudiedPiece with_checks(StudiedPiece made, const Toy& toy, std::size_t piece, const StudiedPiece& before,
                         const std::stop_token& stop) {
    const bool shows_study = made.shown == made.study;
    made.study =
        std::make_shared<const PieceStudy>(with_checks(*made.study, toy, piece, before.study.get(), stop));
    if (shows_study) made.shown = made.study;
    return made;
}

}  // namespace roundwright
