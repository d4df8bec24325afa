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
    double other_cost = 0;  ///< eyes, thread, packing: a toy's

    friend bool operator==(const Making&, const Making&) = default;
};

}  // namespace roundwright
