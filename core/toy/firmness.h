#pragma once

#include "core/toy/toy.h"

namespace roundwright {

/// How firmly a piece is stuffed, as the trade says it.
enum class Firmness { none, light, medium, firm };

/// The one whose area stretch is nearest (`light_stuffing_stretch` and so on); none for no stretch.
[[nodiscard]] constexpr Firmness firmness_of(double area_stretch) {
    if (area_stretch <= unstuffed_stretch) return Firmness::none;
    if (area_stretch < (light_stuffing_stretch + medium_stuffing_stretch) / 2) return Firmness::light;
    if (area_stretch < (medium_stuffing_stretch + firm_stuffing_stretch) / 2) return Firmness::medium;
    return Firmness::firm;
}

}  // namespace roundwright
