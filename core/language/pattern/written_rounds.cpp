#include "core/language/pattern/written_rounds.h"

#include <algorithm>
#include <set>

#include "core/language/round/read_round.h"
#include "core/language/round/write.h"
#include "core/language/words/in_language.h"
#include "core/language/words/one_line.h"

namespace roundwright {
namespace {

std::string words_of(const Piece& piece, const PieceGraph& graph, int round, Terms terms, bool faulty) {
    const auto* written = std::get_if<AsWritten>(&piece.rounds[static_cast<std::size_t>(round)].working);
    if (faulty && written != nullptr) return words_in_terms(on_one_line(written->words), Terms::us, terms);
    return round_words(graph.graph, round, terms, piece);
}

// The yarn on the hook when the round is done.
int last_yarn(const GraphRound& made, int otherwise) {
    for (auto stitch = made.stitches.rbegin(); stitch != made.stitches.rend(); ++stitch)
        if (stitch->stitch.kind != StitchKind::skip) return static_cast<int>(stitch->stitch.yarn);
    return otherwise;
}

bool works_anything(const GraphRound& made) {
    return std::any_of(made.stitches.begin(), made.stitches.end(),
                       [](const GraphStitch& stitch) { return stitch.stitch.kind != StitchKind::skip; });
}

bool go_together(const WrittenRounds& rounds, const WrittenRounds& next) {
    return rounds.words == next.words && rounds.stitches == next.stitches && rounds.yarn == next.yarn &&
           rounds.several_yarns == next.several_yarns && rounds.note.empty() && next.note.empty() &&
           !rounds.does_not_fit && !next.does_not_fit;
}

std::set<int> faulty_rounds(const PieceGraph& graph) {
    std::set<int> faulty;
    for (const RoundProblem& problem : graph.problems) faulty.insert(problem.round);
    return faulty;
}

}  // namespace

std::vector<WrittenRounds> written_rounds(const Piece& piece, const PieceGraph& graph, Terms terms,
                                          const std::vector<int>& break_after) {
    std::vector<WrittenRounds> all;
    const std::set<int> faulty = faulty_rounds(graph);
    const std::set<int> breaks(break_after.begin(), break_after.end());
    const int rounds = static_cast<int>(std::min(piece.rounds.size(), graph.graph.rounds.size()));
    int on_hook = 0;
    for (int i = 0; i < rounds; ++i) {
        const Round& round = piece.rounds[static_cast<std::size_t>(i)];
        const GraphRound& made = graph.graph.rounds[static_cast<std::size_t>(i)];
        const std::optional<int> only = only_yarn(made);
        const bool fails = faulty.contains(i);
        WrittenRounds next;
        next.first = next.last = i;
        next.words = words_of(piece, graph, i, terms, fails);
        next.stitches = made.loops_left;
        next.yarn = only.value_or(static_cast<int>(round.yarn));
        next.several_yarns = !only && works_anything(made);
        next.new_yarn = i > 0 && !next.several_yarns && next.yarn != on_hook;
        next.note = round.note;
        next.does_not_fit = fails;
        on_hook = last_yarn(made, next.yarn);
        if (!all.empty() && !breaks.contains(i - 1) && go_together(all.back(), next)) {
            all.back().last = i;
        } else {
            all.push_back(std::move(next));
        }
    }
    return all;
}

std::string written_line(const WrittenRounds& rounds, Joining joining, const std::string& yarn, Terms terms) {
    std::string label = joining == Joining::rows ? "Row" : "Rnd";
    if (rounds.rounds() > 1) label += "s";
    label = said_in(label, terms) + " " + std::to_string(rounds.first + 1);
    if (rounds.rounds() > 1) label += "-" + std::to_string(rounds.last + 1);
    return label + ": " + yarn + rounds.words + " (" + std::to_string(rounds.stitches) + ")";
}

}  // namespace roundwright
