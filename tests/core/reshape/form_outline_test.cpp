#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

#include "core/reshape/forms.h"

namespace roundwright {
namespace {

using Points = std::vector<Vec2>;

Form form(FormKind kind, double top = 0, double waist = 0, bool closed = true) {
    return {kind, 50, 80, top, waist, closed};
}

TEST(FormOutline, ConesAndCylindersAreStraight) {
    EXPECT_EQ(silhouette_of(form(FormKind::cone, 20)).points, (Points{{0, 0}, {10, 0}, {25, 80}, {0, 80}}));
    EXPECT_EQ(silhouette_of(form(FormKind::cone, 20, 0, false)).points, (Points{{0, 0}, {10, 0}, {25, 80}}));
    EXPECT_EQ(silhouette_of(form(FormKind::cone)).points, (Points{{0, 0}, {25, 80}, {0, 80}}));
    EXPECT_EQ(silhouette_of(form(FormKind::cylinder)).points, (Points{{0, 0}, {25, 0}, {25, 80}, {0, 80}}));
    EXPECT_EQ(silhouette_of(form(FormKind::cylinder, 0, 0, false)).points,
              (Points{{0, 0}, {25, 0}, {25, 80}}));
}

/// A dome of two fifths of the height, a quarter ellipse, and then a flare with the square of the height.
TEST(FormOutline, ABellIsADomeAndAFlare) {
    const Points points = silhouette_of(form(FormKind::bell, 30)).points;
    for (const Vec2& p : points) {
        const double dome = 15 * std::sqrt(std::max(0.0, 1 - std::pow(1 - p.y() / 32, 2)));
        const double flare = 15 + 10 * std::pow((p.y() - 32) / 48, 2);
        if (p != points.back()) {
            EXPECT_NEAR(p.x(), p.y() < 32 ? dome : flare, 1e-6) << p.y();
        }
    }
    EXPECT_EQ(points.front(), Vec2(0, 0));
    EXPECT_EQ(points[points.size() - 2], Vec2(25, 80));
    EXPECT_EQ(points.back(), Vec2(0, 80));
    EXPECT_EQ(silhouette_of(form(FormKind::bell, 30, 0, false)).points.back(), Vec2(25, 80));
    EXPECT_GT(points.size(), 700U);
}

TEST(FormOutline, AHalfBallIsAsHighAsHalfItsWidth) {
    const Points points = silhouette_of(form(FormKind::half_ball)).points;
    EXPECT_EQ(points.front(), Vec2(0, 0));
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
        EXPECT_NEAR((points[i] - Vec2(0, 25)).norm(), 25, 1e-9);
    EXPECT_EQ(points.back(), Vec2(0, 25));
    EXPECT_NEAR(silhouette_of(form(FormKind::half_ball, 0, 0, false)).points.back().x(), 25, 1e-12);
}

/// r ~ sqrt(u (1 - u)) times 1, 1.25 - u / 2, or 1 falling to the top's share between 0.3 and 0.75.
TEST(FormOutline, RoundEndedFormsFollowTheirFormula) {
    const auto follows = [](const Form& asked, const auto& factor) {
        double widest = 0;
        for (int i = 1; i < 10'000; ++i)
            widest = std::max(widest, std::sqrt(i * 1e-4 * (1 - i * 1e-4)) * factor(i * 1e-4));
        for (const Vec2& p : silhouette_of(asked).points) {
            const double u = p.y() / 80;
            EXPECT_NEAR(p.x(), 25 / widest * std::sqrt(std::max(0.0, u * (1 - u))) * factor(u), 1e-3) << u;
        }
    };
    follows(form(FormKind::ball), [](double) { return 1.0; });
    follows(form(FormKind::egg), [](double u) { return 1.25 - u / 2; });
    follows(form(FormKind::pear, 35), [](double u) {
        const double t = std::clamp((u - 0.3) / 0.45, 0.0, 1.0);
        return 1 - 0.3 * t * t * (3 - 2 * t);
    });
}

/// Two ellipses, each with its widest place at 0.55 of its height, the waist between them.
TEST(FormOutline, AGourdHasTwoPartsAndAWaist) {
    const Points points = silhouette_of(form(FormKind::gourd, 30, 20)).points;
    const auto radius_at = [&](double z) {
        for (std::size_t i = 1; i < points.size(); ++i)
            if (points[i].y() >= z) {
                const double t = (z - points[i - 1].y()) / (points[i].y() - points[i - 1].y());
                return points[i - 1].x() + t * (points[i].x() - points[i - 1].x());
            }
        return 0.0;
    };
    EXPECT_NEAR(radius_at(27.5), 25, 0.01);  // 80 * 25 / 40 / 2 * 1.1
    EXPECT_NEAR(radius_at(63.5), 15, 0.01);  // as far from the top: 30 / 2 * 1.1
    EXPECT_NEAR(radius_at(27.5 / 2), 25 * std::sqrt(0.75), 0.01);
    EXPECT_NEAR(radius_at(80 - 16.5 / 2), 15 * std::sqrt(0.75), 0.01);
    const double waist = 27.5 + 36 * 5 / (5 + std::sqrt(15));
    EXPECT_NEAR(radius_at(waist), 10, 0.01);
    EXPECT_NEAR(radius_at((27.5 + waist) / 2), 17.5, 0.01);  // half way of a smooth step
    EXPECT_NEAR(radius_at((waist + 63.5) / 2), 12.5, 0.01);
}

TEST(FormCodes, OnEitherSideOfEachLimit) {
    using enum FormCode;
    for (const FormKind kind : {FormKind::ball, FormKind::egg, FormKind::cylinder, FormKind::half_ball})
        EXPECT_EQ(form_code({kind, 50, 80, 0, 0, true}), good);
    EXPECT_EQ(form_code({FormKind::ball, 50, 0, 0, 0, true}), size_not_positive);
    EXPECT_EQ(form_code({FormKind::half_ball, 50, 0, 0, 0, true}), good);
    EXPECT_EQ(form_code({FormKind::half_ball, -1, 10, 0, 0, true}), size_not_positive);
    for (const FormKind kind : {FormKind::pear, FormKind::cone, FormKind::bell}) {
        EXPECT_EQ(form_code({kind, 50, 80, 49.9, 0, true}), good);
        EXPECT_EQ(form_code({kind, 50, 80, 50, 0, true}), top_not_narrower);
        EXPECT_EQ(form_code({kind, 50, 80, -1, 0, true}), size_not_positive);
        EXPECT_EQ(form_code({kind, 50, 80, 0, 0, true}), kind == FormKind::cone ? good : size_not_positive);
    }
    EXPECT_EQ(form_code({FormKind::gourd, 50, 80, 50, 49.9, true}), good);
    EXPECT_EQ(form_code({FormKind::gourd, 50, 80, 50.1, 40, true}), waist_not_narrower);
    EXPECT_EQ(form_code({FormKind::gourd, 50, 80, 40, 40, true}), waist_not_narrower);
    EXPECT_EQ(form_code({FormKind::gourd, 50, 80, 0, 20, true}), size_not_positive);
    EXPECT_EQ(form_code({FormKind::gourd, 50, 80, 40, 0, true}), size_not_positive);
}

TEST(UsualForms, AreWorkedFromTheirTopWhereThatIsPointed) {
    for (int kind = 0; kind < 8; ++kind) {
        const Form usual = usual_form(static_cast<FormKind>(kind), 60);
        EXPECT_EQ(form_code(usual), FormCode::good) << kind;
        EXPECT_EQ(usual.kind, static_cast<FormKind>(kind));
        EXPECT_EQ(starts_at_top(usual.kind), usual.kind == FormKind::cone || usual.kind == FormKind::bell ||
                                                 usual.kind == FormKind::half_ball);
    }
}

}  // namespace
}  // namespace roundwright
