#include "core/shape/measure_profile.h"

#include <cmath>
#include <functional>
#include <gtest/gtest.h>
#include <numbers>
#include <vector>

namespace roundwright::test {
namespace {

using std::numbers::pi;

struct Solid {
    const char* name;
    double surface;
    double volume;
    double width;
    double height;
    std::function<std::pair<double, double>(double)> meridian;  ///< (r, z) for 0..1
};

/// A profile of n frustums inscribed in a smooth one falls short by O(1 / n^2); Richardson's step removes
/// that.
ProfileMeasure extrapolated(const Solid& solid) {
    const auto measure = [&](int n) {
        std::vector<double> r;
        std::vector<double> z;
        for (int i = 0; i <= n; ++i) {
            const auto [ri, zi] = solid.meridian(static_cast<double>(i) / n);
            r.push_back(ri);
            z.push_back(zi);
        }
        return measure_profile(r, z);
    };
    const ProfileMeasure coarse = measure(2000);
    ProfileMeasure fine = measure(4000);
    fine.volume += (fine.volume - coarse.volume) / 3;
    fine.surface += (fine.surface - coarse.surface) / 3;
    return fine;
}

// CRC Standard Mathematical Tables; Bronshtein and Semendyayev. Figures computed from their formulas.
TEST(MeasureProfile, SolidsOfTheHandbooks) {
    const Solid solids[] = {
        {"sphere 3", 113.097335529233, 113.097335529233, 6, 6,
         [](double t) { return std::pair(3 * std::sin(pi * t), -3 * std::cos(pi * t)); }},
        {"oblate spheroid 3 3 2", 89.000737371941, 75.398223686155, 6, 4,
         [](double t) { return std::pair(3 * std::sin(pi * t), -2 * std::cos(pi * t)); }},
        {"prolate spheroid 2 2 3", 67.672872653840, 50.265482457437, 4, 6,
         [](double t) { return std::pair(2 * std::sin(pi * t), -3 * std::cos(pi * t)); }},
    };
    for (const Solid& solid : solids) {
        const ProfileMeasure measure = extrapolated(solid);
        EXPECT_NEAR(measure.surface, solid.surface, 1e-9 * solid.surface) << solid.name;
        EXPECT_NEAR(measure.volume, solid.volume, 1e-9 * solid.volume) << solid.name;
        EXPECT_NEAR(measure.width, solid.width, 1e-12) << solid.name;
        EXPECT_NEAR(measure.height, solid.height, 1e-12) << solid.name;
    }
}

// Cap of a sphere R = 5, height 2 (curved part), frustum of radii 2, 5 and height 4, capsule r = 2, L = 5:
// the same handbooks.
TEST(MeasureProfile, CapFrustumAndCapsule) {
    const double angle = std::acos(3.0 / 5);
    const ProfileMeasure cap =
        extrapolated({"", 0, 0, 0, 0, [&](double t) {
                          return std::pair(5 * std::sin(angle * t), -5 * std::cos(angle * t));
                      }});
    EXPECT_NEAR(cap.surface, 62.831853071796, 1e-7);
    EXPECT_NEAR(cap.volume, 54.454272662223, 1e-7);

    const std::vector<double> r{2, 5};
    const std::vector<double> z{0, 4};
    const ProfileMeasure frustum = measure_profile(r, z);
    EXPECT_NEAR(frustum.surface, 109.955742875643, 1e-11);
    EXPECT_NEAR(frustum.volume, 163.362817986669, 1e-11);

    const ProfileMeasure capsule = extrapolated(
        {"", 0, 0, 0, 0, [](double t) {
             if (t < 0.4) return std::pair(2 * std::sin(pi / 2 * t / 0.4), -2 * std::cos(pi / 2 * t / 0.4));
             if (t <= 0.6) return std::pair(2.0, 5 * (t - 0.4) / 0.2);
             return std::pair(2 * std::cos(pi / 2 * (t - 0.6) / 0.4),
                              5 + 2 * std::sin(pi / 2 * (t - 0.6) / 0.4));
         }});
    EXPECT_NEAR(capsule.surface, 113.097335529233, 1e-7);
    EXPECT_NEAR(capsule.volume, 96.342174710087, 1e-7);
}

TEST(MeasureProfile, NothingMeasuresNothing) {
    const ProfileMeasure none = measure_profile({}, {});
    EXPECT_EQ(none.width, 0);
    EXPECT_EQ(none.volume, 0);
}

}  // namespace
}  // namespace roundwright::test
