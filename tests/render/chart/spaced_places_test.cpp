#include "render/chart/spaced_places.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "tests/support/random_cases.h"

namespace roundwright::render {
namespace {

double misfit(const std::vector<double>& places, const std::vector<double>& wished) {
    double sum = 0;
    for (std::size_t i = 0; i < places.size(); ++i) sum += std::pow(places[i] - wished[i], 2);
    return sum;
}

void expect_places(const std::vector<double>& places, const std::vector<double>& wanted) {
    ASSERT_EQ(places.size(), wanted.size());
    for (std::size_t i = 0; i < places.size(); ++i) EXPECT_NEAR(places[i], wanted[i], 1e-12) << i;
}

TEST(SpacedPlaces, KeepsWishesThatHaveRoom) { expect_places(spaced_places({1, 3, 6}, 1, 0, 9), {1, 3, 6}); }

// By symmetry: two that wish the same place stand on both sides of it.
TEST(SpacedPlaces, PartsThoseThatWishTheSame) {
    expect_places(spaced_places({2, 2, 5}, 1, 0, 9), {1.5, 2.5, 5});
    expect_places(spaced_places({2, 2, 2}, 1, 0, 9), {1, 2, 3});
}

TEST(SpacedPlaces, StaysWithinItsEnds) {
    expect_places(spaced_places({-2, 0, 8, 12}, 1, 0, 9), {0, 1, 8, 9});
    expect_places(spaced_places({7}, 1, 0, 5), {5});
}

TEST(SpacedPlaces, StandsEvenlyWhereRoomIsShort) {
    expect_places(spaced_places({3, 3, 3, 3, 3}, 1, 0, 2), {0, 0.5, 1, 1.5, 2});
    expect_places(spaced_places({3}, 1, 2.0000000001, 2), {2.0000000001});
    EXPECT_TRUE(spaced_places({}, 1, 0, 2).empty());
}

// The answer is the least of a convex sum over a convex set: no allowed step makes it smaller.
TEST(SpacedPlaces, IsTheNearestInOrder) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> anywhere(-1, 11);
    for (int trial = 0; trial < testing::random_cases(2'000); ++trial) {
        std::vector<double> wished(8);
        for (double& wish : wished) wish = anywhere(random);
        const auto places = spaced_places(wished, 1, 0, 10);
        for (int step = 0; step < 40; ++step) {
            std::vector<double> other(8);
            for (double& place : other) place = anywhere(random);
            const auto allowed = spaced_places(other, 1, 0, 10);
            for (std::size_t i = 0; i < 8; ++i) other[i] = places[i] + 0.1 * (allowed[i] - places[i]);
            EXPECT_GE(misfit(other, wished), misfit(places, wished) - 1e-9);
        }
        for (std::size_t i = 1; i < 8; ++i) EXPECT_GE(places[i] - places[i - 1], 1 - 1e-12);
        EXPECT_GE(places.front(), 0);
        EXPECT_LE(places.back(), 10 + 1e-12);
    }
}

}  // namespace
}  // namespace roundwright::render
