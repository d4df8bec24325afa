#pragma once

#include <optional>

#include "core/gauge/gauge_belief.h"
#include "core/gauge/gauge_source.h"

namespace roundwright {

/// What a measurement says of the gauge with the toy's hook, whatever was believed before; nothing if it is
/// not usable (a zero or negative measure).
///
/// A swatch gives both directions. The tape is out by its error, and the count by up to half a stitch. Worked
/// in rounds that is all. Rows are not worked like rounds: a cup whose swatch has h / w = 6.35 / 7.26 has
/// 6.8 / 6.65 in the round, and a published swatch in rows has 0.92 where rounds have about 1. So the size
/// stands, and the ratio is taken as larger by 0.08 of its logarithm, give or take 0.06.
[[nodiscard]] std::optional<GaugeFindings> findings_of(const SwatchGauge& swatch, double hook_mm);

/// A circle of k rounds that lies flat is 2 k h across, its ring drawn closed, and says of the ratio only
/// between which limits it lies (core/gauge/flat_limits.h). One that ruffles is as wide, with a ratio below
/// them. One that cups has a ratio above them, and is measured somewhere between pressed flat, 2 k h, and the
/// edge as it stands, N w / pi.
[[nodiscard]] std::optional<GaugeFindings> findings_of(const CircleGauge& circle, double hook_mm);

/// A stitch size that was given, with its errors.
[[nodiscard]] std::optional<GaugeFindings> findings_of(const GivenGauge& given, double hook_mm);

/// The lines that a finished piece left.
[[nodiscard]] std::optional<GaugeFindings> findings_of(const FinishedPieceGauge& finished, double hook_mm);

/// What a source lets believe of the gauge with the toy's hook: the prior, narrowed by what was measured. A
/// gauge that was given is believed as it stands. Nothing if the source is empty or not usable.
[[nodiscard]] std::optional<GaugeBelief> belief_of(const GaugeSource& source, double hook_mm);

}  // namespace roundwright
