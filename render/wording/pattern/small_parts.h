#pragma once

#include "core/toy/toy.h"

namespace roundwright::render {

/// Whether the toy has safety eyes or noses, or the maker's own words (notes, notions, steps, remarks on
/// rounds, yarn names) speak of small parts that come off and are a choking hazard: eyes, noses, buttons,
/// beads, bells. Whole words, singular or plural, in any case.
[[nodiscard]] bool names_small_parts(const Toy& toy);

}  // namespace roundwright::render
