#include "render/wording/pattern/round_remarks.h"

#include "core/face/work_steps.h"
#include "core/toy/firmness.h"
#include "render/wording/pattern/feature_words.h"
#include "render/wording/pattern/pattern_words.h"

namespace roundwright::render {
namespace {

QString begin_words(Firmness firmness) {
    switch (firmness) {
        case Firmness::light:
            return Pattern::tr("Start to stuff lightly, and go on as the piece closes.");
        case Firmness::firm:
            return Pattern::tr("Start to stuff firmly, and go on as the piece closes.");
        default:
            return Pattern::tr("Start to stuff, and go on as the piece closes.");
    }
}

QString finish_words(Firmness firmness) {
    switch (firmness) {
        case Firmness::light:
            return Pattern::tr("Finish stuffing lightly now, before the opening gets too small.");
        case Firmness::firm:
            return Pattern::tr("Finish stuffing firmly now, before the opening gets too small.");
        default:
            return Pattern::tr("Finish stuffing now, before the opening gets too small.");
    }
}

QString stuff_words(Firmness firmness) {
    switch (firmness) {
        case Firmness::light:
            return Pattern::tr("Stuff the piece lightly now.");
        case Firmness::firm:
            return Pattern::tr("Stuff the piece firmly now.");
        default:
            return Pattern::tr("Stuff the piece now.");
    }
}

/// The step in words, said with the firmness of the piece where it is not the usual one.
QString stuffing_step_words(StepKind kind, Firmness firmness) {
    switch (kind) {
        case StepKind::begin_stuffing:
            return begin_words(firmness);
        case StepKind::finish_stuffing:
            return finish_words(firmness);
        default:
            return stuff_words(firmness);
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
    for (const WorkStep& step : work_steps(piece, study.problem().rest_loop_mm, study.fabric.mm)) {
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
