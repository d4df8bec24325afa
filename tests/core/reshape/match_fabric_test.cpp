#include "core/reshape/match_fabric.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace roundwright {
namespace {

constexpr int points = 31;
constexpr double round_mm = 5;

// A long piece, 60 mm across, a round between every two points.
Silhouette tube() {
    Silhouette outline;
    for (int i = 0; i < points; ++i) outline.points.emplace_back(30, round_mm * i);
    return outline;
}

FabricAlong unstretched() {
    return {std::vector<double>(points, 0.0), std::vector<double>(points - 1, round_mm)};
}

std::vector<double> parts() {
    std::vector<double> part;
    for (int i = 0; i < points; ++i) part.push_back(double(i) / (points - 1));
    return part;
}

// Moved between points 8 and 22.
std::vector<bool> moved_in_the_middle() {
    std::vector<bool> moved(points - 1, false);
    for (std::size_t i = 8; i < 22; ++i) moved[i] = true;
    return moved;
}

double bulge(int i) { return i > 8 && i < 22 ? std::sin(std::numbers::pi * (i - 8) / 14.0) : 0; }

// A stuffing that widens the middle by a fifth, and loops as long as their stitches.
std::optional<TriedFabric> bulging(const FabricAlong& fabric) {
    TriedFabric tried{tube(), parts()};
    for (int i = 0; i < points; ++i)
        tried.made.points[std::size_t(i)].x() *=
            (1 + 0.2 * bulge(i)) / (1 + fabric.course_stretch[std::size_t(i)]);
    return tried;
}

double furthest_off(const TriedFabric& tried) {
    double most = 0;
    for (const Vec2& p : tried.made.points) most = std::max(most, std::abs(p.x() - 30));
    return most;
}

TEST(MatchedFabric, TakesStitchesAwayWhereTheShapeComesOutTooWide) {
    const FabricAlong fabric =
        matched_fabric(tube(), unstretched(), moved_in_the_middle(), round_mm, bulging);
    EXPECT_NEAR(furthest_off(*bulging(unstretched())), 6, 0.1);
    EXPECT_LT(furthest_off(*bulging(fabric)), 0.8);
    EXPECT_NEAR(fabric.course_stretch[15], 0.2, 0.03);
}

TEST(MatchedFabric, LeavesWhatWasNotMovedAsItIs) {
    const FabricAlong fabric =
        matched_fabric(tube(), unstretched(), moved_in_the_middle(), round_mm, bulging);
    for (std::size_t i = 0; i < points; ++i) {
        if (i > 8 && i < 22) continue;
        EXPECT_EQ(fabric.course_stretch[i], 0) << i;
    }
    for (std::size_t i = 0; i + 1 < points; ++i) {
        if (i >= 8 && i < 22) continue;
        EXPECT_EQ(fabric.round_mm[i], round_mm) << i;
    }
}

TEST(MatchedFabric, WithNothingMovedNothingIsTried) {
    const auto never = [](const FabricAlong&) -> std::optional<TriedFabric> {
        ADD_FAILURE() << "tried";
        return std::nullopt;
    };
    const FabricAlong fabric =
        matched_fabric(tube(), unstretched(), std::vector<bool>(points - 1, false), round_mm, never);
    EXPECT_EQ(fabric.course_stretch, unstretched().course_stretch);
    EXPECT_EQ(fabric.round_mm, unstretched().round_mm);
}

TEST(MatchedFabric, WhereNoShapeIsFoundTheFabricStays) {
    const auto nothing = [](const FabricAlong&) { return std::optional<TriedFabric>(); };
    const FabricAlong fabric =
        matched_fabric(tube(), unstretched(), moved_in_the_middle(), round_mm, nothing);
    EXPECT_EQ(fabric.course_stretch, unstretched().course_stretch);
}

}  // namespace
}  // namespace roundwright
