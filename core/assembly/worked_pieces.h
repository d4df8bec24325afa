#pragma once

#include <span>
#include <vector>

#include "core/assembly/placed_toy.h"
#include "core/assembly/sewing_steps.h"
#include "core/materials/materials.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// Volume of what is stuffed of a piece, mm3: all that its fabric encloses, or of a piece that is stuffed in
/// part that between the first and the last of these rounds, cut off flat.
[[nodiscard]] double stuffed_volume_mm3(const SolvedPiece& piece);
[[nodiscard]] double stuffed_volume_mm3(const Piece& piece, const PieceStudy& study);

/// Length of the seams that are sewn with a piece's own yarn, mm, all its copies together; one entry a piece.
/// An edge is sewn on all round, a flattened one along half of that, a coil by the end of its rows and back,
/// a closed end in a ring half as long as the piece is around (a value of our own). A flattened edge that is
/// not sewn on is closed.
[[nodiscard]] std::vector<double> seams_mm(const Toy& toy, RoundCounts counts, const Gauge& gauge);

/// What `materials` takes of every piece of a toy. `studies`: one a piece.
[[nodiscard]] std::vector<WorkedPiece> worked_pieces(const Toy& toy, std::span<const PieceStudy> studies);

}  // namespace roundwright
