#include "app/session/toy_delta.h"

#include <algorithm>
#include <utility>

namespace roundwright::app {
namespace {

/// The stretch that differs between two lists of so many, between what both begin and end with. `same(i, k)`
/// compares element i of the first with element k of the second.
template <class Same>
Splice splice_between(std::size_t before, std::size_t after, Same same) {
    const auto shorter = std::min(before, after);
    std::size_t front = 0;
    while (front < shorter && same(front, front)) ++front;
    std::size_t back = 0;
    while (back < shorter - front && same(before - 1 - back, after - 1 - back)) ++back;
    return {static_cast<int>(front), static_cast<int>(before - front - back),
            static_cast<int>(after - front - back)};
}

bool same_words(const Toy& a, const Toy& b) {
    return a.title == b.title && a.designer == b.designer && a.notes == b.notes &&
           a.private_notes == b.private_notes && a.text == b.text && a.kept == b.kept;
}

bool same_materials(const Toy& a, const Toy& b) {
    return a.hook_mm == b.hook_mm && a.gauge == b.gauge && a.yarns == b.yarns && a.making == b.making;
}

bool same_joins(const Toy& a, const Toy& b) { return a.joins == b.joins && a.stance == b.stance; }

/// Does not compile once a field is added to a toy: it is then a word, a material or of the joins.
[[maybe_unused]] void every_field_is_compared(const Toy& toy) {
    [[maybe_unused]] const auto& [title, designer, notes, private_notes, hook, gauge, yarns, pieces, joins,
                                  stance, text, making, kept] = toy;
}

Piece without_rounds(Piece piece) {
    piece.rounds.clear();
    return piece;
}

void compare_rounds(const Piece& before, const Piece& after, ChangeSet& changes) {
    changes.rounds =
        splice_between(before.rounds.size(), after.rounds.size(),
                       [&](std::size_t i, std::size_t k) { return before.rounds[i] == after.rounds[k]; });
    changes.piece_settings = without_rounds(before) != without_rounds(after);
}

}  // namespace

ChangeSet changes_between(const Toy& before, const Toy& after) {
    ChangeSet changes;
    changes.words = !same_words(before, after);
    changes.materials = !same_materials(before, after);
    changes.joins = !same_joins(before, after);
    changes.pieces = splice_between(
        before.pieces.size(), after.pieces.size(),
        [&](std::size_t i, std::size_t k) { return same_piece(before.pieces, i, after.pieces, k); });
    if (!changes.pieces.one_for_one()) return changes;
    const auto at = static_cast<std::size_t>(changes.pieces.first);
    changes.another_piece = before.pieces.id(at) != after.pieces.id(at);
    compare_rounds(before.pieces[at], after.pieces[at], changes);
    return changes;
}

ToyDelta::ToyDelta(Toy before, Toy after)
    : before_(std::move(before)), after_(std::move(after)), changes_(changes_between(before_, after_)) {}

ChangeSet ToyDelta::reversed_changes() const {
    auto reversed = changes_;
    std::swap(reversed.pieces.removed, reversed.pieces.inserted);
    std::swap(reversed.rounds.removed, reversed.rounds.inserted);
    return reversed;
}

}  // namespace roundwright::app
