#include "core/gauge/gauge_source.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/units.h"

namespace roundwright {

namespace {

constexpr double four_inches_mm = 4 * mm_per_inch;

// Shares of a length, each a starting value of our own that a better measurement by the maker replaces.
constexpr double height_error_of_rows =
    0.10;  // a printed swatch in rows has h/w 0.92, toys in rounds about 1
constexpr double height_error_of_estimate = 0.10;  // the table says nothing about height
constexpr double height_error_of_uneven_circle =
    0.05;                                     // a circle that does not lie flat cannot be measured well
constexpr double error_of_open_range = 0.25;  // the table gives one end only
constexpr double width_off_flat = 0.125;      // a circle seen to cup or ruffle: up to a quarter off flat
constexpr double error_of_rescaling = 0.5;    // of the change that another hook makes

bool positive(double value) { return std::isfinite(value) && value > 0; }
bool usable_error(double value) { return std::isfinite(value) && value >= 0; }

/// Correlation of two errors of which these parts (covariance) are common.
double correlation(double common, double width_error, double height_error) {
    const double product = width_error * height_error;
    return product > 0 ? std::clamp(common / product, -1.0, 1.0) : 0;
}

std::optional<Gauge> measured(const SwatchGauge& swatch, double hook_mm) {
    if (!positive(swatch.stitches) || !positive(swatch.width_mm) || !positive(swatch.rounds) ||
        !positive(swatch.height_mm) || !usable_error(swatch.measuring_error_mm)) {
        return std::nullopt;
    }
    Gauge gauge{swatch.width_mm / swatch.stitches, swatch.height_mm / swatch.rounds,
                swatch.measuring_error_mm / swatch.stitches, swatch.measuring_error_mm / swatch.rounds};
    if (swatch.worked_in_rows) gauge.round_height_error_mm += height_error_of_rows * gauge.round_height_mm;
    return with_other_hook(gauge, swatch.hook_mm, hook_mm);
}

/// A flat disc of `rounds` rounds is 2 rounds h across. It needs 2 pi h / w more stitches a round, so a
/// circle that lies flat with k of them has w = 2 pi h / k, known to half an increase. One that cups has a
/// narrower stitch, one that ruffles a wider one: the middle of a quarter to that side is taken, the whole of
/// it as the error. What the tape is out by is common to both.
std::optional<Gauge> measured(const CircleGauge& circle, double hook_mm) {
    if (circle.rounds < 1 || circle.increases < 1 || !positive(circle.across_mm) ||
        !usable_error(circle.measuring_error_mm)) {
        return std::nullopt;
    }
    const double height = circle.across_mm / (2 * circle.rounds);
    const double height_error = circle.measuring_error_mm / (2 * circle.rounds);
    const double width_of_height = 2 * std::numbers::pi / circle.increases;
    const double flat_width = width_of_height * height;
    Gauge gauge{flat_width, height, width_of_height * height_error, height_error};
    if (circle.lie == CircleLie::flat) {
        gauge.stitch_width_error_mm += flat_width * 0.5 / circle.increases;
    } else {
        gauge.stitch_width_mm *= circle.lie == CircleLie::cups ? 1 - width_off_flat : 1 + width_off_flat;
        gauge.stitch_width_error_mm += flat_width * width_off_flat;
        gauge.round_height_error_mm += height * height_error_of_uneven_circle;
    }
    gauge.error_correlation = correlation(width_of_height * height_error * height_error,
                                          gauge.stitch_width_error_mm, gauge.round_height_error_mm);
    return with_other_hook(gauge, circle.hook_mm, hook_mm);
}

double middle_hook_mm(const Range& hooks) { return hooks.high > 0 ? hooks.middle() : hooks.low; }

/// Stitch width by the table with the yarn's middle hook, and half the width of its range.
struct Width {
    double middle = 0;
    double error = 0;
};
Width published_width(const Range& per_four_inches) {
    if (per_four_inches.low <= 0) {
        const double widest_known = four_inches_mm / per_four_inches.high;
        return {widest_known, widest_known * error_of_open_range};
    }
    return {four_inches_mm / per_four_inches.middle(),
            (four_inches_mm / per_four_inches.low - four_inches_mm / per_four_inches.high) / 2};
}

std::optional<Gauge> measured(const EstimatedGauge& estimate, double hook_mm) {
    const YarnStandard& standard = yarn_standard(estimate.weight);
    if (!standard.single_crochets_per_4_inches || !positive(hook_mm)) return std::nullopt;
    const Width width = published_width(*standard.single_crochets_per_4_inches);
    const double scale = hook_mm / middle_hook_mm(standard.hook_mm);
    const double w = width.middle * scale;
    const double error = width.error * scale;
    const double height_error = error + height_error_of_estimate * w;
    return Gauge{w, w, error, height_error, correlation(error * error, error, height_error)};
}

std::optional<Gauge> measured(const GivenGauge& given, double) {
    const Gauge& gauge = given.gauge;
    if (!positive(gauge.stitch_width_mm) || !positive(gauge.round_height_mm) ||
        !usable_error(gauge.stitch_width_error_mm) || !usable_error(gauge.round_height_error_mm) ||
        !(std::abs(gauge.error_correlation) <= 1)) {
        return std::nullopt;
    }
    return gauge;
}

std::optional<Gauge> measured(std::monostate, double) { return std::nullopt; }

}  // namespace

std::optional<Gauge> gauge_from(const GaugeSource& source, double hook_mm) {
    return std::visit([hook_mm](const auto& said) { return measured(said, hook_mm); }, source);
}

Gauge with_other_hook(const Gauge& gauge, double measured_hook_mm, double hook_mm) {
    if (!positive(measured_hook_mm) || !positive(hook_mm)) return gauge;
    const double scale = hook_mm / measured_hook_mm;
    const double uncertain = error_of_rescaling * std::abs(scale - 1);
    const double w = gauge.stitch_width_mm;
    const double h = gauge.round_height_mm;
    const double w_error = gauge.stitch_width_error_mm * scale;
    const double h_error = gauge.round_height_error_mm * scale;
    Gauge other{w * scale, h * scale, w_error + w * uncertain, h_error + h * uncertain};
    other.error_correlation =
        correlation(gauge.error_correlation * w_error * h_error + w * h * uncertain * uncertain,
                    other.stitch_width_error_mm, other.round_height_error_mm);
    return other;
}

}  // namespace roundwright
