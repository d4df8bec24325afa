#include "core/reshape/wanted_size.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {
namespace {

constexpr double same_size = 1e-9;

bool is_positive(double value) { return std::isfinite(value) && value > 0; }
bool is_positive(const Gauge& gauge) {
    return is_positive(gauge.stitch_width_mm) && is_positive(gauge.round_height_mm);
}

bool is_sound(const Target& target) {
    const auto sound = [](const std::optional<double>& value) { return !value || is_positive(*value); };
    return sound(target.width_mm) && sound(target.height_mm) && sound(target.circumference_mm) &&
           sound(target.scale) && (!target.gauge || is_positive(*target.gauge)) &&
           (!target.silhouette || is_usable(*target.silhouette));
}

bool conflicts(const Target& target) {
    const bool sized = target.width_mm || target.height_mm || target.circumference_mm;
    return (target.scale && sized) || (target.circumference_mm && target.width_mm);
}

bool is_empty(const Target& target) {
    return !target.width_mm && !target.height_mm && !target.circumference_mm && !target.scale &&
           !target.gauge && !target.silhouette;
}

}  // namespace

Size own_size(const PieceForm& form, const Target& target) {
    if (!target.silhouette) return form.size();
    return {width_mm(*target.silhouette), height_mm(*target.silhouette)};
}

bool is_same(const Size& a, const Size& b) {
    return std::abs(a.width_mm - b.width_mm) <= same_size * a.width_mm &&
           std::abs(a.height_mm - b.height_mm) <= same_size * std::max(a.height_mm, a.width_mm);
}

double height_ratio(const Size& wanted, const Size& own) {
    return own.height_mm > 0.01 * own.width_mm ? wanted.height_mm / own.height_mm
                                               : wanted.width_mm / own.width_mm;
}

WantedSize wanted_size(const PieceForm& form, const Target& target) {
    const auto bad = [](ReshapeCode code) { return WantedSize{code, {}, true}; };
    if (is_empty(target)) return bad(ReshapeCode::nothing_wanted);
    if (!is_sound(target)) return bad(ReshapeCode::unusable_target);
    if (conflicts(target)) return bad(ReshapeCode::conflicting_target);
    const Size own = own_size(form, target);
    WantedSize wanted{ReshapeCode::met, own, true};
    std::optional<double> width = target.width_mm;
    // A tape lies around both layers of a flattened piece.
    const double around = form.problem.limp ? 2 : std::numbers::pi;
    if (target.circumference_mm) width = *target.circumference_mm / around;
    if (width && target.height_mm) {
        wanted.size = {*width, *target.height_mm};
        wanted.in_proportion = is_same({own.width_mm, own.width_mm * *target.height_mm / *width}, own);
        return wanted;
    }
    double scale = target.scale.value_or(1);
    if (width) scale = *width / own.width_mm;
    if (target.height_mm) scale = *target.height_mm / own.height_mm;
    if (!is_positive(scale)) return bad(ReshapeCode::unusable_target);
    wanted.size = {own.width_mm * scale, own.height_mm * scale};
    return wanted;
}

Target as_scale(const PieceForm& form, const Target& target) {
    if (!form.usable() || target.silhouette || target.gauge) return target;
    const WantedSize wanted = wanted_size(form, target);
    if (wanted.code != ReshapeCode::met || !wanted.in_proportion) return target;
    Target scaled;
    scaled.scale = wanted.size.width_mm / form.size().width_mm;
    return scaled;
}

ReshapeCode verdict(const Size& reached, const Size& wanted, const Gauge& gauge) {
    const auto met = [&](double r, double t) {
        return std::abs(r - t) <= size_tolerance_mm(t, gauge) * (1 + 1e-12);
    };
    const bool width = met(reached.width_mm, wanted.width_mm);
    const bool height = met(reached.height_mm, wanted.height_mm);
    if (width && height) return ReshapeCode::met;
    if (!width && !height) return ReshapeCode::size_not_met;
    return width ? ReshapeCode::height_not_met : ReshapeCode::width_not_met;
}

}  // namespace roundwright
