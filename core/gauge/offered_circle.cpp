#include "core/gauge/offered_circle.h"

#include <cmath>

#include "core/gauge/gauge_belief.h"
#include "core/gauge/source_belief.h"

namespace roundwright {

namespace {

constexpr double well_known = 0.05;
constexpr double nine_in_ten = 1.645;  // standard deviations of a normal error

CircleGauge as_it_should_be(const Gauge& gauge) {
    CircleGauge circle = offered_circle;
    circle.across_mm = 2 * circle.rounds * gauge.round_height_mm;
    return circle;
}

}  // namespace

Range expected_across_mm(const Gauge& gauge) {
    const CircleGauge circle = as_it_should_be(gauge);
    const auto findings = findings_of(circle, 0);
    if (!findings) return {};
    const GaugeEvidence& across = findings->evidence.front();
    const double deviation =
        std::hypot(deviation_along(belief_of(gauge), across.direction), across.deviation);
    const double factor = std::exp(nine_in_ten * deviation);
    return {circle.across_mm / factor, circle.across_mm * factor};
}

std::optional<Gauge> gauge_with_circle(const Gauge& gauge) {
    const GaugeBelief before = belief_of(gauge);
    if (!(deviation_along(before, gauge_direction::size()) > well_known)) return std::nullopt;
    const auto findings = findings_of(as_it_should_be(gauge), 0);
    if (!findings) return std::nullopt;
    return gauge_of({before.mean, narrowed(before, *findings).covariance});
}

}  // namespace roundwright
