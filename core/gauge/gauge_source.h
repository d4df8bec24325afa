#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/kept_keys.h"
#include "core/gauge/gauge.h"
#include "core/gauge/measured.h"
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

/// What a finished piece said of the gauge on the day it was measured, as linear evidence,
///
///     of_width ln w + of_height ln h = value,
///
/// w and h in mm, independent of the other lines of the piece. The piece's rounds are not needed any more.
struct GaugeLine {
    double of_width = 0;
    double of_height = 0;
    double value = 0;
    double deviation = 0;  ///< one standard deviation of `value`

    friend bool operator==(const GaugeLine&, const GaugeLine&) = default;
};

/// A finished piece that was measured. The gauge comes from its lines alone; what was measured is kept to be
/// shown.
struct FinishedPieceGauge {
    std::string piece;
    std::vector<Measured> measured;
    std::vector<GaugeLine> lines;
    double hook_mm = 0;  ///< the hook of the piece; 0: the toy's own

    friend bool operator==(const FinishedPieceGauge&, const FinishedPieceGauge&) = default;
};

/// One of several measurements.
struct GaugeMeasurement {
    std::variant<SwatchGauge, CircleGauge, GivenGauge, FinishedPieceGauge> what;
    std::string name;         ///< the maker's own; may be empty
    std::string measured_on;  ///< the day, "2026-05-03" (ISO 8601); may be empty
    bool counts = true;       ///< false: kept, and left out of the gauge
    KeptKeys kept{};

    friend bool operator==(const GaugeMeasurement&, const GaugeMeasurement&) = default;
};

/// Several measurements together; `combined_gauge` weighs them.
struct SeveralGauge {
    std::vector<GaugeMeasurement> measurements;

    friend bool operator==(const SeveralGauge&, const SeveralGauge&) = default;
};

/// How many measurements a toy may hold, and how many lines and lengths a finished piece.
inline constexpr std::size_t most_gauge_measurements = 100;
inline constexpr std::size_t most_gauge_lines = 8;
inline constexpr std::size_t most_measured_lengths = 100;

/// `std::monostate`: the maker has not said anything yet.
using GaugeSource =
    std::variant<std::monostate, SwatchGauge, CircleGauge, EstimatedGauge, GivenGauge, SeveralGauge>;

/// The gauge that a source gives with the toy's hook; nothing if the source is empty or not usable (a zero or
/// negative measure, a weight without a published range for single crochet).
[[nodiscard]] std::optional<Gauge> gauge_from(const GaugeSource& source, double hook_mm);

/// A gauge measured with one hook as it comes out with another; the same if either hook is not known (0).
/// Both sizes scale with the hook; the yarn stays as thick as it was, so half of the change is uncertain.
[[nodiscard]] Gauge with_other_hook(const Gauge& gauge, double measured_hook_mm, double hook_mm);

}  // namespace roundwright
