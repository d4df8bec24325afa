#include "core/gauge/gauge_prior.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/gauge/usual_gauge.h"

namespace roundwright {
namespace {

using std::numbers::pi;

/// How many standard deviations a stitch width that was found lies from the estimate.
double deviations_off(YarnWeight weight, double hook_mm, double stitch_mm) {
    const GaugeBelief estimate = estimated_belief(weight, hook_mm).value();
    return (std::log(stitch_mm) - estimate.mean[0]) / deviation_along(estimate, gauge_direction::width());
}

// At the belt of eight stuffed worsted pieces: 5.0 to 6.65 mm a stitch, mean 5.9, standard deviation 11 %.
// The hooks known are 3.75, 3.75, 4 and 4.25 mm; stuffing stretches the belt by about 2.5 %.
TEST(GaugePrior, WorstedToysLieAboutTheEstimate) {
    const GaugeBelief estimate = estimated_belief(YarnWeight::medium, 3.94).value();
    EXPECT_NEAR(1.025 * std::exp(estimate.mean[0]), 5.9, 0.2);
    EXPECT_NEAR(deviation_along(estimate, gauge_direction::width()), 0.13, 0.02);
    EXPECT_LT(std::abs(deviations_off(YarnWeight::medium, 3.94, 5.0 / 1.025)), 1.645);
    EXPECT_LT(std::abs(deviations_off(YarnWeight::medium, 3.94, 6.65 / 1.025)), 1.645);
}

// "Flat circle with solid center", worsted and 4 mm, 7.1 mm a round; five rounds of "Pocket-Size Planet",
// 5.1 mm; its ball, 48 stitches around 76 mm.
TEST(GaugePrior, WorstedCirclesAndTheirBallLieWithinTheEstimate) {
    for (const double found : {57.15 / 8, 50.8 / 10, 76.2 * pi / 48})
        EXPECT_LT(std::abs(deviations_off(YarnWeight::medium, 4, found)), 1.645) << found;
}

// "Ball of (almost) any size": DK with 3.5 mm, 24, 36, 48 stitches around 100, 150, 200 mm.
TEST(GaugePrior, TheDkSeriesLiesWithinTheEstimate) {
    EXPECT_LT(std::abs(deviations_off(YarnWeight::light, 3.5, 100.0 / 24 / 1.025)), 1.645);
}

TEST(GaugePrior, AnotherHookScalesAndHalfOfTheChangeIsUncertain) {
    const GaugeBelief found = belief_of(Gauge{5, 4.5, 0, 0});
    const SizeAndRatio other = size_and_ratio(with_other_hook(found, 4, 5));
    EXPECT_NEAR(other.size_mm, std::sqrt(22.5) * 1.25, 1e-9);
    EXPECT_NEAR(other.ratio, 0.9, 1e-9);
    EXPECT_NEAR(other.size_deviation, std::log(1.25) / 4, 1e-9);
    EXPECT_NEAR(other.ratio_deviation, 0, 1e-7);
    EXPECT_EQ(with_other_hook(found, 0, 5).mean, found.mean);
    EXPECT_EQ(with_other_hook(found, 4, std::nan("")).mean, found.mean);
}

TEST(GaugePrior, AWeightThatIsNotKnownIsLessCertain) {
    for (const double hook : {0.5, 2.0, 3.5, 6.0, 16.0, 50.0}) {
        const GaugeBelief known = estimated_belief(usual_weight(hook), hook).value();
        const GaugeBelief usual = usual_belief(hook);
        EXPECT_EQ(usual.mean, known.mean);
        EXPECT_GT(deviation_along(usual, gauge_direction::size()),
                  deviation_along(known, gauge_direction::size()) + 0.005);
        EXPECT_NEAR(deviation_along(usual, gauge_direction::ratio()), ratio_spread, 1e-9);
    }
}

TEST(GaugePrior, OddHooksAndLaceDoNoHarm) {
    EXPECT_FALSE(estimated_belief(YarnWeight::lace, 2));
    EXPECT_FALSE(estimated_belief(YarnWeight::light, -1));
    EXPECT_EQ(usual_belief(std::nan("")).mean, usual_belief(3.5).mean);
    EXPECT_EQ(usual_belief(-2).mean, usual_belief(3.5).mean);
}

}  // namespace
}  // namespace roundwright
