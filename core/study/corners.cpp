#include "core/study/corners.h"

#include <cmath>
#include <complex>
#include <numbers>
#include <numeric>
#include <vector>

#include "core/checks/stacked_increases.h"
#include "core/shape/fabric/solved_stitches.h"

namespace roundwright {
namespace {

constexpr int fewest_corners = 3;

/// Of a closed line in the plane (x, z): the wave of its distance from the middle that goes around so often,
/// from crest to trough. The distances' mean is taken off first, or the trapezium rule over a few points a
/// wave would take it for waves.
double wave_mm(const SolvedStitches& solved, const CellEdge& edge, int times) {
    const std::size_t count = edge.nodes.size() - 1;
    std::vector<std::complex<double>> out(count);
    for (std::size_t k = 0; k < count; ++k) {
        const Vec3& node = solved.shape.nodes[static_cast<std::size_t>(edge.nodes[k].node)];
        out[k] = {node.x(), node.z()};
    }
    const auto middle = std::accumulate(out.begin(), out.end(), std::complex<double>()) / double(count);
    double mean = 0;
    for (auto& each : out) mean += std::abs(each -= middle) / static_cast<double>(count);
    std::complex<double> sum = 0;
    for (std::size_t k = 0; k < count; ++k) {
        const auto &here = out[k], &next = out[(k + 1) % count];
        const double angle = std::arg(here), step = std::arg(next / here);
        sum += step / 2 *
               (std::polar(1.0, times * angle) * (std::abs(here) - mean) +
                std::polar(1.0, times * (angle + step)) * (std::abs(next) - mean));
    }
    return 2 * std::abs(sum) / std::numbers::pi;
}

bool is_stacked(const StitchGraph& graph, int round) {
    const auto at = static_cast<std::size_t>(round);
    return round > 0 && at < graph.rounds.size() && are_stacked(graph.rounds[at - 1], graph.rounds[at]);
}

}  // namespace

std::optional<Corners> corners_of(const PieceStudy& study, int round) {
    const auto& solved = study.shape->stitched;
    if (!solved || solved->cells.rows || solved->cells.around_chain ||
        !is_stacked(study.graph().graph, round))
        return std::nullopt;
    const auto edge = static_cast<std::size_t>(round) + 1;
    const auto places = increase_places(study.graph().graph.rounds[static_cast<std::size_t>(round)]);
    const int corners = static_cast<int>(places.size());
    if (corners < fewest_corners || edge >= solved->cells.edges.size() ||
        solved->cells.edges[edge].nodes.size() < 2 * places.size())
        return std::nullopt;
    return Corners{round, corners, wave_mm(*solved, solved->cells.edges[edge], corners)};
}

std::optional<Corners> highest_corners(const PieceStudy& study) {
    std::optional<Corners> highest;
    for (int round = 0; round < static_cast<int>(study.graph().graph.rounds.size()); ++round) {
        const auto found = corners_of(study, round);
        if (found && found->out_mm >= (highest ? highest->out_mm : seen_corner_mm)) highest = found;
    }
    return highest;
}

Check as_seen(Check check, const PieceStudy& study) {
    if (check.code != CheckCode::corners) return check;
    if (const auto found = corners_of(study, check.round)) check.arguments[1] = Millimetres{found->out_mm};
    return check;
}

}  // namespace roundwright
