#pragma once

#include <optional>
#include <vector>

#include "core/materials/estimate.h"
#include "core/materials/yarn_use.h"

namespace roundwright {

/// What one toy costs, in the maker's currency. A part whose price is not known is absent.
struct Cost {
    std::vector<std::optional<Estimate>> yarn;  ///< by yarn: the grams used, at the price of a ball
    std::optional<Estimate> stuffing;
    std::optional<Estimate> work;
    double other = 0;
    Estimate total;         ///< of what is known
    bool complete = false;  ///< every yarn used and the stuffing have a price
};

/// Whole balls to buy for this much of a yarn; nothing if the weight of a ball is not known.
[[nodiscard]] std::optional<int> balls_to_buy(const Yarn& yarn, const Estimate& grams);

/// `yarn_g`: by yarn of the toy.
[[nodiscard]] Cost cost(const std::vector<Yarn>& yarns, const std::vector<Estimate>& yarn_g,
                        const Estimate& stuffing_g, const Estimate& minutes, const Making& making);

}  // namespace roundwright
