#pragma once

#include "core/shape/membrane.h"

namespace roundwright {

/// Scratch memory of `minimise`, reused from step to step and from piece to piece.
struct MinimiseWorkspace {
    BandMatrix matrix;
    Positions trial;
    LyingWalls walls;
    LyingWalls trial_walls;
    std::vector<double> energy_gradient;
    std::vector<double> volume_gradient;
    std::vector<double> stretch_gradient;
    std::vector<double> trial_energy_gradient;
    std::vector<double> trial_volume_gradient;
    std::vector<double> step;           ///< H^-1 of the force
    std::vector<double> pressure_step;  ///< H^-1 of the volume gradient

    void resize(std::size_t nodes);
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

/// Finds the positions of least E - p V whose mean area stretch is `target_stretch` (0: p = 0), or, where the
/// state holds its stuffing, those of least E - stuffing ln V.
///
/// A fixed p lets a large piece run away and a fixed V says nothing about firmness, so the stuffing is a
/// fixed amount of a gas while positions move: E - c ln V, which is p V = c, has a minimum for every c. c
/// itself moves by the bordered Newton step for (x, p) with the stretch as the bordering equation.
void minimise(const Membrane& membrane, double target_stretch, const ShapeOptions& options,
              double relative_gradient, int max_iterations, MinimiseWorkspace& workspace, Equilibrium& state);

}  // namespace roundwright
