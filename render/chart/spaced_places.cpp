#include "render/chart/spaced_places.h"

#include <algorithm>
#include <cstddef>

namespace roundwright::render {
namespace {

/// Neighbours that share one value, their mean.
struct Pool {
    double mean = 0;
    std::size_t size = 0;
};

void pool(std::vector<Pool>& pools, double value) {
    pools.push_back({value, 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean > pools.back().mean) {
        const Pool last = pools.back();
        pools.pop_back();
        Pool& into = pools.back();
        const auto all = static_cast<double>(into.size + last.size);
        into.mean += (last.mean - into.mean) * static_cast<double>(last.size) / all;
        into.size += last.size;
    }
}

}  // namespace

std::vector<double> spaced_places(const std::vector<double>& wished, double apart, double low, double high) {
    if (wished.empty()) return {};
    const auto gaps = static_cast<double>(wished.size() - 1);
    if (gaps > 0) apart = std::clamp((high - low) / gaps, 0.0, apart);
    // Without the distances that must be, the places have only to be in order.
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < wished.size(); ++i) pool(pools, wished[i] - static_cast<double>(i) * apart);
    const double last = std::max(low, high - gaps * apart);
    std::vector<double> places;
    for (const Pool& same : pools) {
        for (std::size_t k = 0; k < same.size; ++k) {
            places.push_back(std::clamp(same.mean, low, last) + static_cast<double>(places.size()) * apart);
        }
    }
    return places;
}

}  // namespace roundwright::render
