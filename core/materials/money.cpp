#include "core/materials/money.h"

namespace roundwright {

Money Money::rounded_to(int decimals) const {
    std::int64_t step = parts;
    for (int k = 0; k < std::clamp(decimals, 0, 4); ++k) step /= 10;
    const std::int64_t half = parts_ < 0 ? -(step / 2) : step / 2;
    return Money((parts_ + half) / step * step);
}

}  // namespace roundwright
