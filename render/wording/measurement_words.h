#pragma once

#include <optional>

#include <QString>

#include "core/gauge/combined_gauge.h"
#include "core/study/next_measurement.h"
#include "core/toy/toy.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// A measurement as it stands in a sentence: "the circle of 3 May", "the swatch “before washing”", "the
/// finished Head".
[[nodiscard]] QString measurement_name(const GaugeMeasurement& measurement);

/// What was measured: "5 rounds of 6, 58 mm across", "20 stitches in 100 mm, 22 rounds in 100 mm", "82 mm
/// wide, 76 mm tall".
[[nodiscard]] QString measurement_words(const GaugeMeasurement& measurement, LengthUnit units);

/// "counts for 40 %", "left out", "cannot be used".
[[nodiscard]] QString share_words(const GaugeMeasurement& measurement, const MeasurementPart& part);

/// "The circle of 3 May gives stitches 5 % larger than the others do." Empty: they agree.
[[nodiscard]] QString disagreement_words(const SeveralGauge& several, const CombinedGauge& combined);

/// "Most useful next: a gauge circle of five rounds. It would bring sizes from about ±14 % to ±6 %." Empty:
/// none would help much.
[[nodiscard]] QString next_measurement_words(const std::vector<NextMeasurement>& next, const Toy& toy);

/// "Work five rounds of six ..., lay the circle flat and measure across."
[[nodiscard]] QString circle_task_words();
/// "Expected with this yarn and hook: 47 to 68 mm."
[[nodiscard]] QString expected_circle_words(const Range& across_mm, LengthUnit units);

/// "Your hand may make it 47–68 mm wide; one measured circle brings that to 55–61." Empty where the piece has
/// no such range, or where it would read the same.
[[nodiscard]] QString circle_would_help_words(const Range& width_mm, const Range& with_circle_mm,
                                              LengthUnit units);

/// Names for machines.
[[nodiscard]] const char* differs_name(Differs how);
[[nodiscard]] const char* next_measurement_name(NextMeasurementKind kind);

}  // namespace roundwright
