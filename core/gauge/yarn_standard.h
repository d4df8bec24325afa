#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace roundwright {

/// Weights of yarn by the Craft Yarn Council's Standard Yarn Weight System (www.YarnStandards.com).
enum class YarnWeight { lace, super_fine, fine, light, medium, bulky, super_bulky, jumbo };

struct Range {
    double low = 0;
    double high = 0;

    [[nodiscard]] constexpr double middle() const { return (low + high) / 2; }
    friend bool operator==(const Range&, const Range&) = default;
};

/// One line of the published table. A range with `high == 0` is open upwards in the table; one that is
/// missing (single crochets of lace weight, which the table gives in double crochet) is empty.
struct YarnStandard {
    YarnWeight weight;
    int number;
    std::string_view name;
    std::optional<Range> single_crochets_per_4_inches;
    Range hook_mm;
    Range wraps_per_inch;
    Range metres_per_100_g;
};

[[nodiscard]] const std::array<YarnStandard, 8>& yarn_standards();
[[nodiscard]] const YarnStandard& yarn_standard(YarnWeight weight);

}  // namespace roundwright
