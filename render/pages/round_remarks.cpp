#include "render/pages/round_remarks.h"

#include "core/face/work_steps.h"
#include "render/pages/feature_words.h"
#include "render/pages/pattern_words.h"

namespace roundwright::render {
namespace {

QString step_words(const WorkStep& step, const Piece& piece) {
    switch (step.kind) {
        case StepKind::fit_feature:
            return fit_now_words(piece.features[static_cast<std::size_t>(step.feature)]);
        case StepKind::begin_stuffing:
            return words("Begin to stuff, and go on as the piece closes.");
        case StepKind::finish_stuffing:
            return words("Finish stuffing now, while it still goes in.");
        case StepKind::stuff:
            return words("Stuff the piece now.");
    }
    return {};
}

/// A piece left open is stuffed when it is sewn on or sewn up, which its end tells.
bool told_elsewhere(const WorkStep& step, const Piece& piece) {
    return step.kind == StepKind::stuff && piece.end != End::drawn_closed &&
           step.after_round + 1 == static_cast<int>(piece.rounds.size());
}

}  // namespace

std::vector<RoundRemark> round_remarks(const Piece& piece, const PieceStudy& study) {
    std::vector<RoundRemark> remarks;
    for (const WorkStep& step : work_steps(piece, study.problem.rest_loop_mm)) {
        if (!told_elsewhere(step, piece)) remarks.push_back({step.after_round, step_words(step, piece)});
    }
    return remarks;
}

std::vector<int> remarked_rounds(const std::vector<RoundRemark>& remarks) {
    std::vector<int> rounds;
    for (const RoundRemark& remark : remarks) {
        if (rounds.empty() || rounds.back() != remark.after) rounds.push_back(remark.after);
    }
    return rounds;
}

}  // namespace roundwright::render
