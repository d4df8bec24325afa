#include "core/gauge/source_belief.h"

#include <cmath>
#include <numbers>

#include "core/gauge/combined_gauge.h"
#include "core/gauge/flat_limits.h"
#include "core/gauge/gauge_prior.h"

namespace roundwright {

namespace {

/// Of the logarithms, from a worsted cup and a published swatch (see the header); their spread is a guess.
constexpr double ratio_of_rounds_to_rows = 0.08;
constexpr double ratio_error_of_rows = 0.06;
constexpr double size_error_of_rows = 0.02;

/// Half a stitch either way, each value as likely: JCGM 100:2008, 4.3.7.
constexpr double counting_deviation = 0.5 * std::numbers::inv_sqrt3;

/// What the hole of the ring and the edge's tops add to a circle's radius or take from it, rounds: a guess.
constexpr double ring_deviation = 0.1;
/// Of the logarithm of the width of a circle that cups, from the one way of measuring to the other.
constexpr double deviation_of_cupped_width = 0.03;

bool positive(double value) { return std::isfinite(value) && value > 0; }
bool usable_error(double value) { return std::isfinite(value) && value >= 0; }

/// Of the logarithm of a length that was measured over so many stitches or rounds.
double deviation_of(double length_mm, double tape_mm, double counted) {
    return std::hypot(tape_mm / deviations_in_half_width / length_mm, counting_deviation / counted);
}

GaugeBelief as_measured(const SwatchGauge& swatch) {
    const double tape = swatch.measuring_error_mm;
    GaugeBelief measured;
    measured.mean = {std::log(swatch.width_mm / swatch.stitches), std::log(swatch.height_mm / swatch.rounds)};
    measured.covariance.diagonal() << std::pow(deviation_of(swatch.width_mm, tape, swatch.stitches), 2),
        std::pow(deviation_of(swatch.height_mm, tape, swatch.rounds), 2);
    return measured;
}

GaugeBelief in_the_round(const GaugeBelief& rows) {
    const GaugeBelief change = belief_of(
        SizeAndRatio{1, std::exp(ratio_of_rounds_to_rows), size_error_of_rows, ratio_error_of_rows});
    return {rows.mean + change.mean, rows.covariance + change.covariance};
}

bool is_usable(const SwatchGauge& swatch) {
    return positive(swatch.stitches) && positive(swatch.width_mm) && positive(swatch.rounds) &&
           positive(swatch.height_mm) && usable_error(swatch.measuring_error_mm);
}

bool is_usable(const CircleGauge& circle) {
    return circle.rounds >= 1 && circle.increases >= 1 && positive(circle.across_mm) &&
           usable_error(circle.measuring_error_mm);
}

GaugeBounds ratio_bounds(const CircleGauge& circle) {
    const FlatRatios flat = flat_ratios(circle.increases);
    GaugeBounds bounds{gauge_direction::ratio()};
    if (circle.lie == CircleLie::ruffles) {
        bounds.high = std::log(flat.least);
    } else {
        bounds.low = std::log(circle.lie == CircleLie::flat ? flat.least : flat.most);
        if (circle.lie == CircleLie::flat) bounds.high = std::log(flat.most);
    }
    return bounds;
}

/// A cupped circle's width is taken half way, in logarithms, between 2 k h and its edge as it stands, which
/// is pulled as far as it yields.
GaugeEvidence width_across(const CircleGauge& circle) {
    const double rounds = circle.rounds;
    const double measuring = std::hypot(
        circle.measuring_error_mm / deviations_in_half_width / circle.across_mm, ring_deviation / rounds);
    const double height = std::log(circle.across_mm / (2 * rounds));
    if (circle.lie != CircleLie::cups) return {gauge_direction::height(), height, measuring};
    const double most_flat = std::log(flat_ratios(circle.increases).most);
    return {gauge_direction::size(), height - most_flat / 2,
            std::hypot(measuring, deviation_of_cupped_width)};
}

GaugeEvidence with_other_hook(GaugeEvidence evidence, double measured_hook_mm, double hook_mm) {
    if (!positive(measured_hook_mm) || !positive(hook_mm)) return evidence;
    const double change = evidence.direction.sum() * std::log(hook_mm / measured_hook_mm);
    evidence.value += change;
    evidence.deviation = std::hypot(evidence.deviation, hook_error_share * change);
    return evidence;
}

std::optional<GaugeBelief> narrowed_by(const std::optional<GaugeFindings>& findings, double hook_mm) {
    if (!findings) return std::nullopt;
    return narrowed(belief_before_measuring(hook_mm), *findings);
}

std::optional<GaugeBelief> believed(std::monostate, double) { return std::nullopt; }

std::optional<GaugeBelief> believed(const SwatchGauge& swatch, double hook_mm) {
    return narrowed_by(findings_of(swatch, hook_mm), hook_mm);
}

std::optional<GaugeBelief> believed(const CircleGauge& circle, double hook_mm) {
    return narrowed_by(findings_of(circle, hook_mm), hook_mm);
}

std::optional<GaugeBelief> believed(const EstimatedGauge& estimate, double hook_mm) {
    return estimated_belief(estimate.weight, hook_mm);
}

std::optional<GaugeBelief> believed(const GivenGauge& given, double) {
    const Gauge& gauge = given.gauge;
    if (!positive(gauge.stitch_width_mm) || !positive(gauge.round_height_mm) ||
        !usable_error(gauge.stitch_width_error_mm) || !usable_error(gauge.round_height_error_mm) ||
        !(std::abs(gauge.error_correlation) <= 1)) {
        return std::nullopt;
    }
    return belief_of(gauge);
}

std::optional<GaugeBelief> believed(const SeveralGauge& several, double hook_mm) {
    const auto combined = combined_gauge(several, hook_mm);
    if (!combined) return std::nullopt;
    return belief_of(combined->gauge);
}

bool is_usable(const GaugeLine& line) {
    return std::isfinite(line.value) && std::isfinite(line.of_width) && std::isfinite(line.of_height) &&
           (line.of_width != 0 || line.of_height != 0) && positive(line.deviation);
}

}  // namespace

std::optional<GaugeFindings> findings_of(const SwatchGauge& swatch, double hook_mm) {
    if (!is_usable(swatch)) return std::nullopt;
    const GaugeBelief measured = as_measured(swatch);
    const GaugeBelief worked = swatch.worked_in_rows ? in_the_round(measured) : measured;
    return GaugeFindings{evidence_of(with_other_hook(worked, swatch.hook_mm, hook_mm)), std::nullopt};
}

std::optional<GaugeFindings> findings_of(const CircleGauge& circle, double hook_mm) {
    if (!is_usable(circle)) return std::nullopt;
    return GaugeFindings{{with_other_hook(width_across(circle), circle.hook_mm, hook_mm)},
                         ratio_bounds(circle)};
}

std::optional<GaugeFindings> findings_of(const GivenGauge& given, double hook_mm) {
    const auto belief = believed(given, hook_mm);
    if (!belief) return std::nullopt;
    return GaugeFindings{evidence_of(*belief), std::nullopt};
}

std::optional<GaugeFindings> findings_of(const FinishedPieceGauge& finished, double hook_mm) {
    GaugeFindings findings;
    for (const GaugeLine& line : finished.lines) {
        if (!is_usable(line)) continue;
        const GaugeEvidence evidence{{line.of_width, line.of_height}, line.value, line.deviation};
        findings.evidence.push_back(with_other_hook(evidence, finished.hook_mm, hook_mm));
    }
    if (findings.evidence.empty()) return std::nullopt;
    return findings;
}

std::optional<GaugeBelief> belief_of(const GaugeSource& source, double hook_mm) {
    return std::visit([hook_mm](const auto& said) { return believed(said, hook_mm); }, source);
}

}  // namespace roundwright
