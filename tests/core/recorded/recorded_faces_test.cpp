#include <gtest/gtest.h>

#include "core/face/face_guides.h"
#include "core/face/face_surface.h"
#include "core/face/feature_fit.h"
#include "core/face/feature_mesh.h"
#include "core/face/first_feature.h"
#include "core/face/geodesic.h"
#include "core/face/opening.h"
#include "core/face/place_feature.h"
#include "core/face/small_parts.h"
#include "core/face/work_steps.h"
#include "tests/core/recorded/mesh_summary.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

void tell(RecordedText& text, const Vec3& place) { text << place.x() << place.y() << place.z(); }

void tell(RecordedText& text, const char* name, const Feature& feature) {
    text.line(name) << feature.pair << feature.round << feature.stitches_apart << feature.stitches_right
                    << feature.width_mm << feature.height_mm << feature.end_round
                    << feature.end_stitches_right;
}

void tell_point(RecordedText& text, const FaceSurface& surface, const SurfacePlace& place) {
    const SurfacePoint at = surface.at(place);
    text.line("at") << place.along_mm << place.angle;
    tell(text, at.point);
    tell(text, at.normal);
    tell(text, at.right);
    tell(text, at.up);
    text << at.height_mm << at.radius_mm << at.meridian_curvature << at.round_curvature;
    const SurfacePlace nearest = surface.nearest(at.point + 2.5 * at.normal + Vec3(0.3, 0.2, -0.4));
    text.line("nearest") << nearest.along_mm << nearest.angle;
}

void tell_features(RecordedText& text, const std::vector<Feature>& features, const FaceSurface& surface,
                   const std::vector<int>& counts) {
    for (const Feature& feature : features) {
        const PlacedFeature placed = place_feature(feature, surface, counts);
        text.line("feature") << static_cast<int>(feature.kind) << washer_diameter_mm(feature)
                             << (has_rigid_part(feature.kind) ? rigid_part(feature).thickness_mm : 0);
        for (const SurfacePlace& start : placed.starts) text << start.along_mm << start.angle;
        for (const SurfacePlace& end : placed.ends) text << end.along_mm << end.angle;
        const FeatureMeasures measures = measure_feature(placed, surface);
        text.line("measures") << measures.straight_mm << measures.along_surface_mm << measures.height_mm
                              << measures.angle_degrees;
        if (!placed.starts.empty())
            text << washer_gap_mm(washer_diameter_mm(feature), surface.at(placed.starts.front()));
        tell(text, "moved", moved_to(feature, {0.43 * surface.end_mm(), 0.6}, surface, counts));
        tell(text, "moved", moved_to(feature, {0.9 * surface.end_mm(), -1.1}, surface, counts));
        tell(text, "nudged", nudged(feature, 2, 1, counts));
        tell(text, "nudged", nudged(feature, -30, -40, counts));
        tell(text, "nudged", nudged(feature, 30, 90, counts));
    }
    for (const Overlap& overlap : overlaps(features, surface, counts))
        text.line("touch") << overlap.first << overlap.second << overlap.spare_mm << overlap.washers;
}

void tell_face(RecordedText& text, const Piece& piece, const VariedStudy& study, bool first_ones) {
    const FaceSurface surface(piece, study.shape);
    const std::vector<int> counts = stitch_counts(study.graph.graph);
    text.line("surface") << surface.end_mm() << surface.loops() << surface.width_mm() << surface.height_mm();
    if (surface.empty()) return;
    for (const double share : {0.0, 0.13, 0.46, 0.77, 1.0})
        tell_point(text, surface, {share * surface.end_mm(), 1.7 * share - 0.5});
    tell_features(text, piece.features, surface, counts);
    text.line("apart")
        << surface.distance_along_mm({0.3 * surface.end_mm(), -0.4}, {0.6 * surface.end_mm(), 0.9})
        << surface.distance_along_mm({0.1 * surface.end_mm(), 0}, {0.12 * surface.end_mm(), 3.1})
        << surface.distance_along_mm({0.9 * surface.end_mm(), 0}, {0.93 * surface.end_mm(), 3});
    if (!first_ones) return;
    for (const auto kind : {FeatureKind::safety_eye, FeatureKind::safety_nose, FeatureKind::stitched_line})
        tell(text, "first", first_feature(kind, surface, counts));
    for (std::size_t round = 0; round < counts.size(); ++round)
        for (const auto spacing : {EyeSpacing::close, EyeSpacing::middle, EyeSpacing::wide})
            text.line("spaced") << stitches_apart_for(spacing, static_cast<int>(round), counts);
}

TEST(RecordedFaces, AreAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        const Piece& piece = varied_pieces()[i].toy.pieces[0];
        text.heading(varied_pieces()[i].name);
        tell_face(text, piece, varied_studies()[i], !piece.features.empty() || i % 7 == 0);
        Piece turned = piece;
        turned.starts_at_top = !piece.starts_at_top;
        turned.face_degrees = -50;
        if (i % 4 == 0) tell_face(text, turned, varied_studies()[i], false);
    }
    testing::expect_as_recorded("faces.txt", text);
}

TEST(RecordedFaces, PartsAndGuidesAreAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        const Piece& piece = varied_pieces()[i].toy.pieces[0];
        if (piece.features.empty()) continue;
        const FaceSurface surface(piece, varied_studies()[i].shape);
        text.heading(varied_pieces()[i].name);
        for (const FeaturePart& part :
             feature_parts(piece.features, surface, stitch_counts(varied_studies()[i].graph.graph), 2.5)) {
            text.line("part") << part.feature << static_cast<int>(part.finish) << part.inside;
            tell_mesh(text, part.mesh);
        }
        text.line("guides");
        tell_mesh(text, face_guides(surface, {10, 120, 240}));
    }
    testing::expect_as_recorded("face_parts.txt", text);
}

void tell(RecordedText& text, const std::optional<int>& round) {
    if (round)
        text << *round;
    else
        text << "-";
}

TEST(RecordedFaces, OpeningsAndStepsAreAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        const Piece& piece = varied_pieces()[i].toy.pieces[0];
        const auto& loops = varied_studies()[i].problem.rest_loop_mm;
        const std::vector<double> openings = openings_mm(loops, 0);
        const double start = start_opening_mm(piece.start, loops, 0);
        text.heading(varied_pieces()[i].name);
        text.line("start_opening") << start;
        for (int round = 0; round + 1 < static_cast<int>(openings.size()); round += 2)
            for (const double washer : {6.0, 12.0, 34.0}) {
                const FittingTime time = fitting_time(round, washer, openings, start);
                text.line("fit") << round << washer << time.earliest;
                tell(text, time.last_by_washer);
                tell(text, time.last_by_fingers);
                tell(text, time.recommended);
                text << time.other_end_open;
            }
        const StuffingTime stuffing = stuffing_time(piece, openings);
        text.line("stuff");
        tell(text, stuffing.begin);
        tell(text, stuffing.finish);
        for (const WorkStep& step : work_steps(piece, loops, 0))
            text.line("step") << step.after_round << static_cast<int>(step.kind) << step.feature;
    }
    testing::expect_as_recorded("openings.txt", text);
}

/// Between a thickness that fits and one that does not, halved down to an eighth of a millimetre.
double first_too_thick(double width, double height) {
    double fits = 1, too_thick = 65;
    while (too_thick - fits > 0.125) {
        const double middle = (fits + too_thick) / 2;
        (fits_small_parts_cylinder({width, height, middle}) ? fits : too_thick) = middle;
    }
    return too_thick;
}

/// Parts about the size of the small-parts cylinder.
TEST(RecordedFaces, SmallPartsFitAsBefore) {
    RecordedText text;
    for (const double width : {10.0, 30.0, 31.7, 45.0})
        for (const double height : {width, 0.5 * width})
            text.line("first_too_thick") << width << height << first_too_thick(width, height);
    testing::expect_as_recorded("small_parts.txt", text);
}

}  // namespace
}  // namespace roundwright::test
