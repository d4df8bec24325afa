#include "core/shape/calibrate.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/shape/scaled_problem.h"

namespace roundwright {

using std::numbers::pi;

namespace {

using Values = Eigen::Vector3d;  ///< logarithms of stitch width, round height (mm) and stretch

/// Errors are half widths; a normal error stays within two standard deviations 95 times in 100.
constexpr double deviations_in_error = 2;
/// Presumed where nothing is known: one standard deviation, of the logarithms.
constexpr double presumed_gauge_spread = 0.2;
constexpr double presumed_stretch_spread = 0.6;
/// Even a gauge given outright is not exact.
constexpr double least_spread = 1e-3;
constexpr double narrowed = 0.5;
constexpr double going_together = 0.9;
constexpr double kept_apart = 0.25;
/// Measurements disagree where the mean square of their deviations is above this.
constexpr double disagreeing = 4;
constexpr int most_iterations = 40;
constexpr double smallest_step = 1e-7;
constexpr double smallest_gain = 1e-8;
constexpr double difference = 1e-4;
constexpr double least_stretch = 1e-3;
constexpr double most_stretch = 0.5;

struct Presumption {
    Values values;
    Values spread;  ///< standard deviations; 0: not sought
};

Calibration failed(CalibrationCode code) {
    Calibration calibration;
    calibration.notes.push_back({code});
    return calibration;
}

bool is_length(double mm) { return std::isfinite(mm) && mm > 0; }

bool is_usable_measure(const Measured& measure, const ShapeProblem& problem) {
    if (!is_length(measure.mm) || !is_length(measure.error_mm)) return false;
    return measure.of != MeasuredOf::circumference_of_round ||
           (measure.round >= 0 && static_cast<std::size_t>(measure.round) < problem.rest_height_mm.size());
}

double modelled(const Measured& measure, const Shape& shape) {
    switch (measure.of) {
        case MeasuredOf::width:
            return shape.width_mm;
        case MeasuredOf::height:
            return shape.height_mm;
        case MeasuredOf::circumference:
            return pi * shape.width_mm;
        case MeasuredOf::circumference_of_round:
            break;
    }
    return 2 * pi * shape.radius_mm[static_cast<std::size_t>(measure.round) + 1];
}

/// Least squares for one piece; its steps are the member functions.
class Fit {
  public:
    Fit(const ShapeProblem& at_one_mm, const std::vector<Measured>& measured, const Presumption& presumption,
        const ShapeOptions& options)
        : problem_(at_one_mm), measured_(measured), presumption_(presumption), options_(options) {}

    [[nodiscard]] Calibration run() {
        Calibration found;
        Values values = presumption_.values;
        bool settled = false;
        if (!model(values, modelled_)) return failed(CalibrationCode::not_converged);
        double damping = 1e-6;
        for (; found.iterations < most_iterations && !settled; ++found.iterations) {
            if (!linearise(values)) break;
            settled = step(values, damping);
        }
        report(values, settled, found);
        return found;
    }

  private:
    [[nodiscard]] bool is_sought(int value) const { return presumption_.spread[value] > 0; }

    bool model(const Values& values, Eigen::VectorXd& out) {
        ShapeProblem problem = scaled_problem(problem_, std::exp(values[0]), std::exp(values[1]));
        if (is_sought(2)) problem.area_stretch = std::exp(values[2]);
        Shape shape = solve_shape(problem, options_, shape_.usable() ? &shape_ : nullptr);
        if (shape.termination != Termination::converged) return false;
        shape_ = std::move(shape);
        out.resize(static_cast<Eigen::Index>(measured_.size()));
        for (std::size_t i = 0; i < measured_.size(); ++i)
            out[static_cast<Eigen::Index>(i)] = modelled(measured_[i], shape_);
        return true;
    }

    [[nodiscard]] double deviation(std::size_t i) const {
        return measured_[i].error_mm / deviations_in_error;
    }

    /// Sum of squares of all deviations, the presumption's among them.
    [[nodiscard]] double misfit(const Values& values, const Eigen::VectorXd& at) const {
        double sum = 0;
        for (std::size_t i = 0; i < measured_.size(); ++i) {
            const double part = (measured_[i].mm - at[static_cast<Eigen::Index>(i)]) / deviation(i);
            sum += part * part;
        }
        for (int v = 0; v < 3; ++v)
            if (is_sought(v)) {
                const double part = (values[v] - presumption_.values[v]) / presumption_.spread[v];
                sum += part * part;
            }
        return sum;
    }

    /// Normal equations at `values`: the information matrix and the downhill side.
    bool linearise(const Values& values) {
        information_.setZero();
        downhill_.setZero();
        const auto rows = static_cast<Eigen::Index>(measured_.size());
        Eigen::MatrixXd jacobian = Eigen::MatrixXd::Zero(rows, 3);
        Eigen::VectorXd moved;
        for (int v = 0; v < 3; ++v) {
            if (!is_sought(v)) continue;
            Values ahead = values;
            ahead[v] += difference;
            if (!model(ahead, moved)) return false;
            jacobian.col(v) = (moved - modelled_) / difference;
        }
        for (Eigen::Index i = 0; i < rows; ++i) {
            const double weight = 1 / deviation(static_cast<std::size_t>(i));
            jacobian.row(i) *= weight;
            downhill_ += jacobian.row(i).transpose() * weight *
                         (measured_[static_cast<std::size_t>(i)].mm - modelled_[i]);
        }
        information_ = jacobian.transpose() * jacobian;
        for (int v = 0; v < 3; ++v) {
            const double weight = is_sought(v) ? std::pow(presumption_.spread[v], -2) : 1;
            information_(v, v) += weight;
            if (is_sought(v)) downhill_[v] += weight * (presumption_.values[v] - values[v]);
        }
        return true;
    }

    /// Levenberg's damping (Nocedal and Wright, Numerical Optimization, 10.3). True when there is nothing
    /// left to gain.
    bool step(Values& values, double& damping) {
        const double before = misfit(values, modelled_);
        Eigen::VectorXd at;
        for (; damping < 1e6; damping = std::max(1e-3, damping * 10)) {
            Eigen::Matrix3d damped = information_;
            damped.diagonal() *= 1 + damping;
            const Values change = damped.ldlt().solve(downhill_);
            Values trial = values + change;
            if (is_sought(2))
                trial[2] = std::clamp(trial[2], std::log(least_stretch), std::log(most_stretch));
            if ((trial - values).norm() < smallest_step) return true;
            if (!model(trial, at)) continue;
            const double after = misfit(trial, at);
            if (after >= before) continue;
            values = trial;
            modelled_ = at;
            const double promised = 2 * change.dot(downhill_) - change.dot(information_ * change);
            damping = before - after < 0.25 * promised ? std::max(0.1, damping * 10) : damping / 10;
            return before - after < smallest_gain * (1 + before);
        }
        return true;
    }

    void report(const Values& values, bool settled, Calibration& found) const {
        found.covariance = information_.inverse();
        for (int v = 0; v < 3; ++v)
            if (!is_sought(v)) {
                found.covariance.row(v).setZero();
                found.covariance.col(v).setZero();
            }
        const auto half_width = [&](int v) {
            return std::exp(values[v]) * deviations_in_error * std::sqrt(found.covariance(v, v));
        };
        found.gauge = {std::exp(values[0]), std::exp(values[1]), half_width(0), half_width(1)};
        if (is_sought(2)) {
            found.area_stretch = std::exp(values[2]);
            found.area_stretch_error = half_width(2);
        } else {
            found.area_stretch = problem_.area_stretch;
        }
        found.modelled_mm.assign(modelled_.data(), modelled_.data() + modelled_.size());
        if (!settled) found.notes.push_back({CalibrationCode::not_converged});
        note_what_is_free(found);
        note_disagreement(found);
    }

    void note_what_is_free(Calibration& found) const {
        for (int v = 0; v < 3; ++v)
            if (is_free(v, found))
                found.notes.push_back({CalibrationCode::left_free, static_cast<CalibratedValue>(v)});
        for (int a = 0; a < 3; ++a)
            for (int b = a + 1; b < 3; ++b)
                if (go_together(a, b, found))
                    found.notes.push_back({CalibrationCode::not_told_apart, static_cast<CalibratedValue>(a),
                                           static_cast<CalibratedValue>(b)});
    }

    /// Errors that go together do no harm while they are small.
    [[nodiscard]] bool go_together(int a, int b, const Calibration& found) const {
        if (!is_sought(a) || !is_sought(b)) return false;
        if (remaining(a, found) < kept_apart && remaining(b, found) < kept_apart) return false;
        return std::abs(found.covariance(a, b)) >
               going_together * std::sqrt(found.covariance(a, a) * found.covariance(b, b));
    }

    /// The part of the presumption's spread that is left.
    [[nodiscard]] static double remaining(int v, const Calibration& found) {
        return std::sqrt(found.covariance(v, v)) / (v == 2 ? presumed_stretch_spread : presumed_gauge_spread);
    }

    [[nodiscard]] bool is_free(int v, const Calibration& found) const {
        return is_sought(v) && remaining(v, found) > narrowed;
    }

    void note_disagreement(Calibration& found) const {
        double squares = 0;
        double deviations = 0;
        double worst = 0;
        std::size_t worst_one = 0;
        for (std::size_t i = 0; i < measured_.size(); ++i) {
            const double off = measured_[i].mm - found.modelled_mm[i];
            const double part = std::abs(off) / deviation(i);
            squares += off * off;
            deviations += part * part;
            if (part > worst) {
                worst = part;
                worst_one = i;
            }
        }
        const auto count = static_cast<double>(measured_.size());
        found.residual_mm = std::sqrt(squares / count);
        if (deviations / count > disagreeing)
            found.notes.push_back({CalibrationCode::measurements_disagree, CalibratedValue::stitch_width,
                                   CalibratedValue::stitch_width, worst_one});
    }

    ShapeProblem problem_;  ///< at a stitch of 1 mm and rounds of 1 mm
    const std::vector<Measured>& measured_;
    Presumption presumption_;
    ShapeOptions options_;
    Shape shape_;  ///< the last solved, for warm starts
    Eigen::VectorXd modelled_;
    Eigen::Matrix3d information_ = Eigen::Matrix3d::Identity();
    Values downhill_ = Values::Zero();
};

double spread(double value, double error) {
    return std::max(least_spread, error / value / deviations_in_error);
}

/// The stitch, as wide as high, at which the first measurement comes out.
std::optional<double> stitch_by_first_measure(const ShapeProblem& at_one_mm, const Measured& measure,
                                              const ShapeOptions& options) {
    const Shape shape = solve_shape(at_one_mm, options);
    if (shape.termination != Termination::converged) return {};
    const double at_one = modelled(measure, shape);
    if (!(at_one > 0)) return {};
    return measure.mm / at_one;
}

std::optional<Presumption> presumption(const ShapeProblem& at_one_mm, const std::vector<Measured>& measured,
                                       const KnownBefore& known, const ShapeOptions& options) {
    Presumption presumed;
    const double stretch = known.area_stretch.value_or(medium_stuffing_stretch);
    presumed.values[2] = stretch > 0 ? std::log(stretch) : 0;
    presumed.spread[2] = at_one_mm.area_stretch > 0 && !known.area_stretch ? presumed_stretch_spread : 0;
    if (known.gauge) {
        const Gauge& gauge = *known.gauge;
        if (!is_length(gauge.stitch_width_mm) || !is_length(gauge.round_height_mm)) return {};
        presumed.values[0] = std::log(gauge.stitch_width_mm);
        presumed.values[1] = std::log(gauge.round_height_mm);
        presumed.spread[0] = spread(gauge.stitch_width_mm, gauge.stitch_width_error_mm);
        presumed.spread[1] = spread(gauge.round_height_mm, gauge.round_height_error_mm);
        return presumed;
    }
    const auto stitch = stitch_by_first_measure(at_one_mm, measured.front(), options);
    if (!stitch) return {};
    presumed.values[0] = presumed.values[1] = std::log(*stitch);
    presumed.spread[0] = presumed.spread[1] = presumed_gauge_spread;
    return presumed;
}

}  // namespace

bool Calibration::has(CalibrationCode code) const {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const CalibrationNote& note) { return note.code == code; });
}

Calibration calibrate(const ShapeProblem& problem, const std::vector<Measured>& measured,
                      const KnownBefore& known, const ShapeOptions& options) {
    const Calibration unusable = failed(CalibrationCode::unusable_piece);
    const bool measured_well =
        !measured.empty() && std::all_of(measured.begin(), measured.end(), [&](const Measured& measure) {
            return is_usable_measure(measure, problem);
        });
    const bool stretch_is_known =
        !known.area_stretch || (std::isfinite(*known.area_stretch) && *known.area_stretch >= 0);
    if (!measured_well || !stretch_is_known) return unusable;
    ShapeProblem posed = problem;
    if (known.area_stretch) posed.area_stretch = *known.area_stretch;
    const auto presumed = presumption(posed, measured, known, options);
    if (!presumed) return unusable;
    return Fit(posed, measured, *presumed, options).run();
}

}  // namespace roundwright
