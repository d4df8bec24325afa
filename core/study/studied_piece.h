#pragma once

#include <optional>
#include <stop_token>

#include "core/study/study_surface.h"

namespace roundwright {

/// A piece worked out, with the surface that shows it.
struct StudiedPiece {
    std::shared_ptr<const PieceStudy> study;
    std::shared_ptr<const PieceStudy> shown;  ///< of what the surface shows: `study`, or the piece unstuffed
    Shared<SurfaceStage> drawn;               ///< null: not wanted, or no shape was found

    [[nodiscard]] std::shared_ptr<const StitchSurface> surface() const;
};

/// The surface that is wanted of a piece.
struct SurfaceWanted {
    bool unstuffed = false;  ///< of the piece as it is before stuffing
    RevolveOptions options;
};

/// Works out a piece of a toy in stages, and shares with `before` (its parts may be null) what has not
/// changed: first its shape, sizes and surface, with no checks yet, then its checks, since curing takes
/// longest.
[[nodiscard]] StudiedPiece study_in_stages(const Toy& toy, std::size_t piece, const StudiedPiece& before,
                                           const std::optional<SurfaceWanted>& wanted,
                                           const std::stop_token& stop = {},
                                           const SharedGraph* graph = nullptr);
[[nodiscard]] StudiedPiece with_checks(StudiedPiece made, const Toy& toy, std::size_t piece,
                                       const StudiedPiece& before, const std::stop_token& stop = {});

/// The surface of a study that is right already.
[[nodiscard]] StudiedPiece with_surface(std::shared_ptr<const PieceStudy> study, const Toy& toy,
                                        std::size_t piece, const StudiedPiece& before,
                                        const SurfaceWanted& wanted, const std::stop_token& stop = {});

}  // namespace roundwright
