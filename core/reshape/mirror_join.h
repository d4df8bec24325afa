#pragma once

#include <optional>

#include "core/reshape/piece_form.h"
#include "core/toy/toy.h"

namespace roundwright {

/// A piece worked from its other end, so that it comes out upside down: what was the last round comes first.
/// A drawn end becomes a magic ring, an open one a joined chain, and the other way round; a round that grew
/// by more than double is worked back as far as can be. Nothing for a piece without rounds, one that starts
/// on both sides of a chain, one worked in rows, or one whose rounds do not come out.
[[nodiscard]] std::optional<Piece> mirrored(const PieceForm& form);

/// Two pieces worked as one: the first up to where it narrows to `neck_stitches`, then the second from where
/// it has widened to as many, with rounds between them where the step would be more than can be worked,
/// or would ruffle or gather. An
/// open end or start is kept whole. Rounds keep their stitches, yarns, marks and notes; features of both are
/// kept where their rounds are. Nothing where one of them never has that many stitches, has no rounds, or
/// does not come out.
[[nodiscard]] std::optional<Piece> joined(const PieceForm& first, const PieceForm& second, int neck_stitches);

/// The neck that is usual between two pieces: half the stitches of the narrower one at its widest.
[[nodiscard]] int usual_neck(const PieceForm& first, const PieceForm& second);

}  // namespace roundwright
