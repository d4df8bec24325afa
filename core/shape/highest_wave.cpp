#include "core/shape/highest_wave.h"

#include <algorithm>

namespace roundwright {

double highest_wave_mm(std::span<const RoundLie> lies) {
    double highest = 0;
    for (const RoundLie& lie : lies)
        if (lie.lie == Lie::ruffles) highest = std::max(highest, lie.wave_height_mm);
    return highest;
}

}  // namespace roundwright
