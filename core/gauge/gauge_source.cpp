#include "core/gauge/gauge_source.h"

#include "core/gauge/gauge_prior.h"
#include "core/gauge/source_belief.h"

namespace roundwright {

std::optional<Gauge> gauge_from(const GaugeSource& source, double hook_mm) {
    const std::optional<GaugeBelief> belief = belief_of(source, hook_mm);
    if (!belief) return std::nullopt;
    const auto* given = std::get_if<GivenGauge>(&source);
    return given != nullptr ? given->gauge : gauge_of(*belief);
}

Gauge with_other_hook(const Gauge& gauge, double measured_hook_mm, double hook_mm) {
    if (!(measured_hook_mm > 0) || !(hook_mm > 0) || measured_hook_mm == hook_mm) return gauge;
    return gauge_of(with_other_hook(belief_of(gauge), measured_hook_mm, hook_mm));
}

}  // namespace roundwright
