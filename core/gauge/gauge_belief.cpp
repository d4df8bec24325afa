#include "core/gauge/gauge_belief.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {

namespace {

/// Below this the densities have no digits left.
constexpr double least_chance = 1e-280;

/// ln w = ln size - ln ratio / 2, ln h = ln size + ln ratio / 2.
Eigen::Matrix2d from_size_and_ratio() { return (Eigen::Matrix2d() << 1, -0.5, 1, 0.5).finished(); }

Eigen::Matrix2d covariance_of(double first, double second, double correlation) {
    const double common = correlation * first * second;
    return (Eigen::Matrix2d() << first * first, common, common, second * second).finished();
}

double correlation_in(const Eigen::Matrix2d& covariance) {
    const double product = std::sqrt(covariance(0, 0) * covariance(1, 1));
    return product > 0 ? std::clamp(covariance(0, 1) / product, -1.0, 1.0) : 0;
}

double relative_deviation(double value, double half_width) {
    return half_width / value / deviations_in_half_width;
}

double standard_density(double z) {
    return std::isfinite(z) ? std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi) : 0;
}

/// z times the density, which vanishes at infinity.
double weighted_density(double z) { return std::isfinite(z) ? z * standard_density(z) : 0; }

/// Chance of a standard normal between two limits, from the tail that has no cancellation.
double chance_between(double low, double high) {
    if (low > 0) return chance_between(-high, -low);
    const auto below = [](double z) { return std::erfc(-z / std::numbers::sqrt2) / 2; };
    return below(high) - below(low);
}

struct Moments {
    double mean = 0;
    double variance = 1;
};

/// So far out the normal falls as an exponential does from the nearer limit, whose rate is that limit.
Moments far_out(double low, double high) {
    const double limit = low > 0 ? low : high;
    return {limit, std::min(1 / (limit * limit), std::pow(high - low, 2) / 12)};
}

std::optional<Moments> truncated_standard_normal(double low, double high) {
    if (!(low < high)) return std::nullopt;
    const double chance = chance_between(low, high);
    if (chance < least_chance) return far_out(low, high);
    const double mean = (standard_density(low) - standard_density(high)) / chance;
    const double second = 1 + (weighted_density(low) - weighted_density(high)) / chance;
    return Moments{mean, std::max(0.0, second - mean * mean)};
}

/// The belief whose part along a direction has moved by `by` and has its variance times `factor`; what goes
/// together with it follows.
GaugeBelief moved_along(GaugeBelief belief, const Eigen::Vector2d& direction, double by, double factor) {
    const Eigen::Vector2d with = belief.covariance * direction;
    const double variance = direction.dot(with);
    belief.mean += with * (by / variance);
    belief.covariance += with * with.transpose() * ((factor - 1) / variance);
    return belief;
}

}  // namespace

GaugeBelief belief_of(const Gauge& gauge) {
    const double w = gauge.stitch_width_mm;
    const double h = gauge.round_height_mm;
    return {{std::log(w), std::log(h)},
            covariance_of(relative_deviation(w, gauge.stitch_width_error_mm),
                          relative_deviation(h, gauge.round_height_error_mm), gauge.error_correlation)};
}

Gauge gauge_of(const GaugeBelief& belief) {
    const double w = std::exp(belief.mean[0]);
    const double h = std::exp(belief.mean[1]);
    const auto half_width = [&](int of) {
        return deviations_in_half_width * std::sqrt(std::max(0.0, belief.covariance(of, of)));
    };
    return {w, h, w * half_width(0), h * half_width(1), correlation_in(belief.covariance)};
}

GaugeBelief belief_of(const SizeAndRatio& parts) {
    const Eigen::Matrix2d covariance =
        covariance_of(parts.size_deviation, parts.ratio_deviation, parts.correlation);
    return {from_size_and_ratio() * Eigen::Vector2d(std::log(parts.size_mm), std::log(parts.ratio)),
            from_size_and_ratio() * covariance * from_size_and_ratio().transpose()};
}

SizeAndRatio size_and_ratio(const GaugeBelief& belief) {
    const Eigen::Vector2d size = gauge_direction::size();
    const Eigen::Vector2d ratio = gauge_direction::ratio();
    SizeAndRatio parts{std::exp(size.dot(belief.mean)), std::exp(ratio.dot(belief.mean)),
                       deviation_along(belief, size), deviation_along(belief, ratio)};
    const double product = parts.size_deviation * parts.ratio_deviation;
    if (product > 0) parts.correlation = std::clamp(size.dot(belief.covariance * ratio) / product, -1.0, 1.0);
    return parts;
}

double deviation_along(const GaugeBelief& belief, const Eigen::Vector2d& direction) {
    return std::sqrt(std::max(0.0, direction.dot(belief.covariance * direction)));
}

std::vector<GaugeEvidence> evidence_of(const GaugeBelief& measured) {
    const Eigen::Matrix2d& covariance = measured.covariance;
    const double common = covariance(0, 0) > 0 ? covariance(0, 1) / covariance(0, 0) : 0;
    const Eigen::Vector2d second(-common, 1);
    return {{gauge_direction::width(), measured.mean[0], deviation_along(measured, gauge_direction::width())},
            {second, second.dot(measured.mean), deviation_along(measured, second)}};
}

GaugeBelief narrowed(const GaugeBelief& belief, const GaugeEvidence& evidence) {
    const double before = std::pow(deviation_along(belief, evidence.direction), 2);
    const double noise = std::pow(evidence.deviation, 2);
    const double off = evidence.value - evidence.direction.dot(belief.mean);
    if (!(before > 0) || !(evidence.deviation >= 0) || !std::isfinite(noise) || !std::isfinite(off))
        return belief;
    const double gain = before / (before + noise);
    return moved_along(belief, evidence.direction, gain * off, 1 - gain);
}

GaugeBelief bounded(const GaugeBelief& belief, const GaugeBounds& bounds) {
    const double middle = bounds.direction.dot(belief.mean);
    const double deviation = deviation_along(belief, bounds.direction);
    if (!(deviation > 0)) return belief;
    const auto within =
        truncated_standard_normal((bounds.low - middle) / deviation, (bounds.high - middle) / deviation);
    if (!within) return belief;
    return moved_along(belief, bounds.direction, deviation * within->mean, within->variance);
}

GaugeBelief narrowed(const GaugeBelief& belief, const GaugeFindings& findings) {
    GaugeBelief after = belief;
    for (const GaugeEvidence& evidence : findings.evidence) after = narrowed(after, evidence);
    return findings.bounds ? bounded(after, *findings.bounds) : after;
}

GaugeBelief with_size_error(GaugeBelief belief, double deviation) {
    belief.covariance.array() += deviation * deviation;
    return belief;
}

}  // namespace roundwright
