#pragma once

#include <optional>

#include "core/gauge/gauge_source.h"
#include "core/gauge/yarn_standard.h"

namespace roundwright {

/// The gauge circle that is offered where nothing better is known: five rounds of six more each, 30 stitches
/// at its edge. Common practice: small enough to be worked in ten minutes, and large enough for a tape.
inline constexpr CircleGauge offered_circle{.rounds = 5, .increases = 6};

/// Between what widths it should come out in a hand with this gauge, laid flat: in nine of ten hands that the
/// gauge's errors allow, the tape's and the ring's own error included.
[[nodiscard]] Range expected_across_mm(const Gauge& gauge);

/// The same stitch with the errors that are left once the circle is measured. Nothing where the gauge is
/// known well enough: its size to a standard deviation of a twentieth.
[[nodiscard]] std::optional<Gauge> gauge_with_circle(const Gauge& gauge);

}  // namespace roundwright
