#pragma once

#include <span>

#include "core/shape/lie.h"

namespace roundwright {

/// Height of the highest wave of rounds that ruffle, crest to trough, mm; 0: none ruffles.
[[nodiscard]] double highest_wave_mm(std::span<const RoundLie> lies);

}  // namespace roundwright
