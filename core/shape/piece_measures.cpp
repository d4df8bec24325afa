#include "core/shape/piece_measures.h"

#include <algorithm>
#include <numbers>

namespace roundwright {

double LoopMeasures::length_mm() const { return 2 * std::numbers::pi * radius_mm; }

std::size_t widest_loop(const PieceMeasures& measures) {
    const auto widest = std::ranges::max_element(measures.loops, {}, &LoopMeasures::width_mm);
    return static_cast<std::size_t>(widest - measures.loops.begin());
}

}  // namespace roundwright
