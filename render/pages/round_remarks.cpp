#include "render/pages/round_remarks.h"

#include "core/face/work_steps.h"
#include "core/toy/firmness.h"
#include "render/pages/feature_words.h"
#include "render/pages/pattern_words.h"

namespace roundwright::render {
namespace {

/// The step in words, said with the firmness of the piece where it is not the usual one.
QString stuffing_step_words(StepKind kind, Firmness firmness) {
    const QString how = firmness == Firmness::light  ? words(" lightly")
                        : firmness == Firmness::firm ? words(" firmly")
                                                     : QString();
    switch (kind) {
        case StepKind::begin_stuffing:
            return words("Start to stuff%1, and go on as the piece closes.").arg(how);
        case StepKind::finish_stuffing:
            return words("Finish stuffing%1 now, before the opening gets too small.").arg(how);
        default:
            return words("Stuff the piece%1 now.").arg(how);
    }
}

QString step_words(const WorkStep& step, const Piece& piece, Terms terms) {
    switch (step.kind) {
        case StepKind::fit_feature:
            return fit_now_words(piece.features[static_cast<std::size_t>(step.feature)], terms);
        case StepKind::begin_stuffing:
        case StepKind::finish_stuffing:
        case StepKind::stuff:
            return stuffing_step_words(step.kind, firmness_of(piece.area_stretch));
    }
    return {};
}

/// A piece left open is stuffed when it is sewn on or sewn up, which its end tells.
bool told_elsewhere(const WorkStep& step, const Piece& piece) {
    return step.kind == StepKind::stuff && piece.end != End::drawn_closed &&
           step.after_round + 1 == static_cast<int>(piece.rounds.size());
}

}  // namespace

std::vector<RoundRemark> round_remarks(const Piece& piece, const PieceStudy& study, Terms terms) {
    std::vector<RoundRemark> remarks;
    for (const WorkStep& step : work_steps(piece, study.problem().rest_loop_mm)) {
        if (!told_elsewhere(step, piece))
            remarks.push_back({step.after_round, step_words(step, piece, terms)});
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
