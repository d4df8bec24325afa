#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/gauge/gauge.h"
#include "core/gauge/yarn_standard.h"

namespace roundwright {

/// Where the gauge comes from. These are the maker's own inputs; `gauge_from` computes the gauge.

/// A swatch: so many stitches over a width, so many rounds (or rows) over a height.
struct SwatchGauge {
    double stitches = 0;
    double width_mm = 0;
    double rounds = 0;
    double height_mm = 0;
    bool worked_in_rows = false;
    double measuring_error_mm = 1;
    double hook_mm = 0;  ///< the hook of the swatch; 0: the toy's own

    friend bool operator==(const SwatchGauge&, const SwatchGauge&) = default;
};

/// How a gauge circle lies on the table.
enum class CircleLie { flat, cups, ruffles };

/// A gauge circle: `rounds` rounds of `increases` more stitches each (so round k has k * increases), laid
/// flat and measured across.
struct CircleGauge {
    int rounds = 0;
    int increases = 6;
    double across_mm = 0;
    CircleLie lie = CircleLie::flat;
    double measuring_error_mm = 1;
    double hook_mm = 0;  ///< the hook of the circle; 0: the toy's own

    friend bool operator==(const CircleGauge&, const CircleGauge&) = default;
};

/// No measurement: estimated from the weight of the yarn and the hook by the published table.
struct EstimatedGauge {
    YarnWeight weight = YarnWeight::light;

    friend bool operator==(const EstimatedGauge&, const EstimatedGauge&) = default;
};

/// Stitch width and round height given outright, or found from a finished piece by calibration. What was
/// measured on that piece is not kept: its rounds may be changed afterwards, and the gauge must not follow.
struct GivenGauge {
    Gauge gauge;
    std::string found_on = {};  ///< the finished piece it was found on; empty: given outright

    friend bool operator==(const GivenGauge&, const GivenGauge&) = default;
};

/// `std::monostate`: the maker has not said anything yet.
using GaugeSource = std::variant<std::monostate, SwatchGauge, CircleGauge, EstimatedGauge, GivenGauge>;

/// The gauge that a source gives with the toy's hook; nothing if the source is empty or not usable (a zero or
/// negative measure, a weight without a published range for single crochet).
[[nodiscard]] std::optional<Gauge> gauge_from(const GaugeSource& source, double hook_mm);

/// A gauge measured with one hook as it comes out with another; the same if either hook is not known (0).
/// Both sizes scale with the hook; the yarn stays as thick as it was, so half of the change is uncertain.
[[nodiscard]] Gauge with_other_hook(const Gauge& gauge, double measured_hook_mm, double hook_mm);

}  // namespace roundwright
