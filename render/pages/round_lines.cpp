#include "render/pages/round_lines.h"

#include <algorithm>

#include "core/instructions/write.h"

namespace roundwright::render {
namespace {

bool has_several_yarns(const GraphRound& round) {
    return std::any_of(round.stitches.begin(), round.stitches.end(), [&](const GraphStitch& stitch) {
        return stitch.stitch.yarn != round.stitches.front().stitch.yarn;
    });
}

bool is_problem(const PieceGraph& graph, int round) {
    return std::any_of(graph.problems.begin(), graph.problems.end(),
                       [&](const RoundProblem& problem) { return problem.round == round; });
}

RoundLine line_of(const Piece& piece, const PieceGraph& graph, int i, Terms terms) {
    const auto index = static_cast<std::size_t>(i);
    const GraphRound& made = graph.graph.rounds[index];
    RoundLine line;
    line.first = line.last = i;
    line.words = round_words(graph.graph, i, terms, piece.start);
    line.stitches = made.loops_left;
    line.yarn = piece.rounds[index].yarn;
    line.new_yarn = i > 0 && line.yarn != piece.rounds[index - 1].yarn;
    line.several_yarns = has_several_yarns(made);
    line.note = piece.rounds[index].note;
    line.does_not_fit = is_problem(graph, i);
    return line;
}

bool go_together(const RoundLine& line, const RoundLine& next) {
    return line.words == next.words && line.stitches == next.stitches && line.yarn == next.yarn &&
           line.several_yarns == next.several_yarns && line.note.empty() && next.note.empty() &&
           !line.does_not_fit && !next.does_not_fit;
}

}  // namespace

std::vector<RoundLine> round_lines(const Piece& piece, const PieceGraph& graph, Terms terms,
                                   const std::vector<int>& break_after) {
    std::vector<RoundLine> lines;
    const int rounds = static_cast<int>(std::min(graph.graph.rounds.size(), piece.rounds.size()));
    for (int i = 0; i < rounds; ++i) {
        RoundLine next = line_of(piece, graph, i, terms);
        const bool broken = std::count(break_after.begin(), break_after.end(), i - 1) > 0;
        if (!lines.empty() && !broken && go_together(lines.back(), next)) {
            lines.back().last = i;
        } else {
            lines.push_back(std::move(next));
        }
    }
    return lines;
}

}  // namespace roundwright::render
