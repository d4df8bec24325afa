#include <algorithm>

#include "core/checks/families.h"
#include "core/shape/fabric_signs.h"

namespace roundwright {

namespace {

/// Softer stuffing, where there is any to take out.
std::vector<Cure> softer(const CheckInput& input) {
    constexpr double by = 0.5;
    if (input.piece.area_stretch <= light_stuffing_stretch) return {};
    Cure cure{CureKind::stuff_softer, {}, 0, 0};
    cure.area_stretch = std::max(light_stuffing_stretch, input.piece.area_stretch * by);
    return {cure};
}

/// Gaps run over many rounds: one check says how many and where they are worst.
void check_gaps(const CheckInput& input, const std::vector<FabricSign>& signs, std::vector<Check>& checks) {
    const FabricSign* worst = nullptr;
    int rounds = 0;
    for (const FabricSign& sign : signs) {
        if (sign.kind != FabricSignKind::gaps) continue;
        ++rounds;
        if (worst == nullptr || sign.stretch > worst->stretch) worst = &sign;
    }
    if (worst == nullptr) return;
    checks.push_back({CheckCode::gaps,
                      Severity::warning,
                      input.piece_index,
                      worst->round,
                      {100 * worst->stretch, rounds},
                      softer(input)});
}

}  // namespace

void check_signs(const CheckInput& input, std::vector<Check>& checks) {
    if (input.rounds_with_lie() == 0 || input.study.shape.termination != Termination::converged) return;
    const std::vector<FabricSign> signs = fabric_signs(input.study.problem, input.study.shape);
    check_gaps(input, signs, checks);
    for (const FabricSign& sign : signs) {
        if (sign.kind == FabricSignKind::widening_neck) {
            checks.push_back({CheckCode::widening_neck,
                              Severity::warning,
                              input.piece_index,
                              sign.round,
                              {Millimetres{sign.width_mm}, Millimetres{sign.relaxed_width_mm}},
                              softer(input)});
        } else if (sign.kind != FabricSignKind::gaps) {
            const auto code = sign.kind == FabricSignKind::ridge ? CheckCode::ridge : CheckCode::crease;
            checks.push_back({code, Severity::note, input.piece_index, sign.round, {sign.turn_degrees}, {}});
        }
    }
}

}  // namespace roundwright
