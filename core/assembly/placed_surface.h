#pragma once

#include <memory>
#include <span>
#include <vector>

#include "core/assembly/placed_form.h"
#include "core/assembly/solid.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// The surface of a copy of a piece in the toy's frame, its edges bent to where they are sewn; `own`: in the
/// frame of the piece, as `study_surface` gives it.
[[nodiscard]] StitchSurface placed_surface(const StitchSurface& own, const PlacedForm& form);
/// A mesh on a piece (what is fitted to it) likewise; it is turned and moved, and bent no more than at its
/// middle.
[[nodiscard]] Mesh placed_mesh(const Mesh& own, const PlacedForm& form);
[[nodiscard]] Solid placed_solid(const Solid& own, const PlacedForm& form);

/// A toy as it stands together.
struct AssembledToy {
    PlacedToy placed;
    std::vector<PlacedForm> forms;  ///< one a copy, as `placed.pieces`
    /// Likewise; null where no surface was given.
    std::vector<std::shared_ptr<const StitchSurface>> surfaces;
    std::vector<std::shared_ptr<const Solid>> solids;  ///< likewise; null where it has no shape
    std::size_t placed_again = 0;                      ///< copies whose surface was not taken from before

    // What it was made from, so that the next one can share what is still right.
    Toy toy;
    std::vector<SolvedPiece> solved;
    std::vector<std::shared_ptr<const StitchSurface>> own;
};

/// Places a toy and its surfaces. `own`: one a piece, in the frame of the piece (null: none wanted). What has
/// not changed is shared with `before` (may be null): the lines of seams, and the surfaces of copies that lie
/// as they lay.
[[nodiscard]] AssembledToy assemble(const Toy& toy, std::vector<SolvedPiece> solved,
                                    std::vector<std::shared_ptr<const StitchSurface>> own,
                                    const AssembledToy* before = nullptr);

/// The placed surfaces alone, one a copy in the order of `PlacedToy::pieces`.
[[nodiscard]] std::vector<std::shared_ptr<const StitchSurface>> placed_surfaces(
    const Toy& toy, std::vector<SolvedPiece> solved, std::vector<std::shared_ptr<const StitchSurface>> own);

}  // namespace roundwright
