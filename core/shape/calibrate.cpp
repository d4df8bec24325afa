#include "core/shape/calibrate.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/gauge/gauge_belief.h"
#include "core/shape/calibration_fit.h"
#include "core/shape/calibration_notes.h"

namespace roundwright {

namespace {

constexpr int stretch = static_cast<int>(CalibratedValue::area_stretch);
/// Even a gauge given outright is not exact; of the logarithm.
constexpr double least_spread = 1e-3;
/// Two errors that are wholly one would leave no information matrix.
constexpr double most_correlation = 0.999;

Calibration failed(CalibrationCode code) {
    Calibration calibration;
    calibration.notes.push_back({code});
    return calibration;
}

bool is_length(double mm) { return std::isfinite(mm) && mm > 0; }

bool is_usable(const Measured& measure, const ShapeProblem& problem) {
    if (!is_length(measure.mm) || !is_length(measure.error_mm)) return false;
    return measure.of != MeasuredOf::circumference_of_round ||
           (measure.round >= 0 && static_cast<std::size_t>(measure.round) < problem.rest_height_mm.size());
}

bool are_usable(const std::vector<Measured>& measured, const ShapeProblem& problem) {
    return !measured.empty() && std::ranges::all_of(measured, [&](const Measured& measure) {
        return is_usable(measure, problem);
    });
}

bool is_usable(const KnownBefore& known) {
    const auto is_stretch = [](double part) { return std::isfinite(part) && part >= 0; };
    if (known.area_stretch && !is_stretch(*known.area_stretch)) return false;
    return is_length(known.presumed_stretch) && (!known.gauge || (is_length(known.gauge->stitch_width_mm) &&
                                                                  is_length(known.gauge->round_height_mm)));
}

double spread(double value, double error) {
    return std::max(least_spread, error / value / deviations_in_half_width);
}

/// The inverse covariance of the logarithms of a gauge whose errors are known.
Eigen::Matrix2d information_of(const Gauge& gauge) {
    const double width = spread(gauge.stitch_width_mm, gauge.stitch_width_error_mm);
    const double height = spread(gauge.round_height_mm, gauge.round_height_error_mm);
    const double common =
        std::clamp(gauge.error_correlation, -most_correlation, most_correlation) * width * height;
    Eigen::Matrix2d covariance;
    covariance << width * width, common, common, height * height;
    return covariance.inverse();
}

/// The stitch, as wide as high, at which the first measurement comes out.
std::optional<double> stitch_by_first_measure(const ShapeProblem& at_one_mm, const Measured& measure,
                                              const ShapeOptions& options) {
    const Shape shape = solve_shape(at_one_mm, options);
    if (shape.termination != Termination::converged) return {};
    const double at_one = modelled_mm(measure, shape);
    if (!is_length(at_one)) return {};
    return measure.mm / at_one;
}

bool presume_gauge(const ShapeProblem& at_one_mm, const Measured& first, const std::optional<Gauge>& known,
                   const ShapeOptions& options, CalibrationPresumption& presumed) {
    presumed.sought[0] = presumed.sought[1] = true;
    if (known) {
        presumed.values.head<2>() =
            Eigen::Vector2d(std::log(known->stitch_width_mm), std::log(known->round_height_mm));
        presumed.information.topLeftCorner<2, 2>() = information_of(*known);
        return true;
    }
    const auto stitch = stitch_by_first_measure(at_one_mm, first, options);
    if (!stitch) return false;
    presumed.values.head<2>().setConstant(std::log(*stitch));
    presumed.information.topLeftCorner<2, 2>() =
        Eigen::Matrix2d::Identity() * std::pow(presumed_gauge_spread, -2);
    return true;
}

void presume_stretch(const ShapeProblem& at_one_mm, const KnownBefore& known,
                     CalibrationPresumption& presumed) {
    presumed.sought[stretch] = at_one_mm.area_stretch > 0 && !known.area_stretch;
    if (!presumed.sought[stretch]) return;
    presumed.values[stretch] = std::log(known.presumed_stretch);
    presumed.information(stretch, stretch) = std::pow(presumed_stretch_spread, -2);
}

/// A line that says less than this of a logarithm says nothing.
constexpr double least_information = 1;

/// The measurements' information on the gauge with the stretch as presumed taken out (Schur's complement),
/// and its own directions, whose errors are independent.
std::vector<GaugeLine> gauge_lines(const CalibrationFit& fit, const CalibrationPresumption& presumed) {
    Eigen::Matrix2d information = fit.measured_information.topLeftCorner<2, 2>();
    Eigen::Vector2d side = fit.measured_side.head<2>();
    if (presumed.sought[stretch]) {
        const Eigen::Vector2d shared = fit.measured_information.topRightCorner<2, 1>();
        const double presumption = presumed.information(stretch, stretch);
        const double of_stretch = fit.measured_information(stretch, stretch) + presumption;
        const double stretch_side = fit.measured_side[stretch] + presumption * presumed.values[stretch];
        information -= shared * shared.transpose() / of_stretch;
        side -= shared * stretch_side / of_stretch;
    }
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> own(information);
    std::vector<GaugeLine> lines;
    for (int k = 0; k < 2; ++k) {
        const double known = own.eigenvalues()[k];
        if (!(known > least_information)) continue;
        const Eigen::Vector2d along = own.eigenvectors().col(k);
        lines.push_back({along[0], along[1], along.dot(side) / known, 1 / std::sqrt(known)});
    }
    return lines;
}

Gauge gauge_of(const CalibrationFit& fit) {
    const auto deviation = [&](int v) { return std::sqrt(fit.covariance(v, v)); };
    const double width = std::exp(fit.values[0]);
    const double height = std::exp(fit.values[1]);
    Gauge gauge{width, height, width * deviations_in_half_width * deviation(0),
                height * deviations_in_half_width * deviation(1)};
    gauge.error_correlation = std::clamp(fit.covariance(0, 1) / (deviation(0) * deviation(1)), -1.0, 1.0);
    return gauge;
}

double root_mean_square_off(const std::vector<Measured>& measured, const std::vector<double>& modelled) {
    double squares = 0;
    for (std::size_t i = 0; i < measured.size(); ++i) squares += std::pow(measured[i].mm - modelled[i], 2);
    return std::sqrt(squares / static_cast<double>(measured.size()));
}

Calibration calibration_of(const CalibrationFit& fit, double known_stretch,
                           const std::vector<Measured>& measured, const std::array<bool, 3>& sought) {
    Calibration found;
    found.gauge = gauge_of(fit);
    found.area_stretch = sought[stretch] ? std::exp(fit.values[stretch]) : known_stretch;
    found.area_stretch_error =
        found.area_stretch * deviations_in_half_width * std::sqrt(fit.covariance(stretch, stretch));
    found.covariance = fit.covariance;
    found.modelled_mm = fit.modelled_mm;
    found.residual_mm = root_mean_square_off(measured, fit.modelled_mm);
    found.iterations = fit.iterations;
    found.notes = calibration_notes(found, measured, sought);
    if (!fit.settled) found.notes.insert(found.notes.begin(), {CalibrationCode::not_converged});
    return found;
}

}  // namespace

bool Calibration::has(CalibrationCode code) const {
    return std::ranges::any_of(notes, [&](const CalibrationNote& note) { return note.code == code; });
}

Calibration calibrate(const ShapeProblem& problem, const std::vector<Measured>& measured,
                      const KnownBefore& known, const ShapeOptions& options) {
    if (!are_usable(measured, problem) || !is_usable(known)) return failed(CalibrationCode::unusable_piece);
    ShapeProblem posed = problem;
    if (known.area_stretch) posed.area_stretch = *known.area_stretch;
    CalibrationPresumption presumed;
    presume_stretch(posed, known, presumed);
    if (!presume_gauge(posed, measured.front(), known.gauge, options, presumed))
        return failed(CalibrationCode::unusable_piece);
    const CalibrationFit fit = fit_calibration(posed, measured, presumed, options);
    if (!fit.solved) return failed(CalibrationCode::not_converged);
    Calibration found = calibration_of(fit, posed.area_stretch, measured, presumed.sought);
    found.lines = gauge_lines(fit, presumed);
    return found;
}

}  // namespace roundwright
