#include "core/checks/families.h"

namespace roundwright {

void check_gauge(const CheckInput& input, std::vector<Check>& checks) {
    if (input.gauge_known) return;
    checks.push_back(
        {CheckCode::gauge_missing,
         Severity::note,
         -1,
         -1,
         {Millimetres{input.gauge.stitch_width_mm}, Millimetres{input.gauge.stitch_width_error_mm}},
         {}});
}

}  // namespace roundwright
