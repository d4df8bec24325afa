#pragma once

#include "core/toy/toy.h"

namespace roundwright::app {

/// What the program shows when it is first started: the head of a seal pup (invented), begun and left open,
/// so that the next rounds can be typed.
[[nodiscard]] Toy first_toy();

}  // namespace roundwright::app
