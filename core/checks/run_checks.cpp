#include "core/checks/run_checks.h"

#include <algorithm>

#include "core/checks/families.h"

namespace roundwright {

std::vector<Check> run_checks(const CheckInput& input) {
    std::vector<Check> checks;
    for (const auto family :
         {check_limits, check_gauge, check_counts, check_words, check_fabric, check_flat_marks, check_solver,
          check_corners, check_signs, check_seam, check_features}) {
        family(input, checks);
    }
    std::stable_sort(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
        return a.round != b.round ? a.round < b.round : a.severity > b.severity;
    });
    return checks;
}

}  // namespace roundwright
