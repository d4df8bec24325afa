#pragma once

#include <optional>
#include <string>

namespace roundwright {

/// How this maker works, and what things cost: what yarn use, stuffing, time and cost are computed from.
/// Absent: the usual ranges stand in (core/materials says which).
struct Making {
    std::optional<double> stitches_per_minute;         ///< single crochets
    std::optional<double> yarn_per_ten_stitches_mm;    ///< ten single crochets undone and measured
    std::optional<double> stuffing_density_kg_per_m3;  ///< of a piece as this maker stuffs it, medium
    std::optional<double>
        stuffing_density_error_kg_per_m3;  ///< half width of the range that the scales leave
    std::string currency;                  ///< as printed: "EUR", "kr"
    std::optional<double> hourly_rate;
    std::optional<double> stuffing_price_per_kg;
    double other_cost = 0;                     ///< eyes, thread, packing: a toy's
    std::optional<double> finishing_minutes;   ///< sewing up, face and stuffing: a toy's
    std::optional<double> spare_yarn_percent;  ///< bought beyond what is worked out
    std::optional<double> price;               ///< a toy is sold at, to whom it is for
    std::optional<double> wholesale_price;     ///< to a shop
    std::optional<double> fees_percent;        ///< of `price`: market places, cards

    friend bool operator==(const Making&, const Making&) = default;
};

}  // namespace roundwright
