#include "core/reshape/forms.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/reshape/rounds_for_meridian.h"
#include "tests/core/reshape/random_piece.h"

namespace roundwright {
namespace {

using std::numbers::pi;
using testing::even_counts;

constexpr FormKind all_forms[] = {FormKind::ball,     FormKind::egg,  FormKind::pear,  FormKind::cone,
                                  FormKind::cylinder, FormKind::bell, FormKind::gourd, FormKind::half_ball};

double lateral_surface(const Silhouette& outline) {
    double sum = 0;
    for (std::size_t i = 1; i < outline.points.size(); ++i)
        sum += pi * (outline.points[i - 1].x() + outline.points[i].x()) *
               (outline.points[i] - outline.points[i - 1]).norm();
    return sum;
}

// CRC Standard Mathematical Tables: sphere of radius 3, surface 113.097335529233; spheroid 2, 2, 3:
// 67.672872653840.
TEST(Forms, ABallIsASphereAndALongOneASpheroid) {
    const Silhouette sphere = silhouette_of({FormKind::ball, 6, 6, 0, 0, true});
    EXPECT_NEAR(lateral_surface(sphere), 113.097335529233, 2e-3);
    EXPECT_NEAR(arc_lengths(sphere).back(), 3 * pi, 1e-4);
    const Silhouette prolate = silhouette_of({FormKind::ball, 4, 6, 0, 0, true});
    EXPECT_NEAR(lateral_surface(prolate), 67.672872653840, 2e-3);
}

TEST(Forms, HaveTheSizesAskedFor) {
    for (FormKind kind : all_forms) {
        const Form form = usual_form(kind, 70);
        EXPECT_EQ(form_code(form), FormCode::good);
        const Silhouette outline = silhouette_of(form);
        EXPECT_TRUE(is_usable(outline));
        EXPECT_NEAR(width_mm(outline), 70, 1e-3) << int(kind);
        EXPECT_NEAR(height_mm(outline), form.height_mm, 1e-9) << int(kind);
    }
}

TEST(Forms, TheGourdHasItsWaistAndItsTop) {
    const Form form = usual_form(FormKind::gourd, 70);
    const Silhouette outline = silhouette_of(form);
    double waist = 70, top = 0;
    for (const Vec2& p : outline.points)
        if (p.y() > 0.4 * form.height_mm && p.y() < 0.7 * form.height_mm) waist = std::min(waist, 2 * p.x());
    for (const Vec2& p : outline.points)
        if (p.y() > 0.7 * form.height_mm) top = std::max(top, 2 * p.x());
    EXPECT_NEAR(waist, form.waist_width_mm, 0.1);
    EXPECT_NEAR(top, form.top_width_mm, 0.1);
}

TEST(Forms, SayWhichSizesDoNotGoTogether) {
    EXPECT_EQ(form_code({FormKind::ball, 0, 10, 0, 0, true}), FormCode::size_not_positive);
    EXPECT_EQ(form_code({FormKind::ball, NAN, 10, 0, 0, true}), FormCode::size_not_positive);
    EXPECT_EQ(form_code({FormKind::pear, 50, 80, 60, 0, true}), FormCode::top_not_narrower);
    EXPECT_EQ(form_code({FormKind::gourd, 50, 80, 30, 35, true}), FormCode::waist_not_narrower);
    EXPECT_EQ(piece_from_form({FormKind::pear, 50, 80, 60, 0, true}, {5, 5, 0, 0}).code,
              ReshapeCode::unusable_target);
}

// N(s) = 2 pi R sin(s / R) / w, rounds h apart: the handbook circle, for unstretched fabric.
TEST(Forms, AnUnstretchedSphereWantsTheHandbookCircle) {
    const double radius = 31.7;
    const Gauge gauge{4.8, 4.4, 0, 0};
    const Silhouette sphere = silhouette_of({FormKind::ball, 2 * radius, 2 * radius, 0, 0, true});
    const StitchProfile profile =
        stitch_profile(sphere, evenly_stretched(sphere, 0, gauge), gauge.stitch_width_mm);
    EXPECT_TRUE(profile.ring_start);
    EXPECT_TRUE(profile.drawn_closed);
    EXPECT_NEAR(profile.rounds(), pi * radius / gauge.round_height_mm, 1e-3);
    for (double round = 0.5; round < profile.rounds(); round += 0.5)
        EXPECT_NEAR(
            profile.stitches_at(round),
            2 * pi * radius * std::sin(round * gauge.round_height_mm / radius) / gauge.stitch_width_mm, 2e-3);
}

struct Sphere {
    double radius_mm;
    Gauge gauge;
    double area_stretch;

    // The course takes a third of the stretch, being twice as stiff as the wale (core/shape: 1 and 0.5),
    // since the tension of a round membrane is the same both ways.
    double stitch_mm() const { return gauge.stitch_width_mm * (1 + area_stretch / 3); }
    double round_mm() const { return gauge.round_height_mm * (1 + area_stretch * 2 / 3); }

    // Rounds spread evenly from pole to pole, the last as far from its pole as the first.
    double step_mm(std::size_t rounds) const { return pi * radius_mm / (double(rounds) + 1); }
    // Handbook circle: the parallel at arc length s is 2 pi R sin(s / R) long.
    double stitches(std::size_t round, std::size_t rounds) const {
        return 2 * pi * radius_mm * std::sin(double(round) * step_mm(rounds) / radius_mm) / stitch_mm();
    }
};

// Neither more than doubled nor halved, and no steeper than flat, 2 pi h / w stitches a round, and a stitch.
bool can_follow(const Gauge& gauge, int below, int count) {
    const double flat = 2 * pi * gauge.round_height_mm / gauge.stitch_width_mm;
    return count >= 3 && std::abs(count - below) <= flat + 1 &&
           (below == 0 || (count <= 2 * below && 2 * count >= below));
}

bool can_stand(const Gauge& gauge, const std::vector<int>& counts, std::size_t i, int count) {
    return can_follow(gauge, i > 0 ? counts[i - 1] : 0, count) &&
           (i + 1 == counts.size() || can_follow(gauge, count, counts[i + 1]));
}

void expect_nearest_stitches(const Sphere& sphere, const std::vector<int>& counts) {
    EXPECT_LE(std::abs(pi * sphere.radius_mm / sphere.round_mm() - double(counts.size() + 1)), 1.51);
    for (std::size_t i = 0; i < counts.size(); ++i) {
        const double wanted = sphere.stitches(i + 1, counts.size());
        const int nearer = counts[i] + (wanted > counts[i] ? 1 : -1);
        // 0.01: the outline is drawn with 400 points.
        EXPECT_TRUE(std::abs(counts[i] - wanted) <= 0.51 || !can_stand(sphere.gauge, counts, i, nearer))
            << "radius " << sphere.radius_mm << ", round " << i + 1 << ": " << counts[i] << " for " << wanted;
    }
}

TEST(Forms, ASphereHasTheNearestStitchesAllowed) {
    const Gauge gauges[] = {{5, 5, 0, 0}, {5, 4.5, 0, 0}, {3.5, 3.4, 0, 0}, {8, 8.5, 0, 0}, {2.5, 2.2, 0, 0}};
    for (const Gauge& gauge : gauges)
        for (double stretch : {unstuffed_stretch, light_stuffing_stretch, firm_stuffing_stretch})
            for (double radius = 10; radius <= 120; radius += 5.5) {
                const Form ball{FormKind::ball, 2 * radius, 2 * radius, 0, 0, true};
                const Reshaped made = piece_from_form(ball, gauge, stretch, FormCounts::nearest_stitch);
                ASSERT_TRUE(has_piece(made.code)) << radius;
                expect_nearest_stitches({radius, gauge, stretch}, even_counts(made.form.piece));
            }
}

// Common practice: a ball ends as it begins, 18, 12, 6.
TEST(Forms, ABallEndsAsItBegins) {
    for (double width = 45; width <= 150; width += 7) {
        const Form ball = usual_form(FormKind::ball, width);
        auto counts = even_counts(piece_from_form(ball, {5, 4.8, 0, 0}).form.piece);
        EXPECT_EQ(counts.front(), 6) << width;
        EXPECT_EQ(counts.back(), 6) << width;
        const Gauge gauge{5, 4.8, 0, 0};
        counts = even_counts(
            piece_from_form(ball, gauge, medium_stuffing_stretch, FormCounts::nearest_stitch).form.piece);
        for (std::size_t i = 0; i < counts.size(); ++i)
            EXPECT_NEAR(counts[i], counts[counts.size() - 1 - i], 1) << width << ", round " << i + 1;
    }
}

TEST(Forms, CorrectedForItsSizeABallComesOutRound) {
    for (double width = 30; width <= 160; width += 10) {
        const Reshaped made = piece_from_form({FormKind::ball, width, width, 0, 0, true}, {5, 5, 0, 0},
                                              medium_stuffing_stretch, FormCounts::size);
        ASSERT_EQ(made.code, ReshapeCode::met) << width;
        EXPECT_NEAR(made.reached().height_mm, made.reached().width_mm, std::max(2.5, 0.03 * width)) << width;
    }
}

double apart_mm(const Form& form, const Reshaped& made) {
    return distance_mm(resampled(silhouette_of(form), 1), resampled(made.form.outline(), 1));
}

TEST(Forms, AreWorkedToTheirSizeAndNearTheirOutline) {
    const Gauge gauge{5, 4.8, 0, 0};
    for (FormKind kind : all_forms)
        for (double width : {35.0, 60.0, 95.0}) {
            const Form form = usual_form(kind, width);
            const Reshaped sized = piece_from_form(form, gauge, medium_stuffing_stretch, FormCounts::size);
            EXPECT_EQ(sized.code, ReshapeCode::met) << int(kind) << " " << width;
            EXPECT_TRUE(sized.form.graph.problems.empty());
            EXPECT_LT(apart_mm(form, sized), 0.08 * width) << int(kind) << " " << width;
            const Reshaped drawn =
                piece_from_form(form, gauge, medium_stuffing_stretch, FormCounts::nearest_stitch);
            EXPECT_TRUE(drawn.form.graph.problems.empty());
            EXPECT_LT(apart_mm(form, drawn), 0.1 * width) << int(kind) << " " << width;
        }
}

TEST(Forms, StartWhereTheyAreWorkedFrom) {
    const Gauge gauge{5, 5, 0, 0};
    EXPECT_TRUE(piece_from_form(usual_form(FormKind::half_ball, 60), gauge).form.piece.starts_at_top);
    const Piece ball = piece_from_form(usual_form(FormKind::ball, 60), gauge).form.piece;
    EXPECT_FALSE(ball.starts_at_top);
    EXPECT_EQ(ball.end, End::drawn_closed);
    const Piece bowl = piece_from_form(usual_form(FormKind::half_ball, 60), gauge).form.piece;
    EXPECT_EQ(bowl.end, End::left_open);
    const Piece cylinder = piece_from_form(usual_form(FormKind::cylinder, 60), gauge).form.piece;
    // Stuffing makes a dome of its base, and a mark would only bring a warning.
    for (const Round& round : cylinder.rounds) EXPECT_FALSE(round.lies_flat);
    Form box = usual_form(FormKind::cylinder, 60);
    box.closed = false;
    const Piece flat = piece_from_form(box, gauge, unstuffed_stretch).form.piece;
    EXPECT_TRUE(flat.rounds.front().lies_flat);
    EXPECT_FALSE(flat.rounds.back().lies_flat);
}

TEST(Forms, AnOutlineWithAHoleStartsFromAChain) {
    // So low that it stands without stuffing.
    const Silhouette tube{{Vec2(20, 0), Vec2(20, 15)}};
    const Reshaped made = piece_from_silhouette(tube, {5, 5, 0, 0}, unstuffed_stretch, 6);
    ASSERT_EQ(made.code, ReshapeCode::met);
    ASSERT_TRUE(std::holds_alternative<OpenTube>(made.form.piece.start));
    EXPECT_NEAR(std::get<OpenTube>(made.form.piece.start).chains, 25, 1);
    EXPECT_EQ(made.form.piece.end, End::left_open);
}

}  // namespace
}  // namespace roundwright
