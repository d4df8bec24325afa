#include "core/shape/fabric/settle_ruffle.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/shape/fabric/cells_start.h"
#include "core/shape/fabric/measure_stitches.h"

namespace roundwright {
namespace {

constexpr int stitches_a_wave = 4;
/// Shapes whose energies differ by less are the same one.
constexpr double same_energy = 1e-3;

struct Found {
    FabricShape shape;
    EdgeWaves waves;
};

bool is_same(const Found& a, const Found& b) {
    return a.waves.waves == b.waves.waves && std::abs(a.shape.energy - b.shape.energy) <=
                                                 same_energy * std::max(a.shape.energy, b.shape.energy);
}

/// The first of several that are the same, and only those that are in balance, by their energy.
std::vector<Found> told_apart(std::vector<Found> found) {
    std::ranges::stable_sort(found, {}, [](const Found& one) { return one.shape.energy; });
    std::vector<Found> apart;
    for (Found& one : found)
        if (std::ranges::none_of(apart, [&](const Found& other) { return is_same(one, other); }))
            apart.push_back(std::move(one));
    return apart;
}

}  // namespace

std::vector<std::vector<Vec3>> ruffled_starts(const StitchCells& cells, std::span<const Vec3> lying,
                                              std::span<const double> amplitude_mm) {
    std::vector<std::vector<Vec3>> starts{{lying.begin(), lying.end()}};
    for (const int waves : {2, 3, 4, 6, 12})
        if (cells.edges.back().loops >= stitches_a_wave * waves)
            starts.push_back(waved(cells, lying, waves, amplitude_mm));
    return starts;
}

SolvedStitches settle_ruffle(StitchCells cells, const std::vector<std::vector<Vec3>>& starts,
                             const FabricOptions& options) {
    SolvedStitches solved{std::move(cells), {}, {}};
    std::vector<Found> found;
    FabricShape unsettled;
    for (const auto& start : starts) {
        solved.shape = solve_fabric(solved.cells.problem, start, options);
        if (solved.shape.termination == Termination::cancelled) return solved;
        if (solved.shape.termination == Termination::converged) {
            const EdgeWaves waves = edge_waves(solved, solved.cells.edges.size() - 1);
            found.push_back({std::move(solved.shape), waves});
        } else if (!unsettled.usable()) {
            unsettled = std::move(solved.shape);
        }
    }
    std::vector<Found> apart = told_apart(std::move(found));
    if (apart.empty()) {
        solved.shape = std::move(unsettled);
        return solved;
    }
    solved.shape = std::move(apart.front().shape);
    for (std::size_t k = 1; k < apart.size(); ++k) {
        const double share = apart[k].shape.energy / solved.shape.energy - 1;
        if (share <= nearly_the_same_energy)
            solved.others.push_back({apart[k].waves.waves, apart[k].waves.height_mm, share});
    }
    return solved;
}

}  // namespace roundwright
