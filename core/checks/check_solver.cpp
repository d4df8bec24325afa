#include "core/checks/families.h"

namespace roundwright {

void check_solver(const CheckInput& input, std::vector<Check>& checks) {
    const Termination termination = input.measures.termination;
    const bool computed = input.graphed_rounds() > 0;
    if (!computed || termination == Termination::converged || termination == Termination::cancelled) return;
    checks.push_back(
        {CheckCode::not_converged, Severity::warning, input.piece_index, -1, {input.rounds()}, {}});
}

}  // namespace roundwright
