#pragma once

#include "core/shape/newton_search.h"

namespace roundwright {

/// Finds the positions of least E - p V whose mean area stretch is `target_stretch` (0: p = 0), or, where the
/// state holds its stuffing, those of least E - stuffing ln V. Of an energy without a volume, the least E.
///
/// A fixed p lets a large piece run away and a fixed V says nothing about firmness, so the stuffing is a
/// fixed amount of a gas while positions move: E - c ln V, which is p V = c, has a minimum for every c. c
/// itself moves by the bordered Newton step for (x, p) with the stretch as the bordering equation.
template <StuffedEnergy E>
void minimise(const E& energy, double target_stretch, const MinimiseLimits& limits,
              MinimiseWorkspace<E>& workspace, Equilibrium& state) {
    NewtonSearch<E>(energy, target_stretch, limits, workspace, state).run();
}

template <Energy E>
void minimise(const E& energy, const MinimiseLimits& limits, MinimiseWorkspace<E>& workspace,
              Equilibrium& state) {
    NewtonSearch<E>(energy, 0, limits, workspace, state).run();
}

}  // namespace roundwright
