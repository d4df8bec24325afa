#pragma once

#include <QString>

#include "core/face/opening.h"
#include "core/face/place_feature.h"
#include "core/face/work_steps.h"
#include "core/toy/feature.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// A feature in the maker's words. Rounds count from 1 here. Its name alone: render/wording/feature_name.h

/// "Safety eyes, 10 mm"
[[nodiscard]] QString feature_title(const Feature& feature);

/// "10 mm safety eyes", within a sentence
[[nodiscard]] QString feature_with_size(const Feature& feature);

/// "between rounds 9 and 10, with 7 stitches between them"
[[nodiscard]] QString feature_place(const Feature& feature);

/// "31 mm apart, 34 mm over the fabric; 42 mm above the base; 60 degrees between them"
[[nodiscard]] QString feature_measures(const Feature& feature, const FeatureMeasures& measures,
                                       LengthUnit unit);

/// Until when it can be fitted, and when it is best done.
[[nodiscard]] QString fitting_words(const FittingTime& time, double washer_mm,
                                    const std::vector<double>& openings_mm, LengthUnit unit);

/// "Insert the 10 mm safety eyes, between rounds 9 and 10.", "Start stuffing."
[[nodiscard]] QString step_words(const WorkStep& step, const Piece& piece);

/// The caution that goes with small parts, and whether this one fits the small-parts cylinder.
[[nodiscard]] QString safety_words(const Feature& feature);

}  // namespace roundwright
