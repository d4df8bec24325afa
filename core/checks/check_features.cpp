#include <algorithm>
#include <cmath>

#include "core/checks/families.h"
#include "core/face/feature_fit.h"
#include "core/face/opening.h"
#include "core/face/place_feature.h"

namespace roundwright {

namespace {

/// What every check of a feature looks at.
struct FaceInput {
    const CheckInput& input;
    FaceSurface surface;
    std::vector<int> counts;
    std::vector<double> openings;
    double start_opening_mm;
};

Cure feature_cure(CureKind kind, int feature, std::optional<Feature> becomes) {
    Cure cure{kind, {}, 0, 0};
    cure.feature = FeatureCure{feature, std::move(becomes)};
    return cure;
}

Cure embroider(int index, const Feature& feature) {
    return feature_cure(CureKind::embroider, index, embroidered(feature));
}

Check feature_check(const FaceInput& face, CheckCode code, Severity severity, const Feature& feature) {
    Check check{code, severity, face.input.piece_index, feature.round, {}, {}};
    check.features = {feature};
    return check;
}

/// The nearest earlier gap whose washer passes while it can still be reached.
std::optional<Cure> earlier(const FaceInput& face, int index, Feature feature, double washer) {
    while (feature.round > 0) {
        --feature.round;
        if (fitting_time(feature.round, washer, face.openings, 0).last_by_washer) {
            return feature_cure(CureKind::move_feature, index, feature);
        }
    }
    return std::nullopt;
}

void check_time(const FaceInput& face, int index, const Feature& feature, std::vector<Check>& checks) {
    const double washer = washer_diameter_mm(feature);
    const FittingTime time = fitting_time(feature.round, washer, face.openings, face.start_opening_mm);
    if (time.last_by_washer || time.other_end_open) return;
    Check check = feature_check(face, CheckCode::washer_too_late, Severity::error, feature);
    check.arguments = {index, Millimetres{washer},
                       Millimetres{face.openings[static_cast<std::size_t>(time.earliest)]}};
    if (auto cure = earlier(face, index, feature, washer)) check.cures.push_back(*cure);
    check.cures.push_back(embroider(index, feature));
    checks.push_back(std::move(check));
}

void check_seat(const FaceInput& face, int index, const Feature& feature, const SurfacePoint& at,
                std::vector<Check>& checks) {
    const double washer = washer_diameter_mm(feature);
    const double gap = washer_gap_mm(washer, at);
    if (gap <= most_washer_gap_mm) return;
    Check check = feature_check(face, CheckCode::washer_rocks, Severity::warning, feature);
    check.arguments = {index, Millimetres{washer}, Millimetres{gap}};
    check.cures = {embroider(index, feature)};
    checks.push_back(std::move(check));
}

void check_room(const FaceInput& face, int index, const Feature& feature, const SurfacePoint& at,
                std::vector<Check>& checks) {
    const double across = room_across_mm(at, face.surface.width_mm());
    const double most = most_share_of_loop * across;
    if (feature.width_mm <= most) return;
    Check check = feature_check(face, CheckCode::feature_too_large, Severity::warning, feature);
    check.arguments = {index, Millimetres{feature.width_mm}, Millimetres{across}};
    if (most >= 1) {
        Feature smaller = feature;
        smaller.width_mm = std::floor(most);
        smaller.height_mm = std::floor(feature.height_mm * smaller.width_mm / feature.width_mm * 10) / 10;
        check.cures.push_back(feature_cure(CureKind::smaller_feature, index, smaller));
    }
    checks.push_back(std::move(check));
}

/// A pair that touches, set apart by as many stitches as clear it.
std::optional<Cure> spaced(const FaceInput& face, const Overlap& overlap) {
    const auto& features = face.input.piece.features;
    Feature feature = features[static_cast<std::size_t>(overlap.first)];
    if (overlap.first != overlap.second || !feature.pair) return std::nullopt;
    const int around = face.counts[static_cast<std::size_t>(feature.round)];
    while (++feature.stitches_apart <= around / 2) {
        if (overlaps({feature}, face.surface, face.counts).empty()) {
            return feature_cure(CureKind::space_features, overlap.first, feature);
        }
    }
    return std::nullopt;
}

void check_touch(const FaceInput& face, std::vector<Check>& checks) {
    const auto& features = face.input.piece.features;
    for (const Overlap& overlap : overlaps(features, face.surface, face.counts)) {
        Check check = feature_check(face, CheckCode::features_touch, Severity::warning,
                                    features[static_cast<std::size_t>(overlap.first)]);
        check.arguments = {overlap.first, overlap.second, Millimetres{-overlap.spare_mm},
                           overlap.washers ? 1 : 0};
        if (overlap.first != overlap.second)
            check.features.push_back(features[static_cast<std::size_t>(overlap.second)]);
        if (auto cure = spaced(face, overlap)) check.cures.push_back(*cure);
        checks.push_back(std::move(check));
    }
}

void check_feature(const FaceInput& face, int index, std::vector<Check>& checks) {
    const Feature& feature = face.input.piece.features[static_cast<std::size_t>(index)];
    const PlacedFeature placed = place_feature(feature, face.surface, face.counts);
    if (placed.starts.empty()) {
        Check check{CheckCode::feature_lost, Severity::warning, face.input.piece_index, -1, {index}, {}};
        check.features = {feature};
        check.cures = {feature_cure(CureKind::remove_feature, index, std::nullopt)};
        checks.push_back(std::move(check));
        return;
    }
    const SurfacePoint at = face.surface.at(placed.starts.front());
    if (has_washer(feature.kind)) {
        check_time(face, index, feature, checks);
        check_seat(face, index, feature, at, checks);
    }
    if (feature.kind != FeatureKind::stitched_line) check_room(face, index, feature, at, checks);
}

}  // namespace

void check_features(const CheckInput& input, std::vector<Check>& checks) {
    if (input.piece.features.empty() || !input.revolved.usable()) return;
    const FaceInput face{input, FaceSurface(input.piece, input.revolved), stitch_counts(input.graph.graph),
                         openings_mm(input.problem.rest_loop_mm, input.fabric.mm),
                         start_opening_mm(input.piece.start, input.problem.rest_loop_mm, input.fabric.mm)};
    for (std::size_t k = 0; k < input.piece.features.size(); ++k)
        check_feature(face, static_cast<int>(k), checks);
    check_touch(face, checks);
}

}  // namespace roundwright
