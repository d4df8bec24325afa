#include "core/reshape/forms.h"

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

// Whether one stitch nearer would break what can be worked: doubling, halving, three stitches, flat growth.
bool nearer_is_not_allowed(const std::vector<int>& counts, std::size_t i, int by) {
    const int count = counts[i] + by;
    const int below = i > 0 ? counts[i - 1] : 0;
    const int above = i + 1 < counts.size() ? counts[i + 1] : 3;
    const double flat = 2 * pi;
    return count < 3 || count - below > flat || count - above > flat || (below > 0 && count > 2 * below) ||
           2 * count < below || above > 2 * count || 2 * above < count;
}

// The stuffed sphere: the same circle with both stretches, its rounds spread evenly from pole to pole. The
// course takes a third of the stretch, being twice as stiff.
TEST(Forms, ASphereFromTheFormToolHasTheNearestStitchesAllowed) {
    const Gauge gauge{5, 5, 0, 0};
    const double course = medium_stuffing_stretch / 3;
    const PieceForm blank = piece_form(testing::piece_of({6}, End::left_open), gauge);
    for (double width = 30; width <= 200; width += 7) {
        Target target;
        target.silhouette = silhouette_of({FormKind::ball, width, width, 0, 0, true});
        const ReshapeTask task = reshape_task(blank, target, {0, {}});
        ASSERT_EQ(task.code, ReshapeCode::met);
        const auto counts = cut_rounds(task.problem, nullptr).counts;
        const double radius = width / 2;
        const double step = pi * radius / (double(counts.size()) + 0.5);
        EXPECT_NEAR(step, 5 * (1 + 2 * course), 2.6 / double(counts.size()) * 5);
        for (std::size_t i = 0; i < counts.size(); ++i) {
            const double wanted =
                2 * pi * radius * std::sin(double(i + 1) * step / radius) / (5 * (1 + course));
            EXPECT_TRUE(std::abs(counts[i] - wanted) <= 0.51 ||
                        nearer_is_not_allowed(counts, i, wanted > counts[i] ? 1 : -1))
                << width << " mm, round " << i + 1 << ": " << counts[i] << " for " << wanted;
        }
    }
}

TEST(Forms, ABallComesOutRound) {
    for (double width = 30; width <= 160; width += 10) {
        const Reshaped made = piece_from_form({FormKind::ball, width, width, 0, 0, true}, {5, 5, 0, 0});
        ASSERT_EQ(made.code, ReshapeCode::met) << width;
        EXPECT_NEAR(made.reached().height_mm, made.reached().width_mm, std::max(2.5, 0.03 * width)) << width;
    }
}

TEST(Forms, AreWorkedToTheirSizeOrSayNo) {
    for (FormKind kind : all_forms)
        for (double width : {35.0, 60.0, 95.0}) {
            const Reshaped made = piece_from_form(usual_form(kind, width), {5, 4.8, 0, 0});
            EXPECT_EQ(made.code, ReshapeCode::met) << int(kind) << " " << width;
            EXPECT_TRUE(made.form.graph.problems.empty());
            // Near in outline too, not in size alone.
            EXPECT_LT(distance_mm(resampled(silhouette_of(usual_form(kind, width)), 1),
                                  resampled(made.form.outline(), 1)),
                      0.08 * width)
                << int(kind) << " " << width;
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
    EXPECT_TRUE(cylinder.rounds.front().lies_flat);
    EXPECT_FALSE(cylinder.rounds[cylinder.rounds.size() / 2].lies_flat);
}

TEST(Forms, AnOutlineWithAHoleStartsFromAChain) {
    const Silhouette tube{{Vec2(20, 0), Vec2(20, 40)}};
    const Reshaped made = piece_from_silhouette(tube, {5, 5, 0, 0}, unstuffed_stretch, 6);
    ASSERT_EQ(made.code, ReshapeCode::met);
    ASSERT_TRUE(std::holds_alternative<OpenTube>(made.form.piece.start));
    EXPECT_NEAR(std::get<OpenTube>(made.form.piece.start).chains, 25, 1);
    EXPECT_EQ(made.form.piece.end, End::left_open);
}

}  // namespace
}  // namespace roundwright
