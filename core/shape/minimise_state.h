#pragma once

#include <cstddef>
#include <stop_token>
#include <vector>

#include "core/shape/energy.h"
#include "core/shape/termination.h"

namespace roundwright {

/// Scratch memory of `minimise`, reused from step to step and from piece to piece.
template <Energy E>
struct MinimiseWorkspace {
    typename E::Matrix matrix;
    Positions trial;
    typename E::Elements elements;
    typename E::Elements trial_elements;
    std::vector<double> energy_gradient;
    std::vector<double> volume_gradient;
    std::vector<double> stretch_gradient;
    std::vector<double> trial_energy_gradient;
    std::vector<double> trial_volume_gradient;
    std::vector<double> step;           ///< H^-1 of the force
    std::vector<double> pressure_step;  ///< H^-1 of the volume gradient

    void resize(std::size_t unknowns) {
        matrix.resize(unknowns);
        trial.resize(unknowns);
        for (auto* vector :
             {&energy_gradient, &stretch_gradient, &trial_energy_gradient, &step, &pressure_step})
            vector->resize(unknowns);
        // An unstuffed piece takes no part of these, but they stand in its sums.
        for (auto* vector : {&volume_gradient, &trial_volume_gradient}) vector->assign(unknowns, 0.0);
    }
};

/// When to stop.
struct MinimiseLimits {
    double relative_gradient = 1e-9;  ///< norm of the gradient over the energy's `force_scale`
    int max_iterations = 200;
    std::stop_token stop;
};

/// What is being minimised, and how far it has come.
struct Equilibrium {
    Positions x;
    double stuffing = 0;          ///< p V; what the line search holds while it moves
    double least_stuffing = 0;    ///< kept even if the fabric's misfit alone stretches it more than wanted
    bool holds_stuffing = false;  ///< the amount stays as given, and the stretch comes out as it may
    Termination termination = Termination::iteration_limit;
    int iterations = 0;
    double residual = 0;
};

}  // namespace roundwright
