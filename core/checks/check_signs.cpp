#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/checks/families.h"
#include "core/shape/fabric_limits.h"

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
void check_gaps(const CheckInput& input, std::vector<Check>& checks) {
    const FabricSign* worst = nullptr;
    int rounds = 0;
    for (const FabricSign& sign : input.signs) {
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

/// A neck of several rounds gets one check, where it is widened most.
void check_necks(const CheckInput& input, std::vector<Check>& checks) {
    std::vector<FabricSign> necks;
    int last_round = 0;
    for (const FabricSign& sign : input.signs) {
        if (sign.kind != FabricSignKind::widening_neck) continue;
        const bool same_neck = !necks.empty() && sign.round - last_round <= 1;
        last_round = sign.round;
        if (!same_neck)
            necks.push_back(sign);
        else if (sign.stretch > necks.back().stretch)
            necks.back() = sign;
    }
    for (const FabricSign& neck : necks) {
        checks.push_back({CheckCode::widening_neck,
                          Severity::note,
                          input.piece_index,
                          neck.round,
                          {Millimetres{neck.width_mm}, Millimetres{neck.relaxed_width_mm}},
                          softer(input)});
    }
}

/// Beside a round that cannot be worked the shape is not one to judge edges by.
bool beside_an_error(int round, const std::vector<Check>& checks) {
    return std::ranges::any_of(checks, [round](const Check& check) {
        return check.severity == Severity::error && check.round >= 0 && std::abs(check.round - round) <= 1;
    });
}

/// Where the counts turn at once from more to fewer, or back, a round between them turns half as far.
std::vector<Cure> even_round_between(const CheckInput& input, const FabricSign& sign) {
    if (std::abs(sign.growth_change) <= edge_above_growth_change) return {};
    const Round& round = input.piece.rounds[static_cast<std::size_t>(sign.round)];
    return {{CureKind::add_even_round, {with_count(round, input.loops_left(sign.round))}, sign.round + 1, 0}};
}

void check_edge(const CheckInput& input, const FabricSign& sign, std::vector<Check>& checks) {
    const bool edge = sign.kind == FabricSignKind::ridge || sign.kind == FabricSignKind::crease;
    if (!edge || beside_an_error(sign.round, checks)) return;
    const auto code = sign.kind == FabricSignKind::ridge ? CheckCode::ridge : CheckCode::crease;
    checks.push_back({code,
                      Severity::note,
                      input.piece_index,
                      sign.round,
                      {sign.turn_degrees},
                      even_round_between(input, sign)});
}

}  // namespace

void check_signs(const CheckInput& input, std::vector<Check>& checks) {
    if (input.problem.limp || input.problem.on_its_face) return;
    if (input.rounds_with_lie() == 0 || !input.measures.converged()) return;
    check_gaps(input, checks);
    check_necks(input, checks);
    for (const FabricSign& sign : input.signs) check_edge(input, sign, checks);
}

}  // namespace roundwright
