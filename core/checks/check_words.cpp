#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "core/checks/families.h"

namespace roundwright {

namespace {

/// Mends are tried out by working the round again with each, so only for the first rounds at fault: once
/// those are mended, the others' turn comes.
constexpr int most_rounds_with_mends = 5;
constexpr std::size_t most_mends = 3;

ReadDiagnostic diagnostic_of(const RoundProblem& problem) {
    return {problem.code,     Severity::error, problem.where,     -1, problem.round,
            problem.expected, problem.found,   problem.arguments, {}};
}

/// The first error of a written round with the mends that were found for it.
ReadDiagnostic with_mends(const CheckInput& input, const RoundProblem& problem, const std::string& words) {
    YarnTable yarns;
    const auto index = static_cast<std::size_t>(problem.round);
    const ReadCell cell =
        read_cell(input.piece.rounds[index], RoundBelow::before(input.piece, input.graph.graph, index),
                  words, Terms::us, yarns);
    const auto& found = cell.reading.diagnostics;
    const auto error = std::find_if(found.begin(), found.end(), [](const ReadDiagnostic& diagnostic) {
        return diagnostic.severity == Severity::error;
    });
    return error == found.end() ? diagnostic_of(problem) : *error;
}

std::vector<Cure> cures_of(const CheckInput& input, const ReadDiagnostic& reading, int index) {
    const Round& round = input.piece.rounds[static_cast<std::size_t>(index)];
    const std::string& words = std::get<AsWritten>(round.working).words;
    std::vector<Cure> cures;
    for (std::size_t i = 0; i < std::min(most_mends, reading.mends.size()); ++i) {
        Round other = round;
        other.working = AsWritten{mended(words, reading.mends[i])};
        cures.push_back({CureKind::mend_words, {other}, index, 1, reading.mends[i]});
    }
    const int left = index < input.graphed_rounds() ? input.loops_left(index) : 0;
    const bool read = reading.code == ReadCode::loops_do_not_fit || reading.code == ReadCode::count_differs ||
                      reading.code == ReadCode::repeat_does_not_fit;
    if (read && left > 0) cures.push_back({CureKind::set_count, {with_count(round, left)}, index, 1});
    return cures;
}

std::vector<Argument> arguments_of(const CheckInput& input, const ReadDiagnostic& reading, int index) {
    const int below = input.loops_below(index);
    const int taken = reading.code == ReadCode::loops_do_not_fit ? reading.found : below;
    return {below, taken, Millimetres{std::abs(taken - below) * input.stitch_width_mm()}};
}

}  // namespace

void check_words(const CheckInput& input, std::vector<Check>& checks) {
    int said = 0;
    int last_round = -1;
    for (const RoundProblem& problem : input.graph.problems) {
        if (problem.round == last_round || problem.round < 0 || problem.round >= input.rounds()) continue;
        last_round = problem.round;
        const Round& round = input.piece.rounds[static_cast<std::size_t>(problem.round)];
        const auto* written = std::get_if<AsWritten>(&round.working);
        if (written == nullptr) continue;
        const ReadDiagnostic reading = said++ < most_rounds_with_mends
                                           ? with_mends(input, problem, written->words)
                                           : diagnostic_of(problem);
        checks.push_back({CheckCode::words_do_not_fit, Severity::error, input.piece_index, problem.round,
                          arguments_of(input, reading, problem.round),
                          cures_of(input, reading, problem.round), reading});
    }
}

}  // namespace roundwright
