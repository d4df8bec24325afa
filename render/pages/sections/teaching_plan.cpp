#include "render/pages/sections/teaching_plan.h"

#include <algorithm>
#include <set>

#include "core/materials/working_time.h"
#include "core/stitches/stitch_measure.h"
#include "render/wording/pattern/round_remarks.h"

namespace roundwright::render {
namespace {

double single_crochets(const StitchGraph& graph, int first, int last) {
    double sum = 0;
    for (int i = first; i <= last; ++i) {
        for (const GraphStitch& made : graph.rounds[static_cast<std::size_t>(i)].stitches) {
            sum += yarn_in_sc(made.stitch);
        }
    }
    return sum;
}

class Planner {
  public:
    Planner(const PatternStudy& study, Terms terms) : study_(study), terms_(terms) {
        std::vector<const PieceGraph*> graphs;
        for (const PieceStudy& piece : study.pieces) graphs.push_back(&piece.graph());
        techniques_ = used_techniques(study.toy, graphs);
    }

    std::vector<TaughtPiece> plan() {
        std::vector<TaughtPiece> pieces;
        for (std::size_t i = 0; i < study_.pieces.size(); ++i) pieces.push_back(piece(i));
        return pieces;
    }

  private:
    TaughtPiece piece(std::size_t i) {
        const Piece& piece = study_.toy.pieces[i];
        const PieceGraph& graph = study_.pieces[i].graph();
        const std::vector<int> due = remarked_rounds(round_remarks(piece, study_.pieces[i], terms_));
        TaughtPiece taught{i, {}};
        const int rounds = static_cast<int>(graph.graph.rounds.size());
        for (const WrittenRounds& line : written_rounds(piece, graph, terms_, due)) {
            taught.lines.push_back(this->line(i, line, graph.graph, rounds));
            TaughtLine& last = taught.lines.back();
            const bool to_do = std::count(due.begin(), due.end(), line.last) > 0;
            last.showing = showing(last, to_do);
            known_.insert(line.words);
        }
        return taught;
    }

    TaughtLine line(std::size_t piece, const WrittenRounds& line, const StitchGraph& graph, int rounds) {
        TaughtLine taught;
        taught.line = line;
        taught.first_met = first_met(piece, line, rounds);
        taught.minutes =
            working_minutes(single_crochets(graph, line.first, line.last), study_.toy.making).likely;
        running_ += taught.minutes;
        taught.end_minutes = running_;
        return taught;
    }

    /// What starts and ends a piece counts with its first and last round.
    std::vector<Technique> first_met(std::size_t piece, const WrittenRounds& line, int rounds) const {
        std::vector<Technique> met;
        for (const UsedTechnique& used : techniques_) {
            const int round = std::clamp(used.first.round, 0, rounds - 1);
            if (used.first.piece == piece && round >= line.first && round <= line.last)
                met.push_back(used.technique);
        }
        return met;
    }

    Showing showing(const TaughtLine& taught, bool to_do) const {
        const WrittenRounds& line = taught.line;
        if (!taught.first_met.empty() || line.new_yarn || !line.note.empty() || to_do)
            return Showing::in_full;
        return known_.contains(line.words) ? Showing::skip : Showing::begin;
    }

    const PatternStudy& study_;
    Terms terms_;
    std::vector<UsedTechnique> techniques_;
    std::set<std::string> known_;
    double running_ = 0;
};

}  // namespace

std::vector<TaughtPiece> teaching_plan(const PatternStudy& study, Terms terms) {
    return Planner(study, terms).plan();
}

}  // namespace roundwright::render
