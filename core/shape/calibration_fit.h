#pragma once

#include <Eigen/Core>
#include <array>
#include <vector>

#include "core/shape/calibrate.h"

namespace roundwright {

/// Logarithms of stitch width (mm), round height (mm) and area stretch, in the order of CalibratedValue.
using CalibrationValues = Eigen::Vector3d;

/// What is believed before anything is measured.
struct CalibrationPresumption {
    CalibrationValues values = CalibrationValues::Zero();
    Eigen::Matrix3d information =
        Eigen::Matrix3d::Zero();  ///< inverse covariance; 0 in the rows and columns of what is not sought
    std::array<bool, 3> sought{};
};

/// The least sum of squares found.
struct CalibrationFit {
    bool solved = false;  ///< the forward solve converged at all
    bool settled = false;
    CalibrationValues values = CalibrationValues::Zero();
    Eigen::Matrix3d covariance =
        Eigen::Matrix3d::Zero();  ///< 0 in the rows and columns of what is not sought
    /// What the measurements alone say, without the presumption, linear at `values`: their information
    /// matrix I and I times the values that they speak for.
    Eigen::Matrix3d measured_information = Eigen::Matrix3d::Zero();
    CalibrationValues measured_side = CalibrationValues::Zero();
    std::vector<double> modelled_mm;
    int iterations = 0;
};

/// Gauss-Newton with Levenberg's damping (Nocedal and Wright, Numerical Optimization, 10.3) on
///
///     sum ((measured - modelled) / deviation)^2 + (values - presumed)^T information (values - presumed)
///
/// with the forward solve as the model and one-sided differences as its derivatives. `at_one_mm` is the piece
/// posed at a gauge of 1 mm by 1 mm; where the stretch is not sought, it stays what it is there.
[[nodiscard]] CalibrationFit fit_calibration(const ShapeProblem& at_one_mm,
                                             const std::vector<Measured>& measured,
                                             const CalibrationPresumption& presumption,
                                             const ShapeOptions& options);

/// What a measurement would be on a shape, mm.
[[nodiscard]] double modelled_mm(const Measured& measure, const Shape& shape);

}  // namespace roundwright
