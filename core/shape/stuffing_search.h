#pragma once

#include "core/shape/membrane.h"
#include "core/shape/minimise.h"

namespace roundwright {

/// The equilibrium of a mean area stretch, slowly and surely: for an amount of stuffing that is held,
/// E - c ln V has a minimum, and more of it stretches the fabric more, so c is bracketed and divided. For
/// pieces on which the bordered step of `minimise`, which moves c with the positions, goes round in circles:
/// where the fabric's misfit alone makes about the stretch that is asked for, it hardly depends on c.
///
/// `start` has positions that enclose something, and the least stuffing, which is kept where it stretches the
/// fabric enough. Where a piece snaps from one shape to another and no amount makes just that stretch, the
/// least that makes more is taken. The limit of iterations holds for all of it.
[[nodiscard]] Equilibrium search_stuffing(const Membrane& membrane, double stretch,
                                          const MinimiseLimits& limits,
                                          MinimiseWorkspace<Membrane>& workspace, Equilibrium start);

}  // namespace roundwright
