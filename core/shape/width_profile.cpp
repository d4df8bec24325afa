#include "core/shape/width_profile.h"

#include <algorithm>

namespace roundwright {
namespace {

constexpr double noticed_beside_widest = 0.02;
constexpr double noticed_at_a_neck = 0.05;

/// The lowest loop between two that stand higher by more than `least_mm`.
std::vector<std::size_t> necks_of(const std::vector<LoopMeasures>& loops, double least_mm) {
    std::vector<std::size_t> necks;
    std::size_t high = 0, low = 0;  // since the last neck
    for (std::size_t k = 1; k < loops.size(); ++k) {
        const double width = loops[k].width_mm;
        if (low == high && width > loops[high].width_mm) {
            high = low = k;
            continue;
        }
        if (width < loops[low].width_mm) low = k;
        const bool fell = loops[high].width_mm - loops[low].width_mm > least_mm;
        if (fell && width - loops[low].width_mm > least_mm) {
            necks.push_back(low);
            high = low = k;
        } else if (!fell && width > loops[high].width_mm) {
            high = low = k;
        }
    }
    return necks;
}

}  // namespace

std::optional<WidthProfile> width_profile(const PieceMeasures& measures) {
    const auto& loops = measures.loops;
    if (loops.size() < 2) return std::nullopt;
    WidthProfile profile{widest_loop(measures), std::nullopt, {}};
    const double widest_mm = loops[profile.widest].width_mm;
    for (std::size_t k = profile.widest + 1; k < loops.size() && !profile.narrows_from; ++k) {
        if (loops[k].width_mm < (1 - noticed_beside_widest) * widest_mm) profile.narrows_from = k;
    }
    profile.necks = necks_of(loops, noticed_at_a_neck * widest_mm);
    return profile;
}

}  // namespace roundwright
