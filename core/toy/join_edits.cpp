#include "core/toy/join_edits.h"

#include <algorithm>
#include <utility>

#include "core/base/limits.h"

namespace roundwright {
namespace {

/// Where a join sits among the rounds of its piece, as a feature that they take along.
Feature mark_at(int round) {
    Feature mark;
    mark.kind = FeatureKind::felt_disc;
    mark.round = round;
    return mark;
}

/// Joins onto a piece whose gap lies between two of its rounds.
std::vector<std::size_t> joins_between_rounds(const Toy& toy, PieceId onto, std::size_t rounds) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < toy.joins.size(); ++i) {
        const Join& join = toy.joins[i];
        if (join.onto.piece == onto && join.at.round >= 0 && std::cmp_less(join.at.round + 1, rounds))
            found.push_back(i);
    }
    return found;
}

void follow_last_edge(Toy& toy, PieceId onto, std::size_t before, std::size_t after) {
    if (before == 0 || after == 0) return;
    for (Join& join : toy.joins) {
        if (join.onto.piece == onto && std::cmp_equal(join.at.round + 1, before))
            join.at.round = static_cast<int>(after) - 1;
    }
}

}  // namespace

Edited<Toy> add_join(const Toy& toy, const Join& join) {
    if (toy.joins.size() >= max_joins) return {toy, EditRefusal::too_many_joins};
    Edited<Toy> edited{toy};
    edited.value.joins.push_back(join);
    return edited;
}

Toy change_join(const Toy& toy, std::size_t join, Join becomes) {
    Toy edited = toy;
    if (join >= toy.joins.size()) return edited;
    becomes.kept = toy.joins[join].kept;
    edited.joins[join] = std::move(becomes);
    return edited;
}

Toy remove_join(const Toy& toy, std::size_t join) {
    Toy edited = toy;
    if (join < toy.joins.size()) edited.joins.erase(edited.joins.begin() + static_cast<std::ptrdiff_t>(join));
    return edited;
}

Toy set_made(const Toy& toy, std::size_t piece, int make) {
    Toy edited = toy;
    if (piece >= toy.pieces.size()) return edited;
    const int made = std::max(make, 1);
    const PieceId id = toy.pieces.id(piece);
    const auto is_gone = [&](const PieceCopy& copy) { return copy.piece == id && copy.copy >= made; };
    edited.pieces[piece].make = made;
    std::erase_if(edited.joins, [&](const Join& join) { return is_gone(join.piece) || is_gone(join.onto); });
    for (Join& join : edited.joins)
        if (is_gone({join.piece.piece, join.piece.copy + 1})) join.pair = false;
    return edited;
}

Edited<Toy> edit_rounds(const Toy& toy, std::size_t piece, const RoundsEdit& edit) {
    if (piece >= toy.pieces.size()) return {toy};
    Piece marked = toy.pieces[piece];
    const PieceId id = toy.pieces.id(piece);
    const std::vector<std::size_t> joins = joins_between_rounds(toy, id, marked.rounds.size());
    for (const std::size_t join : joins) marked.features.push_back(mark_at(toy.joins[join].at.round));
    Edited<Piece> made = edit(marked);
    if (made.refusal) return {toy, made.refusal};
    auto& features = made.value.features;
    const auto marks = features.end() - static_cast<std::ptrdiff_t>(joins.size());
    Edited<Toy> edited{toy};
    follow_last_edge(edited.value, id, marked.rounds.size(), made.value.rounds.size());
    for (std::size_t i = 0; i < joins.size(); ++i)
        edited.value.joins[joins[i]].at.round = (marks + static_cast<std::ptrdiff_t>(i))->round;
    features.erase(marks, features.end());
    edited.value.pieces[piece] = std::move(made.value);
    return edited;
}

std::vector<std::size_t> pieces_joined_onto(const Toy& toy, std::size_t piece) {
    std::vector<std::size_t> found;
    if (piece >= toy.pieces.size()) return found;
    for (const Join& join : toy.joins) {
        const auto joined = toy.pieces.index_of(join.piece.piece);
        if (join.onto.piece != toy.pieces.id(piece) || !joined || joined == piece) continue;
        if (std::ranges::find(found, *joined) == found.end()) found.push_back(*joined);
    }
    return found;
}

}  // namespace roundwright
