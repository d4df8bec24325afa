#pragma once

#include "core/gauge/gauge.h"
#include "core/gauge/gauge_source.h"
#include "core/gauge/yarn_standard.h"

namespace roundwright {

/// The weight of yarn that toys are usually worked in with this hook. Common practice is a hook 0.5 to 1.5 mm
/// thinner than the yarn's label says, so the weight is the one whose label is nearest to 1 mm thicker; never
/// lace, which the table does not give in single crochet.
[[nodiscard]] YarnWeight usual_weight(double hook_mm);

/// The hook that toys in yarn of this weight are usually worked with, by the same rule: the one of the tables
/// nearest to 1 mm thinner than the middle of the label's range (its lower end where the range is open).
[[nodiscard]] double usual_hook_mm(YarnWeight weight);

/// A gauge that stands in while the maker has given none: the estimate for the usual weight. A hook that is
/// not a positive number counts as 3.5 mm.
[[nodiscard]] Gauge usual_gauge(double hook_mm);

/// What a source gives, or the usual gauge where it gives none.
[[nodiscard]] Gauge gauge_or_usual(const GaugeSource& source, double hook_mm);

}  // namespace roundwright
