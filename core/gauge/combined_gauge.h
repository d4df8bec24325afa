#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/gauge/gauge_source.h"

namespace roundwright {

/// How much larger or smaller the same maker's stitches come out on another day: one standard deviation of
/// the logarithm of both sizes. A guess of our own (common practice: a few per cent either way), since no
/// published measurements were found. It is common to everything measured on one piece, so that a swatch of
/// many stitches does not outweigh three circles.
inline constexpr double day_to_day_spread = 0.015;

/// In what a measurement differs from the others.
enum class Differs { size, ratio };

/// What one of several measurements is to the gauge.
struct MeasurementPart {
    double share = 0;  ///< of what the measurements say together; 0: left out, or not usable
    double off = 0;    ///< its distance from what the others say, in deviations; 0: there are no others
    Differs how = Differs::size;
    double by = 0;  ///< as a share: by how much its stitches are larger, or its rounds taller for their width
};

struct CombinedGauge {
    Gauge gauge;
    std::vector<MeasurementPart> parts;    ///< one a measurement
    std::optional<std::size_t> disagrees;  ///< the one furthest from the others, if that is no chance

    [[nodiscard]] std::size_t counted() const;  ///< how many have a share
};

/// Each measurement is evidence (`findings_of`), weighed by its errors and the spread from day to day, on top
/// of what is believed of any maker with this hook. One that counts alone gives what it gives by itself. One
/// disagrees where its distance from what all others say together would be chance less than one time in 20
/// (chi squared of its numbers). Nothing where no measurement counts and is usable.
[[nodiscard]] std::optional<CombinedGauge> combined_gauge(const SeveralGauge& several, double hook_mm);

/// The measurements that a source holds: several, one, or none for an estimate and what is not known.
[[nodiscard]] std::vector<GaugeMeasurement> measurements_of(const GaugeSource& source);

}  // namespace roundwright
