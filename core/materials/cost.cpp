#include "core/materials/cost.h"

#include <algorithm>
#include <cmath>

namespace roundwright {
namespace {

bool has_ball(const Yarn& yarn) { return yarn.ball_grams && *yarn.ball_grams > 0; }

std::optional<Estimate> yarn_cost(const Yarn& yarn, const Estimate& grams) {
    if (!has_ball(yarn) || !yarn.ball_price) return std::nullopt;
    return grams * (*yarn.ball_price / *yarn.ball_grams);
}

void add_yarns(Cost& cost, const std::vector<Yarn>& yarns, const std::vector<Estimate>& yarn_g) {
    for (std::size_t i = 0; i < std::min(yarns.size(), yarn_g.size()); ++i) {
        const std::optional<Estimate> part = yarn_cost(yarns[i], yarn_g[i]);
        if (part) cost.total += *part;
        if (!part && yarn_g[i].high > 0) cost.complete = false;
        cost.yarn.push_back(part);
    }
}

}  // namespace

std::optional<int> balls_to_buy(const Yarn& yarn, const Estimate& grams) {
    if (!has_ball(yarn)) return std::nullopt;
    return static_cast<int>(std::ceil(grams.high / *yarn.ball_grams));
}

Cost cost(const std::vector<Yarn>& yarns, const std::vector<Estimate>& yarn_g, const Estimate& stuffing_g,
          const Estimate& minutes, const Making& making) {
    Cost cost;
    cost.complete = true;
    add_yarns(cost, yarns, yarn_g);
    if (making.stuffing_price_per_kg) {
        cost.stuffing = stuffing_g * (*making.stuffing_price_per_kg / 1000);
        cost.total += *cost.stuffing;
    } else if (stuffing_g.high > 0) {
        cost.complete = false;
    }
    if (making.hourly_rate) {
        cost.work = minutes * (*making.hourly_rate / 60);
        cost.total += *cost.work;
    }
    cost.other = making.other_cost;
    cost.total += exactly(making.other_cost);
    return cost;
}

}  // namespace roundwright
