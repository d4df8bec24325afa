#pragma once

#include <Eigen/Core>

namespace roundwright {

struct ConjugateGradientLimits {
    double relative = 0.05;  ///< of the right side, in the norm of the preconditioner's inverse
    int max_steps = 40;
};

struct ConjugateGradientEnd {
    int steps = 0;
    bool negative_curvature = false;
    Eigen::VectorXd downhill;  ///< the direction of negative curvature that was met, downhill for -b
    bool reached = false;
    double first_length = 1;  ///< of P b, that the first step took: 1 where P is A^-1
};

/// Solves A x = b for x, from zero, with a preconditioner P near A^-1. `multiply(v, out)` gives A v and
/// `precondition(v, out)` P v. Where A turns out not to be positive definite, x is the last vector before
/// that (Steihaug 1983; Nocedal and Wright, Numerical Optimization, 7.1).
template <class Multiply, class Precondition>
ConjugateGradientEnd conjugate_gradients(const Eigen::VectorXd& b, const Multiply& multiply,
                                         const Precondition& precondition,
                                         const ConjugateGradientLimits& limits, Eigen::VectorXd& x) {
    const Eigen::Index size = b.size();
    Eigen::VectorXd residual = b;
    Eigen::VectorXd towards(size);
    Eigen::VectorXd product(size);
    Eigen::VectorXd direction(size);
    x.setZero(size);
    precondition(residual, towards);
    direction = towards;
    double squared = residual.dot(towards);
    const double enough = limits.relative * limits.relative * squared;
    ConjugateGradientEnd end;
    while (squared > enough && end.steps < limits.max_steps) {
        multiply(direction, product);
        const double curvature = direction.dot(product);
        ++end.steps;
        if (!(curvature > 0)) {
            end.negative_curvature = true;
            end.downhill = direction;
            return end;
        }
        const double length = squared / curvature;
        if (end.steps == 1) end.first_length = length;
        x += length * direction;
        residual -= length * product;
        precondition(residual, towards);
        const double next = residual.dot(towards);
        direction = towards + next / squared * direction;
        squared = next;
    }
    end.reached = squared <= enough;
    return end;
}

}  // namespace roundwright
