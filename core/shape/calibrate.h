#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/gauge/gauge.h"
#include "core/gauge/gauge_source.h"
#include "core/gauge/measured.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"

namespace roundwright {

/// What the maker knows besides. Errors of the gauge are half widths, as everywhere.
struct KnownBefore {
    std::optional<Gauge> gauge;
    std::optional<double> area_stretch;
    double presumed_stretch = medium_stuffing_stretch;  ///< where `area_stretch` is not known
};

enum class CalibratedValue { stitch_width, round_height, area_stretch };

enum class CalibrationCode {
    unusable_piece,  ///< no rounds, or nothing measured that is a positive finite length
    left_free,       ///< `value`: the measurements say little of it; it stands where it was presumed
    not_told_apart,  ///< `value` and `other`: only together are they known; each could trade for the other
    measurements_disagree,  ///< no gauge and stretch give all of them; `measured` is the one furthest off
    not_converged,
};

struct CalibrationNote {
    CalibrationCode code;
    CalibratedValue value = CalibratedValue::stitch_width;
    CalibratedValue other = CalibratedValue::stitch_width;
    std::size_t measured = 0;

    friend bool operator==(const CalibrationNote&, const CalibrationNote&) = default;
};

struct Calibration {
    Gauge gauge;              ///< with its errors: half widths, two standard deviations
    double area_stretch = 0;  ///< 0 for a piece that is not stuffed
    double area_stretch_error = 0;
    double residual_mm = 0;           ///< root mean square of measured less modelled
    std::vector<double> modelled_mm;  ///< one a measurement, at the values found
    Eigen::Matrix3d covariance =
        Eigen::Matrix3d::Zero();  ///< of (ln stitch width, ln round height, ln stretch); 0 where not sought
    /// What the measurements alone say of the gauge, whatever the stuffing: none to two independent lines.
    std::vector<GaugeLine> lines;
    int iterations = 0;
    std::vector<CalibrationNote> notes;

    [[nodiscard]] bool usable() const { return gauge.stitch_width_mm > 0; }
    [[nodiscard]] bool has(CalibrationCode code) const;
};

/// Stitch width, round height and stretch that best explain a finished piece: least squares of (measured -
/// modelled) / error by Gauss-Newton on the forward solve, with what is known before, or else a broad
/// presumption, as further data. `problem` is the piece as worked, posed at a gauge of 1 mm by 1 mm; its own
/// stretch is used only to tell stuffed from not; where no gauge is known the one that fits the first
/// measurement with w = h is presumed within a factor of about 1.5, and the presumed stuffing within a factor
/// of about 2.
///
/// A value is left free where the measurements narrow the presumption by less than half; two are not told
/// apart where their errors go together by more than 0.9 and the measurements narrow one of them to no less
/// than a quarter.
[[nodiscard]] Calibration calibrate(const ShapeProblem& problem, const std::vector<Measured>& measured,
                                    const KnownBefore& known = {}, const ShapeOptions& options = {});

}  // namespace roundwright
