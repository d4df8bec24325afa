#pragma once

#include <QString>

#include "core/assembly/placed_toy.h"
#include "core/toy/toy.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// Joins as lists and fields name them. Rounds and copies count from 1 here.

/// "Head", or of several copies "Ear 2".
[[nodiscard]] QString copy_name(const Toy& toy, const PieceCopy& copy);

/// "Ear ×2 on Head": what is joined to what.
[[nodiscard]] QString join_title(const Toy& toy, const Join& join);

/// "between rounds 5 and 6, 4½ stitches right of the middle"
[[nodiscard]] QString join_place_words(const Toy& toy, const Join& join);

/// The same with how it is joined and which way it points: "open edge sewn on all round, between rounds 5 and
/// 6, 4½ stitches right of the middle, turned 10°, leaning 20° up, sunk in 3 mm"
[[nodiscard]] QString join_words(const Toy& toy, const Join& join, LengthUnit units);

/// "Open edge, sewn on all round"
[[nodiscard]] QString seam_name(Seam seam);

/// "its pieces are joined in a circle": within a sentence.
[[nodiscard]] QString join_fault_words(JoinFault fault);

[[nodiscard]] QString stance_name(Stance stance);

}  // namespace roundwright
