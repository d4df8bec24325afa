#include "core/materials/working_time.h"

namespace roundwright {

Estimate working_minutes(double single_crochets, const Making& making) {
    Estimate pace = usual_stitches_per_minute;
    if (making.stitches_per_minute && *making.stitches_per_minute > 0) {
        const double own = *making.stitches_per_minute;
        pace = {own, own * (1 - pace_error), own * (1 + pace_error)};
    }
    return {single_crochets / pace.likely, single_crochets / pace.high, single_crochets / pace.low};
}

}  // namespace roundwright
