#pragma once

#include "core/gauge/gauge.h"
#include "core/reshape/piece_form.h"
#include "core/reshape/reshape_code.h"
#include "core/reshape/size.h"
#include "core/reshape/target.h"

namespace roundwright {

/// The size a target asks of a piece.
struct WantedSize {
    ReshapeCode code = ReshapeCode::met;  ///< or what is wrong with the target
    Size size;
    bool in_proportion = true;  ///< the piece's own proportions are kept
};
[[nodiscard]] WantedSize wanted_size(const PieceForm& form, const Target& target);

/// A target asked of one piece as a scale, for others to follow; as it is where it changes the proportions,
/// asks for no size, or is wrong.
[[nodiscard]] Target as_scale(const PieceForm& form, const Target& target);

/// `met`, or what of a wanted size was not.
[[nodiscard]] ReshapeCode verdict(const Size& reached, const Size& wanted, const Gauge& gauge);

/// The size that a target goes by: the piece's, or that of an outline drawn for it.
[[nodiscard]] Size own_size(const PieceForm& form, const Target& target);

/// What a height is multiplied by; a flat piece has none to speak of, and goes by its width.
[[nodiscard]] double height_ratio(const Size& wanted, const Size& own);

/// The same but for rounding.
[[nodiscard]] bool is_same(const Size& a, const Size& b);

}  // namespace roundwright
