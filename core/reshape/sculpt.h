#pragma once

#include <cstddef>

#include "core/base/vec.h"
#include "core/reshape/piece_form.h"
#include "core/reshape/silhouette.h"

namespace roundwright {

/// The outline of a piece before it is sculpted, with one handle a loop: its points are the loops of the
/// shape (and the point an end is drawn closed to), and its fabric is stretched as that of the shape. No
/// points where the shape is no surface of revolution (`PieceForm::fidelity`): it has no such outline.
struct SculptStart {
    PieceForm form;
    Silhouette outline;
    FabricAlong fabric;
};
[[nodiscard]] SculptStart sculpt_start(const PieceForm& form);

/// An outline with one point moved and those within `reach_mm` along it moved with it, less the further off:
/// by (1 - (s / reach)^2)^2, which has no kink. Ends on the axis stay on it, and nothing crosses it.
[[nodiscard]] Silhouette dragged(const Silhouette& outline, std::size_t point, const Vec2& by_mm,
                                 double reach_mm);

struct Sculpted {
    bool usable = false;  ///< false: the outline can be worked by no rounds at all
    Piece piece;
    Shape shape;
    Silhouette outline;   ///< asked for; the stuffed shape is near it, not on it
    double apart_mm = 0;  ///< `distance_mm` between the two
};

/// New rounds for a changed outline. Where it has not changed the rounds stay as they are, awkward ones too;
/// where it has, the fabric is matched to it (`matched_fabric`) and cut into the number of rounds whose
/// stuffed shape is nearest to it, one within half a round of its height before one that is not. Some dozens
/// of solves, each from the shape before: fast enough for every frame of a drag. `warm` (may be null): the
/// shape of the frame before.
[[nodiscard]] Sculpted sculpt(const SculptStart& start, const Silhouette& outline, double tidiness,
                              const Shape* warm = nullptr);

}  // namespace roundwright
