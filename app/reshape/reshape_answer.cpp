#include "app/reshape/reshape_answer.h"

#include <utility>

namespace roundwright::app {
namespace {

constexpr int most_ripped = 8;

bool is_met(ReshapeCode code) { return code == ReshapeCode::met || code == ReshapeCode::unchanged; }

ReshapeAnswer answer_of(ReshapedToy made, std::size_t shown) {
    ReshapeAnswer answer;
    ReshapeProposal& proposal = answer.proposal;
    for (const ReshapedPiece& piece : made.pieces)
        if (piece.piece != shown && !is_met(piece.made.code)) proposal.missed.push_back(piece.piece);
    proposal.made = std::move(made.pieces[shown].made);
    proposal.back = std::move(made.pieces[shown].back);
    if (has_piece(proposal.made.code)) proposal.whole_toy = std::move(made.toy);
    return answer;
}

ReshapeAnswer answer_for_yarn_and_hook(const ReshapeQuestion& question) {
    const Toy& other = *question.worked_as;
    const auto all = all_pieces(question.toy);
    const bool rounds_stay = question.keeps_rounds || gauge_of(other) == gauge_of(question.toy);
    return answer_of(rounds_stay ? same_rounds(question.toy, other, all, question.options)
                                 : reshape_toy(question.toy, other, all, {}, question.options),
                     question.piece);
}

ReshapeAnswer answer_for_all_pieces(const ReshapeQuestion& question) {
    const Target alike = as_scale(question.form, question.target);
    return answer_of(
        reshape_toy(question.toy, question.toy, all_pieces(question.toy), alike, question.options),
        question.piece);
}

ReshapeAnswer answer_for_size(const ReshapeQuestion& question) {
    ReshapeAnswer answer;
    const PieceForm& form = question.form;
    answer.proposal.made = roundwright::resize(form, question.target, question.options);
    if (!has_piece(answer.proposal.made.code)) return answer;
    answer.proposal.back = frog_back_for(question.toy, form, answer.proposal.made.form);
    const WorkedSoFar& worked = form.piece.worked;
    if (worked.rounds + worked.stitches == 0) return answer;
    answer.ways = ways_on_for(question.toy, form, question.target, most_ripped, question.options);
    return answer;
}

}  // namespace

ReshapeAnswer answer_to(const ReshapeQuestion& question) {
    if (question.worked_as) return answer_for_yarn_and_hook(question);
    return question.all_pieces ? answer_for_all_pieces(question) : answer_for_size(question);
}

}  // namespace roundwright::app
