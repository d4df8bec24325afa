#include "core/gauge/usual_gauge.h"

#include <algorithm>
#include <cmath>

#include "core/gauge/gauge_prior.h"
#include "core/gauge/hook.h"

namespace roundwright {

namespace {

constexpr double usual_step_below_label_mm = 1;

double label_mm(const YarnStandard& standard) {
    const Range& label = standard.hook_mm;
    return label.high > 0 ? label.middle() : label.low;
}

double distance_to_label(const YarnStandard& standard, double hook_mm) {
    return std::abs(label_mm(standard) - (hook_mm + usual_step_below_label_mm));
}

}  // namespace

YarnWeight usual_weight(double hook_mm) {
    const auto& standards = yarn_standards();
    // Of two weights equally near, the thicker one: "<=" in the place of "<".
    const YarnStandard* best = &standards[1];
    for (const YarnStandard& standard : standards) {
        if (standard.weight == YarnWeight::lace) continue;
        if (distance_to_label(standard, hook_mm) <= distance_to_label(*best, hook_mm)) best = &standard;
    }
    return best->weight;
}

double usual_hook_mm(YarnWeight weight) {
    const double wanted = label_mm(yarn_standard(weight)) - usual_step_below_label_mm;
    const auto nearer = [wanted](const Hook& a, const Hook& b) {
        return std::abs(a.mm - wanted) < std::abs(b.mm - wanted);
    };
    return std::min_element(hooks().begin(), hooks().end(), nearer)->mm;
}

Gauge usual_gauge(double hook_mm) { return gauge_of(usual_belief(hook_mm)); }

Gauge gauge_or_usual(const GaugeSource& source, double hook_mm) {
    const auto known = gauge_from(source, hook_mm);
    return known ? *known : usual_gauge(hook_mm);
}

}  // namespace roundwright
