#pragma once

#include <vector>

#include <QString>
#include <QStringList>

#include "core/shape/calibrate.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// "A stitch is 5.1 mm (4.9–5.3) wide, a round 4.8 mm (4.7–4.9) tall."
[[nodiscard]] QString gauge_words(const Gauge& gauge, LengthUnit units);

/// The gauge found, the stretch, and how closely the measurements are met. Empty if nothing was found.
[[nodiscard]] QString calibration_words(const Calibration& found, LengthUnit units);

/// What cannot be told from the measurements, and which of them disagrees: a sentence each.
[[nodiscard]] QStringList calibration_note_words(const Calibration& found,
                                                 const std::vector<Measured>& measured, LengthUnit units);

/// "the width", "the circumference of round 8"
[[nodiscard]] QString measured_name(const Measured& measured);

/// Names for machines.
[[nodiscard]] const char* measured_of_name(MeasuredOf of);
[[nodiscard]] const char* calibration_code_name(CalibrationCode code);
[[nodiscard]] const char* calibrated_value_name(CalibratedValue value);

}  // namespace roundwright
