#pragma once

#include <optional>
#include <vector>

#include "app/cli/arguments.h"
#include "core/checks/piece_study.h"
#include "core/face/feature_mesh.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright::app {

/// A piece as it can be drawn or written: its surface, and what is fitted to it.
struct ShownPiece {
    StitchSurface surface;
    std::vector<FeaturePart> parts;

    [[nodiscard]] bool empty() const { return surface.mesh.indices.empty(); }
};

/// How finely the fabric is made.
struct ShownOptions {
    bool relief = true;
    std::size_t most_triangles = 400'000;
};

/// The solved piece; empty where no shape was found.
[[nodiscard]] ShownPiece shown_piece(const Toy& toy, std::size_t piece, const ShownOptions& options);

/// The pieces that "--piece" names, by number from 1 or by name; all where it is not given. Nothing, with a
/// complaint on the standard error, where there is no such piece.
[[nodiscard]] std::optional<std::vector<std::size_t>> pieces_wanted(const Arguments& arguments,
                                                                    const Toy& toy);

/// A whole number given to an option; nothing, with a complaint, where it is none from `least` to `most`.
[[nodiscard]] std::optional<int> whole_option(const Arguments& arguments, const char* option, int usual,
                                              int least, int most);

}  // namespace roundwright::app
