#include "app/versions/thin_versions.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <random>

namespace roundwright::app {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr std::int64_t minute = 60;
constexpr std::int64_t hour = 60 * minute;
constexpr std::int64_t day = 24 * hour;
constexpr std::int64_t year = 365 * day;

std::vector<AgedVersion> of_ages(std::initializer_list<std::int64_t> ages, std::int64_t bytes = 1000) {
    std::vector<AgedVersion> versions;
    for (const auto age : ages) versions.push_back({age, bytes});
    return versions;
}

/// When versions were kept, newest first, with one more at `now`.
void save_at(std::vector<std::int64_t>& times, std::int64_t now) {
    times.insert(times.begin(), now);
    std::vector<AgedVersion> aged;
    for (const auto time : times) aged.push_back({now - time, 1000});
    const auto gone = superfluous_versions(aged);
    for (auto index = gone.rbegin(); index != gone.rend(); ++index)
        times.erase(times.begin() + static_cast<std::ptrdiff_t>(*index));
}

/// How far off, as a ratio of ages, the version nearest to an age is.
double off(const std::vector<std::int64_t>& times, std::int64_t now, std::int64_t age) {
    double least = 1e9;
    for (const auto time : times) {
        const double here = static_cast<double>(std::max<std::int64_t>(now - time, 1));
        const double ratio = here / static_cast<double>(age);
        least = std::min(least, std::max(ratio, 1 / ratio));
    }
    return least;
}

TEST(ThinVersions, TenStay) {
    EXPECT_THAT(superfluous_versions({}), IsEmpty());
    EXPECT_THAT(superfluous_versions(of_ages({1, 2, 3, 4, 5, 6, 7, 8, 9, 10})), IsEmpty());
    EXPECT_EQ(superfluous_versions(of_ages({1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})).size(), 2u);
}

TEST(ThinVersions, OfTwoThatAreNearlyAsOldOneGoes) {
    EXPECT_THAT(superfluous_versions(of_ages({0, minute, 5 * minute, hour, 3 * hour, day, day + minute,
                                              7 * day, 30 * day, 90 * day, year})),
                ElementsAre(6));
}

TEST(ThinVersions, TheNewestAndTheOldestStay) {
    const auto gone = superfluous_versions(of_ages({0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13}));
    for (const std::size_t stays : {0, 1, 2, 13}) EXPECT_THAT(gone, testing::Not(testing::Contains(stays)));
}

TEST(ThinVersions, SavingEveryFewMinutesForFiveYearsLeavesAnHourADayAWeekAndAMonth) {
    std::vector<std::int64_t> times;
    std::mt19937 random(20260304);
    std::vector<double> all_off;
    std::int64_t now = 0;
    for (int evening = 0; evening < 5 * 365; ++evening) {
        if (random() % 3 == 0) continue;  // not every evening
        now = evening * day + 19 * hour;
        const std::int64_t end = now + 3 * hour;
        while (now < end) {
            now += minute + static_cast<std::int64_t>(random() % (9 * minute));
            save_at(times, now);
            ASSERT_LE(times.size(), 10u);
            ASSERT_EQ(times.front(), now);
        }
        if (evening < 120) continue;
        for (const std::int64_t age : {hour, day, 7 * day, 30 * day}) all_off.push_back(off(times, now, age));
    }
    std::ranges::sort(all_off);
    EXPECT_LE(all_off[all_off.size() / 2], 2);
    EXPECT_LE(all_off[all_off.size() * 99 / 100], 4);
    EXPECT_LE(all_off.back(), 10);
    EXPECT_LT(times.back(), day) << "the very first is there still";
}

TEST(ThinVersions, AClockThatJumpedLosesNeitherNewestNorOldest) {
    std::vector<AgedVersion> versions =
        of_ages({0, 10, 20, -9 * year, 40, 50 * year, 60, 70, 80, 90, 100, 110});
    const auto gone = superfluous_versions(versions);
    EXPECT_EQ(gone.size(), 2u);
    for (const std::size_t stays : {0, 1, 2, 11}) EXPECT_THAT(gone, testing::Not(testing::Contains(stays)));
}

TEST(ThinVersions, ManyBytesLeaveFewVersions) {
    constexpr std::int64_t mib = 1 << 20;
    EXPECT_THAT(superfluous_versions(of_ages({0, minute, hour, day}, 4 * mib)), IsEmpty());
    EXPECT_THAT(superfluous_versions(of_ages({0, minute, hour, day}, 5 * mib)).size(), 1u);
    EXPECT_THAT(superfluous_versions(of_ages({0, minute, hour, day}, 8 * mib)), ElementsAre(1, 2));
    EXPECT_THAT(superfluous_versions(of_ages({0, minute, hour, day}, 9 * mib)), ElementsAre(1, 2, 3));
    EXPECT_THAT(superfluous_versions(of_ages({0, minute}, 60 * mib)), ElementsAre(1)) << "the newest stays";
}

TEST(ThinVersions, LimitsOfOneAndNoneLeaveTheNewest) {
    for (const std::size_t most : {std::size_t{0}, std::size_t{1}}) {
        VersionLimits limits;
        limits.most = most;
        EXPECT_THAT(superfluous_versions(of_ages({0, 1, 2}), limits), ElementsAre(1, 2));
    }
}

}  // namespace
}  // namespace roundwright::app
