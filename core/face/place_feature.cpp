#include "core/face/place_feature.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {

namespace {

using std::numbers::pi;

double stitch_angle(int round, const std::vector<int>& counts) {
    return 2 * pi / std::max(1, counts[static_cast<std::size_t>(round)]);
}

int last_gap(const std::vector<int>& counts) { return static_cast<int>(counts.size()) - 2; }

SurfacePlace place(const FaceSurface& surface, const std::vector<int>& counts, int round, double stitches) {
    return {surface.along_of_loop(round + 1), stitches * stitch_angle(round, counts)};
}

bool is_line(const Feature& feature) { return feature.kind == FeatureKind::stitched_line; }

}  // namespace

bool has_gap(const FaceSurface& surface, int round) { return round >= 0 && round + 2 < surface.loops(); }

PlacedFeature place_feature(const Feature& feature, const FaceSurface& surface,
                            const std::vector<int>& counts) {
    PlacedFeature placed;
    if (!has_gap(surface, feature.round) || feature.round >= static_cast<int>(counts.size())) return placed;
    const bool ends_on_piece =
        has_gap(surface, feature.end_round) && feature.end_round < static_cast<int>(counts.size());
    if (is_line(feature) && !ends_on_piece) return placed;
    const double right = feature.pair ? feature.stitches_apart / 2.0 : feature.stitches_right;
    for (double side : feature.pair ? std::vector<double>{-1, 1} : std::vector<double>{1}) {
        placed.starts.push_back(place(surface, counts, feature.round, side * right));
        if (is_line(feature)) {
            placed.ends.push_back(
                place(surface, counts, feature.end_round, side * feature.end_stitches_right));
        }
    }
    return placed;
}

Feature moved_to(Feature feature, const SurfacePlace& wanted, const FaceSurface& surface,
                 const std::vector<int>& counts) {
    if (surface.empty() || last_gap(counts) < 0) return feature;
    int nearest = 0;
    for (int round = 0; round <= last_gap(counts) && has_gap(surface, round); ++round) {
        const auto off = [&](int r) { return std::abs(surface.along_of_loop(r + 1) - wanted.along_mm); };
        if (off(round) < off(nearest)) nearest = round;
    }
    const int rounds = nearest - feature.round;
    const double stitches = wanted.angle / stitch_angle(nearest, counts);
    const double shift = std::round(2 * stitches) / 2 - feature.stitches_right;
    feature.round = nearest;
    if (feature.pair) {
        feature.stitches_apart = static_cast<int>(std::lround(2 * std::abs(stitches)));
    } else {
        feature.stitches_right += shift;
    }
    if (is_line(feature)) {
        feature.end_round = std::clamp(feature.end_round + rounds, 0, last_gap(counts));
        if (!feature.pair) feature.end_stitches_right += shift;
    }
    return feature;
}

Feature nudged(Feature feature, int rounds, int stitches, const std::vector<int>& counts) {
    if (last_gap(counts) < 0) return feature;
    feature.round = std::clamp(feature.round + rounds, 0, last_gap(counts));
    if (is_line(feature)) feature.end_round = std::clamp(feature.end_round + rounds, 0, last_gap(counts));
    const int around = counts[static_cast<std::size_t>(feature.round)];
    if (feature.pair) {
        feature.stitches_apart = std::clamp(feature.stitches_apart + stitches, 1, std::max(1, around - 1));
        return feature;
    }
    feature.stitches_right += stitches;
    if (is_line(feature)) feature.end_stitches_right += stitches;
    return feature;
}

FeatureMeasures measure_feature(const PlacedFeature& placed, const FaceSurface& surface) {
    FeatureMeasures measures;
    if (placed.starts.empty() || surface.empty()) return measures;
    const SurfacePlace first = placed.starts.front();
    const SurfacePlace last =
        placed.starts.size() > 1 ? placed.starts.back() : SurfacePlace{first.along_mm, 0};
    const SurfacePoint a = surface.at(first);
    const SurfacePoint b = surface.at(last);
    measures.straight_mm = (a.point - b.point).norm();
    measures.along_surface_mm = surface.distance_along_mm(first, last);
    measures.height_mm = a.height_mm;
    measures.angle_degrees = std::abs(std::remainder(last.angle - first.angle, 2 * pi)) * 180 / pi;
    return measures;
}

int stitches_apart_for(EyeSpacing spacing, int round, const std::vector<int>& counts) {
    constexpr double share_of_diameter[] = {0.3, 0.45, 0.62};
    const int around = counts[static_cast<std::size_t>(round)];
    // The chord of an arc of angle a on a circle of diameter 1 is sin(a / 2).
    const double angle = 2 * std::asin(share_of_diameter[static_cast<int>(spacing)]);
    return std::max(1, static_cast<int>(std::lround(angle / (2 * pi) * around)));
}

}  // namespace roundwright
