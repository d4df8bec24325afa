#include "core/face/feature_fit.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/face/opening.h"

namespace roundwright {

namespace {

/// One thing on the surface: a feature's outline and washer as discs.
struct Disc {
    int feature;
    Vec3 centre;
    double outline_mm;
    double washer_mm;
};

std::vector<Disc> discs(const std::vector<Feature>& features, const FaceSurface& surface,
                        const std::vector<int>& counts) {
    std::vector<Disc> all;
    for (std::size_t k = 0; k < features.size(); ++k) {
        const Feature& feature = features[k];
        if (feature.kind == FeatureKind::stitched_line) continue;
        for (const SurfacePlace& place : place_feature(feature, surface, counts).starts) {
            all.push_back({static_cast<int>(k), surface.at(place).point,
                           std::max(feature.width_mm, feature.height_mm), washer_diameter_mm(feature)});
        }
    }
    return all;
}

/// A round of felt behind an eye: what lies within it sits on it.
bool sits_on(const Disc& upper, const Disc& felt, const std::vector<Feature>& features) {
    const bool behind = features[static_cast<std::size_t>(felt.feature)].kind == FeatureKind::felt_disc;
    const double apart = (upper.centre - felt.centre).norm();
    return behind && upper.feature != felt.feature && apart + upper.outline_mm / 2 <= felt.outline_mm / 2;
}

std::optional<Overlap> overlap(const Disc& a, const Disc& b, const std::vector<Feature>& features) {
    if (sits_on(a, b, features) || sits_on(b, a, features)) return std::nullopt;
    const double apart = (a.centre - b.centre).norm();
    const double outlines = apart - (a.outline_mm + b.outline_mm) / 2;
    if (outlines < 0) return Overlap{a.feature, b.feature, outlines, false};
    if (a.washer_mm <= 0 || b.washer_mm <= 0) return std::nullopt;
    const double washers = apart - (a.washer_mm + b.washer_mm) / 2;
    if (washers < 0) return Overlap{a.feature, b.feature, washers, true};
    return std::nullopt;
}

}  // namespace

bool has_washer(FeatureKind kind) {
    return kind == FeatureKind::safety_eye || kind == FeatureKind::safety_nose;
}

double washer_diameter_mm(const Feature& feature) {
    if (!has_washer(feature.kind)) return 0;
    if (feature.washer_mm > 0) return feature.washer_mm;
    return usual_washer_mm(std::min(feature.width_mm, feature.height_mm));
}

Feature embroidered(Feature feature) {
    feature.kind = FeatureKind::embroidered_eye;
    feature.washer_mm = 0;
    feature.lids = false;
    return feature;
}

double washer_gap_mm(double washer_mm, const SurfacePoint& at) {
    const double sharper = std::max(std::abs(at.meridian_curvature), std::abs(at.round_curvature));
    return washer_mm * washer_mm / 4 * sharper / 2;
}

double room_across_mm(const SurfacePoint& at, double piece_width_mm) {
    const double curvature = std::abs(at.round_curvature);
    return curvature * piece_width_mm > 2 ? 2 / curvature : piece_width_mm;
}

std::vector<Overlap> overlaps(const std::vector<Feature>& features, const FaceSurface& surface,
                              const std::vector<int>& counts) {
    const std::vector<Disc> all = discs(features, surface, counts);
    std::vector<Overlap> found;
    for (std::size_t a = 0; a < all.size(); ++a) {
        for (std::size_t b = a + 1; b < all.size(); ++b) {
            const auto touching = overlap(all[a], all[b], features);
            const auto known = [&](const Overlap& other) {
                return other.first == touching->first && other.second == touching->second;
            };
            if (touching && std::none_of(found.begin(), found.end(), known)) found.push_back(*touching);
        }
    }
    return found;
}

}  // namespace roundwright
