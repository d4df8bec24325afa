#include "core/gauge/gauge_prior.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/units.h"
#include "core/gauge/hook.h"
#include "core/gauge/usual_gauge.h"

namespace roundwright {

namespace {

constexpr double four_inches_mm = 4 * mm_per_inch;
constexpr double hook_of_no_size_mm = 3.5;

/// The yarns of one weight differ: nine in ten are taken to lie within the published range. A range that the
/// table leaves open at one end is taken to reach a quarter to each side of the end that it gives.
constexpr double deviations_in_range = 1.645;
constexpr double half_open_range = 0.25;

/// Toys may be worked in a yarn a weight thicker or thinner than usual with their hook. By the table alone
/// fine, light and medium yarn make the same stitch with 3.5 mm (4.8 to 5.0), and with the toys measured 4.6
/// to 5.1.
constexpr double spread_of_unknown_weight = 0.06;

/// Nothing is known: no measurement is pulled by a billionth.
constexpr double spread_before_measuring = 1000;

/// Stitches that makers of toys were found to make, and how many hands made them: mm, relaxed. Their gauges
/// are not swatches of the yarn's label but toys, worked tightly.
///  - Eight stuffed worsted pieces ("Pocket-Size Planet", "Tiny Crochet Ball", "Christmas smilie ornament
///    head", "Great Ball" and four more): 5.9 mm at the belt on the mean, with hooks of 3.94 mm (of the
///    four).
///  - "Flat circle with solid center": four rounds of worsted, 57.15 mm across, 4 mm hook.
///  - "Ball of (almost) any size": DK with 3.5 mm, 24, 36 and 48 stitches around 100, 150 and 200 mm.
struct MeasuredHands {
    YarnWeight weight;
    double hook_mm;
    double stitch_mm;
    int hands;
};
/// What medium stuffing stretches a ball's belt by, as the shape solver finds it.
constexpr double belt_stretch = 1.025;
constexpr std::array<MeasuredHands, 3> measured_hands{{
    {YarnWeight::medium, 3.94, 5.9 / belt_stretch, 8},
    {YarnWeight::medium, 4, 57.15 / 8, 1},
    {YarnWeight::light, 3.5, 50.0 / 12 / belt_stretch, 1},
}};

bool positive(double value) { return std::isfinite(value) && value > 0; }

/// A normal distribution of one logarithm.
struct Logarithm {
    double mean = 0;
    double variance = 0;
};

Logarithm published_stitch(const Range& per_four_inches) {
    if (per_four_inches.low <= 0)
        return {std::log(four_inches_mm / per_four_inches.high),
                std::pow(half_open_range / deviations_in_range, 2)};
    return {std::log(four_inches_mm / std::sqrt(per_four_inches.low * per_four_inches.high)),
            std::pow(std::log(per_four_inches.high / per_four_inches.low) / 2 / deviations_in_range, 2)};
}

double label_hook_mm(const Range& hooks) { return hooks.high > 0 ? hooks.middle() : hooks.low; }

/// One hand's stitch is out by its size, and by half of its ratio.
double variance_of_a_hand() { return std::pow(hand_spread, 2) + std::pow(ratio_spread / 2, 2); }

/// The mean stitch of a weight with the hook of its label, corrected by the hands measured.
std::optional<Logarithm> mean_stitch(const YarnStandard& standard) {
    if (!standard.single_crochets_per_4_inches) return std::nullopt;
    Logarithm stitch = published_stitch(*standard.single_crochets_per_4_inches);
    for (const MeasuredHands& hands : measured_hands) {
        if (hands.weight != standard.weight) continue;
        const double as_labelled = hands.stitch_mm * label_hook_mm(standard.hook_mm) / hands.hook_mm;
        const double gain = stitch.variance / (stitch.variance + variance_of_a_hand() / hands.hands);
        stitch.mean += gain * (std::log(as_labelled) - stitch.mean);
        stitch.variance *= 1 - gain;
    }
    return stitch;
}

double hook_of_some_size(double hook_mm) {
    return positive(hook_mm) ? std::clamp(hook_mm, least_hook_mm, most_hook_mm) : hook_of_no_size_mm;
}

}  // namespace

std::optional<GaugeBelief> estimated_belief(YarnWeight weight, double hook_mm) {
    const YarnStandard& standard = yarn_standard(weight);
    const auto stitch = mean_stitch(standard);
    if (!stitch || !positive(hook_mm)) return std::nullopt;
    return belief_of(SizeAndRatio{std::exp(stitch->mean) * hook_mm / label_hook_mm(standard.hook_mm),
                                  usual_ratio, std::sqrt(std::pow(hand_spread, 2) + stitch->variance),
                                  ratio_spread});
}

GaugeBelief usual_belief(double hook_mm) {
    const double hook = hook_of_some_size(hook_mm);
    return with_size_error(estimated_belief(usual_weight(hook), hook).value(), spread_of_unknown_weight);
}

GaugeBelief belief_before_measuring(double hook_mm) {
    return with_size_error(usual_belief(hook_mm), spread_before_measuring);
}

GaugeBelief with_other_hook(const GaugeBelief& belief, double measured_hook_mm, double hook_mm) {
    if (!positive(measured_hook_mm) || !positive(hook_mm)) return belief;
    const double change = std::log(hook_mm / measured_hook_mm);
    GaugeBelief other = with_size_error(belief, hook_error_share * change);
    other.mean.array() += change;
    return other;
}

}  // namespace roundwright
