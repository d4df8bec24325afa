#pragma once

#include <Eigen/Core>
#include <limits>
#include <optional>
#include <vector>

#include "core/gauge/gauge.h"

namespace roundwright {

/// What is believed of a maker's gauge: a normal distribution of x = (ln w, ln h), w the stitch width and h
/// the round height in mm. Its error has two parts. The size, sqrt(w h), is common to both directions: it is
/// large when estimated and small when measured. The ratio, h / w, has a prior of its own. A `Gauge` with its
/// errors and their correlation is the same distribution in the units of a tape; the two functions below lose
/// nothing either way.
struct GaugeBelief {
    Eigen::Vector2d mean = Eigen::Vector2d::Zero();
    Eigen::Matrix2d covariance = Eigen::Matrix2d::Zero();
};

[[nodiscard]] GaugeBelief belief_of(const Gauge& gauge);
[[nodiscard]] Gauge gauge_of(const GaugeBelief& belief);

/// Half widths of errors are two standard deviations: a normal error stays within them 95 times in 100.
inline constexpr double deviations_in_half_width = 2;

/// The lines of x along which a gauge is spoken of: x . direction is ln w, ln h, ln size, ln ratio.
namespace gauge_direction {
inline Eigen::Vector2d width() { return {1, 0}; }
inline Eigen::Vector2d height() { return {0, 1}; }
inline Eigen::Vector2d size() { return {0.5, 0.5}; }
inline Eigen::Vector2d ratio() { return {-1, 1}; }
}  // namespace gauge_direction

/// The two parts of a gauge: mm, h / w, and the standard deviations of their logarithms.
struct SizeAndRatio {
    double size_mm = 0;
    double ratio = 1;
    double size_deviation = 0;
    double ratio_deviation = 0;
    double correlation = 0;
};
[[nodiscard]] GaugeBelief belief_of(const SizeAndRatio& parts);
[[nodiscard]] SizeAndRatio size_and_ratio(const GaugeBelief& belief);

/// Standard deviation of x . direction.
[[nodiscard]] double deviation_along(const GaugeBelief& belief, const Eigen::Vector2d& direction);

/// One number found out about a gauge: direction . x = value, with a standard deviation.
struct GaugeEvidence {
    Eigen::Vector2d direction = Eigen::Vector2d::Zero();
    double value = 0;
    double deviation = 0;
};

/// Limits between which direction . x was seen to lie.
struct GaugeBounds {
    Eigen::Vector2d direction = Eigen::Vector2d::Zero();
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();
};

/// Everything that one measurement says of a gauge; the errors of its numbers are independent.
struct GaugeFindings {
    std::vector<GaugeEvidence> evidence;
    std::optional<GaugeBounds> bounds;
};

/// Both directions measured at once, with errors that may go together, as two independent numbers (the
/// factors L D L^T of their covariance).
[[nodiscard]] std::vector<GaugeEvidence> evidence_of(const GaugeBelief& measured);

/// The belief after the evidence (the update of R. E. Kalman, A New Approach to Linear Filtering and
/// Prediction Problems, 1960). Evidence that is no number, or has a negative deviation, changes nothing.
[[nodiscard]] GaugeBelief narrowed(const GaugeBelief& belief, const GaugeEvidence& evidence);

/// The belief within limits, a truncated normal, as the normal of the same mean and variance (Johnson, Kotz
/// and Balakrishnan, Continuous Univariate Distributions, 1994, 13.10.1). Limits that are none (the low one
/// not below the high one) change nothing.
[[nodiscard]] GaugeBelief bounded(const GaugeBelief& belief, const GaugeBounds& bounds);

/// All evidence first, then the limits.
[[nodiscard]] GaugeBelief narrowed(const GaugeBelief& belief, const GaugeFindings& findings);

/// A size that is less certain by an independent error, its standard deviation given; the ratio stays.
[[nodiscard]] GaugeBelief with_size_error(GaugeBelief belief, double deviation);

}  // namespace roundwright
