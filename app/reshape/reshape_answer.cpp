#include "app/reshape/reshape_answer.h"

#include <numeric>
#include <utility>

namespace roundwright::app {
namespace {

constexpr int most_ripped = 8;

ReshapeAnswer answer_for_yarn_and_hook(const ReshapeQuestion& question) {
    std::vector<std::size_t> all(question.toy.pieces.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    const Toy& other = *question.worked_as;
    const bool rounds_stay = question.keeps_rounds || gauge_of(other) == gauge_of(question.toy);
    ReshapedToy made = rounds_stay ? same_rounds(question.toy, other, all, question.options)
                                   : reshape_toy(question.toy, other, all, {}, question.options);
    ReshapeAnswer answer;
    ReshapedPiece& piece = made.pieces[question.piece];
    answer.proposal.made = std::move(piece.made);
    answer.proposal.back = std::move(piece.back);
    if (has_piece(answer.proposal.made.code)) answer.proposal.whole_toy = std::move(made.toy);
    return answer;
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
    return question.worked_as ? answer_for_yarn_and_hook(question) : answer_for_size(question);
}

}  // namespace roundwright::app
