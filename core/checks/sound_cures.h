#pragma once

#include <functional>
#include <vector>

#include "core/checks/check.h"

namespace roundwright {

/// Takes out of `checks` every cure of a piece that would bring a new error or warning: for a note or a
/// warning none of any code, but that a round whose mark is taken off may go on ruffling; for an error, as
/// long as there are fewer errors then, only on the rounds that it changes and next to them, since those
/// could not be judged before. `checks_of` gives the checks of a piece, cures and all. The first `most_tried`
/// cures are tried; what comes after them goes.
void keep_sound_cures(const Piece& piece, std::vector<Check>& checks, int most_tried,
                      const std::function<std::vector<Check>(const Piece&)>& checks_of);

/// Whether that is so of one cure of a check, when the checks were `before` and are `after`.
[[nodiscard]] bool is_sound_cure(const Check& check, const Cure& cure, const std::vector<Check>& before,
                                 const std::vector<Check>& after);

}  // namespace roundwright
