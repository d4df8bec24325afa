#include "core/shape/fabric/open_edges.h"

#include <algorithm>
#include <array>
#include <map>
#include <span>
#include <utility>

namespace roundwright {
namespace {

using Run = std::pair<std::int32_t, std::int32_t>;

/// The sides of all triangles in the direction in which they run, in order.
std::vector<Run> runs_of(const FabricProblem& problem) {
    std::vector<Run> runs;
    runs.reserve(3 * problem.triangles.size());
    for (const FabricTriangle& triangle : problem.triangles)
        for (std::size_t k = 0; k < 3; ++k) runs.emplace_back(triangle.nodes[k], triangle.nodes[(k + 1) % 3]);
    std::ranges::sort(runs);
    return runs;
}

/// Of the triangles about one node, each as the way across from its one side there to its other.
bool is_one_fan(std::span<const std::array<std::int32_t, 3>> about) {
    const auto next = [&](std::int32_t at) {
        return std::ranges::find(about, at, [](const auto& way) { return way[1]; });
    };
    const auto enters = [&](std::int32_t at) {
        return std::ranges::find(about, at, [](const auto& way) { return way[2]; }) != about.end();
    };
    const auto first = std::ranges::find_if(about, [&](const auto& way) { return !enters(way[1]); });
    std::int32_t at = first != about.end() ? (*first)[1] : about.front()[1];
    std::size_t steps = 0;
    for (auto way = next(at); way != about.end() && steps < about.size(); way = next(at), ++steps)
        at = (*way)[2];
    return steps == about.size();
}

}  // namespace

bool is_one_surface(const FabricProblem& problem) {
    const std::vector<Run> runs = runs_of(problem);
    if (std::ranges::adjacent_find(runs) != runs.end()) return false;
    std::vector<std::array<std::int32_t, 3>> ways;
    for (const FabricTriangle& triangle : problem.triangles)
        for (std::size_t k = 0; k < 3; ++k)
            ways.push_back({triangle.nodes[k], triangle.nodes[(k + 1) % 3], triangle.nodes[(k + 2) % 3]});
    std::ranges::sort(ways);
    for (std::size_t first = 0, last = 0; first < ways.size(); first = last) {
        while (last < ways.size() && ways[last][0] == ways[first][0]) ++last;
        if (!is_one_fan(std::span(ways).subspan(first, last - first))) return false;
    }
    return true;
}

std::vector<FabricLoop> open_edges(const FabricProblem& problem) {
    const std::vector<Run> run = runs_of(problem);
    std::multimap<std::int32_t, std::int32_t> next;
    for (const auto& [from, to] : run)
        if (!std::ranges::binary_search(run, std::pair(to, from))) next.emplace(from, to);
    std::vector<FabricLoop> loops;
    while (!next.empty()) {
        FabricLoop& loop = loops.emplace_back();
        auto at = next.begin();
        const std::int32_t first = at->first;
        while (at != next.end()) {
            loop.push_back(at->first);
            const std::int32_t to = at->second;
            next.erase(at);
            at = to == first ? next.end() : next.find(to);
        }
    }
    return loops;
}

}  // namespace roundwright
