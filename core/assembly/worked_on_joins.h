#pragma once

#include "core/toy/toy.h"

namespace roundwright {

/// The toy with the joins of those pieces that are worked on the edges of others and have none yet, as a text
/// says it: with the rounds, but not with the edges. Each begins on open and free edges of pieces before it,
/// whose loops come to those that its first round is worked over, both sides of the chains between them
/// counted: on two, the first to the viewer's left, or else on one that it goes on from. Where several would
/// do, those nearest before it (a body follows its legs; common practice). Where none do, it is left alone.
[[nodiscard]] Toy with_worked_on_joins(Toy toy);

}  // namespace roundwright
