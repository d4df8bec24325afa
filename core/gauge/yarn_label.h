#pragma once

#include <optional>
#include <string_view>

#include "core/gauge/yarn_standard.h"

namespace roundwright {

/// 1 tex is 1 g in 1,000 m (ISO 1144).
[[nodiscard]] constexpr double metres_per_100_g_of_tex(double tex) { return 100'000 / tex; }
/// Tex of a denier (1 g in 9,000 m), a metric number (Nm: 1,000 m in so many kilograms) and an English cotton
/// number (Ne: hanks of 840 yards in a pound), by their definitions (ISO 2947).
[[nodiscard]] constexpr double tex_of_denier(double denier) { return denier / 9; }
[[nodiscard]] constexpr double tex_of_metric_number(double number) { return 1'000 / number; }
[[nodiscard]] double tex_of_cotton_number(double number);

/// What a yarn's label, or a maker's own measure, says of it.
struct YarnLabel {
    std::optional<double> metres_per_100_g;
    std::optional<double> ball_grams;  ///< the weight that a length was printed with
    std::optional<YarnWeight> weight;

    friend bool operator==(const YarnLabel&, const YarnLabel&) = default;
};

/// Reads what is printed of a yarn's length, weight or thickness, in any order and any mixture:
/// "50 g = 125 m", "137 yds per 1.75 oz", "1200 yd/lb", "400m/100g", "200 tex", "Nm 10/2" (two strands of
/// number 10), "Ne 8/4", "11 wpi" (the weight of the published table that has so many wraps, in its middle
/// first), "8 ply" (as in Australia and New Zealand: common practice), "dk", "aran". Numbers have a point or
/// a comma. Nothing if there is none of these, or a word or number that is none of them, or two of one kind.
[[nodiscard]] std::optional<YarnLabel> read_yarn_label(std::string_view text);

}  // namespace roundwright
