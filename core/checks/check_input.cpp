#include "core/checks/check_input.h"

#include <algorithm>
#include <cmath>

namespace roundwright {

int CheckInput::loops_below(int round) const {
    return round == 0 ? graph.graph.foundation_loops : loops_left(round - 1);
}

int CheckInput::loops_left(int round) const {
    return graph.graph.rounds[static_cast<std::size_t>(round)].loops_left;
}

int CheckInput::rounds_with_lie() const {
    return std::min({rounds(), graphed_rounds(), static_cast<int>(lies.size())});
}

std::optional<CountRange> workable_counts(const CheckInput& input, int round) {
    const int below = input.loops_below(round);
    const Round& worked = input.piece.rounds[static_cast<std::size_t>(round)];
    if (below < 1 || !std::holds_alternative<WorkedEvenly>(worked.working)) return std::nullopt;
    return workable_counts(below);
}

bool count_is_workable(const CheckInput& input, int round) {
    const auto range = workable_counts(input, round);
    if (!range) return true;
    const Round& worked = input.piece.rounds[static_cast<std::size_t>(round)];
    const int stitches = std::get<WorkedEvenly>(worked.working).stitches;
    return range->holds(stitches);
}

bool words_come_out(const CheckInput& input, int round) {
    const auto& problems = input.graph.problems;
    return std::none_of(problems.begin(), problems.end(),
                        [round](const RoundProblem& problem) { return problem.round == round; });
}

std::vector<Argument> ruffle_arguments(const CheckInput& input, int round) {
    const RoundLie& lie = input.lies[static_cast<std::size_t>(round)];
    return {input.loops_left(round) - input.loops_below(round), lie.flat_increase, lie.waves,
            Millimetres{lie.wave_height_mm}, Millimetres{lie.spare_length_mm}};
}

Round with_count(const Round& round, int stitches) {
    Round other = round;
    WorkedEvenly even;
    if (const auto* worked = std::get_if<WorkedEvenly>(&round.working)) even = *worked;
    even.stitches = std::max(1, stitches);
    other.working = even;
    return other;
}

std::vector<Round> in_steps(const Round& like, int below, int count, int rounds) {
    std::vector<Round> stepped;
    for (int i = 1; i <= rounds; ++i) {
        const double part = static_cast<double>(i) / rounds;
        stepped.push_back(with_count(like, static_cast<int>(std::lround(below + (count - below) * part))));
    }
    return stepped;
}

}  // namespace roundwright
