#include "core/shape/calibration_fit.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/gauge/gauge_belief.h"
#include "core/shape/scaled_problem.h"

namespace roundwright {

namespace {

using Values = CalibrationValues;

constexpr int stretch = static_cast<int>(CalibratedValue::area_stretch);
constexpr int most_iterations = 40;
constexpr double smallest_step = 1e-7;
constexpr double smallest_gain = 1e-8;
constexpr double difference = 1e-4;
constexpr double least_stretch = 1e-3;
constexpr double most_stretch = 0.5;
constexpr double most_damping = 1e6;

/// Least squares for one piece; its steps are the member functions.
class Fit {
  public:
    Fit(const ShapeProblem& at_one_mm, const std::vector<Measured>& measured,
        const CalibrationPresumption& presumption, const ShapeOptions& options)
        : problem_(at_one_mm), measured_(measured), presumption_(presumption), options_(options) {}

    [[nodiscard]] CalibrationFit run() {
        CalibrationFit found;
        Values values = presumption_.values;
        found.solved = model(values, modelled_);
        if (!found.solved) return found;
        double damping = 1e-6;
        for (; found.iterations < most_iterations && !found.settled; ++found.iterations) {
            if (!linearise(values)) break;
            found.settled = step(values, damping);
        }
        found.values = values;
        found.covariance = covariance();
        found.measured_information = jacobian_.transpose() * jacobian_;
        found.measured_side =
            found.measured_information * values + jacobian_.transpose() * deviations(modelled_);
        found.modelled_mm.assign(modelled_.data(), modelled_.data() + modelled_.size());
        return found;
    }

  private:
    [[nodiscard]] bool is_sought(int value) const {
        return presumption_.sought[static_cast<std::size_t>(value)];
    }

    bool model(const Values& values, Eigen::VectorXd& out) {
        ShapeProblem problem = scaled_problem(problem_, std::exp(values[0]), std::exp(values[1]));
        if (is_sought(stretch)) problem.area_stretch = std::exp(values[stretch]);
        Shape shape = solve_shape(problem, options_, shape_.usable() ? &shape_ : nullptr);
        if (shape.termination != Termination::converged) return false;
        shape_ = std::move(shape);
        out.resize(static_cast<Eigen::Index>(measured_.size()));
        for (std::size_t i = 0; i < measured_.size(); ++i)
            out[static_cast<Eigen::Index>(i)] = modelled_mm(measured_[i], shape_);
        return true;
    }

    /// Measured less modelled, in standard deviations.
    [[nodiscard]] Eigen::VectorXd deviations(const Eigen::VectorXd& at) const {
        Eigen::VectorXd parts(at.size());
        for (Eigen::Index i = 0; i < at.size(); ++i) {
            const Measured& measure = measured_[static_cast<std::size_t>(i)];
            parts[i] = (measure.mm - at[i]) * deviations_in_half_width / measure.error_mm;
        }
        return parts;
    }

    /// Sum of squares of all deviations, the presumption's among them.
    [[nodiscard]] double misfit(const Values& values, const Eigen::VectorXd& at) const {
        const Values off = values - presumption_.values;
        return deviations(at).squaredNorm() + off.dot(presumption_.information * off);
    }

    /// Change of each deviation with each value sought; nothing where the forward solve fails.
    bool set_jacobian(const Values& values) {
        jacobian_ = Eigen::MatrixXd::Zero(modelled_.size(), 3);
        Eigen::VectorXd moved;
        for (int v = 0; v < 3; ++v) {
            if (!is_sought(v)) continue;
            Values ahead = values;
            ahead[v] += difference;
            if (!model(ahead, moved)) return false;
            jacobian_.col(v) = (deviations(modelled_) - deviations(moved)) / difference;
        }
        return true;
    }

    /// Normal equations at `values`: the information matrix and the downhill side.
    bool linearise(const Values& values) {
        if (!set_jacobian(values)) return false;
        information_ = jacobian_.transpose() * jacobian_ + presumption_.information;
        downhill_ = jacobian_.transpose() * deviations(modelled_) +
                    presumption_.information * (presumption_.values - values);
        for (int v = 0; v < 3; ++v)
            if (!is_sought(v)) information_(v, v) = 1;
        return true;
    }

    /// True when there is nothing left to gain.
    bool step(Values& values, double& damping) {
        const double before = misfit(values, modelled_);
        Eigen::VectorXd at;
        for (; damping < most_damping; damping = std::max(1e-3, damping * 10)) {
            Eigen::Matrix3d damped = information_;
            damped.diagonal() *= 1 + damping;
            const Values change = damped.ldlt().solve(downhill_);
            const Values trial = within_limits(values + change);
            if ((trial - values).norm() < smallest_step) return true;
            if (!model(trial, at)) continue;
            const double gain = before - misfit(trial, at);
            if (gain <= 0) continue;
            values = trial;
            modelled_ = at;
            const double promised = 2 * change.dot(downhill_) - change.dot(information_ * change);
            damping = gain < 0.25 * promised ? std::max(0.1, damping * 10) : damping / 10;
            return gain < smallest_gain * (1 + before);
        }
        return true;
    }

    [[nodiscard]] Values within_limits(Values values) const {
        if (is_sought(stretch))
            values[stretch] = std::clamp(values[stretch], std::log(least_stretch), std::log(most_stretch));
        return values;
    }

    [[nodiscard]] Eigen::Matrix3d covariance() const {
        Eigen::Matrix3d covariance = information_.inverse();
        for (int v = 0; v < 3; ++v)
            if (!is_sought(v)) {
                covariance.row(v).setZero();
                covariance.col(v).setZero();
            }
        return covariance;
    }

    const ShapeProblem& problem_;
    const std::vector<Measured>& measured_;
    const CalibrationPresumption& presumption_;
    const ShapeOptions& options_;
    Shape shape_;  ///< the last solved, for warm starts
    Eigen::VectorXd modelled_;
    Eigen::MatrixXd jacobian_ = Eigen::MatrixXd::Zero(0, 3);
    Eigen::Matrix3d information_ = Eigen::Matrix3d::Identity();
    Values downhill_ = Values::Zero();
};

}  // namespace

double modelled_mm(const Measured& measure, const Shape& shape) {
    switch (measure.of) {
        case MeasuredOf::width:
            return shape.width_mm;
        case MeasuredOf::height:
            return shape.height_mm;
        case MeasuredOf::circumference:
            return 2 * std::numbers::pi * *std::ranges::max_element(shape.radius_mm);
        case MeasuredOf::circumference_of_round:
            break;
    }
    return 2 * std::numbers::pi * shape.radius_mm[static_cast<std::size_t>(measure.round) + 1];
}

CalibrationFit fit_calibration(const ShapeProblem& at_one_mm, const std::vector<Measured>& measured,
                               const CalibrationPresumption& presumption, const ShapeOptions& options) {
    return Fit(at_one_mm, measured, presumption, options).run();
}

}  // namespace roundwright
