#include "app/session/toy_delta.h"

#include <algorithm>
#include <utility>

namespace roundwright::app {
namespace {

/// The stretch that differs, between what both lists begin and end with.
template <class T>
Splice splice_between(const std::vector<T>& before, const std::vector<T>& after) {
    const auto shorter = std::min(before.size(), after.size());
    std::size_t front = 0;
    while (front < shorter && before[front] == after[front]) ++front;
    std::size_t back = 0;
    while (back < shorter - front && before[before.size() - 1 - back] == after[after.size() - 1 - back])
        ++back;
    return {static_cast<int>(front), static_cast<int>(before.size() - front - back),
            static_cast<int>(after.size() - front - back)};
}

template <class T>
std::vector<T> stretch(const std::vector<T>& list, int first, int count) {
    return {list.begin() + first, list.begin() + first + count};
}

template <class T>
void replace_stretch(std::vector<T>& list, int first, int removed, const std::vector<T>& inserted) {
    list.erase(list.begin() + first, list.begin() + first + removed);
    list.insert(list.begin() + first, inserted.begin(), inserted.end());
}

bool same_words(const Toy& a, const Toy& b) {
    return a.title == b.title && a.designer == b.designer && a.notes == b.notes &&
           a.private_notes == b.private_notes && a.text == b.text;
}

Toy without_words(Toy head) {
    head.title.clear();
    head.designer.clear();
    head.notes.clear();
    head.private_notes.clear();
    head.text = {};
    return head;
}

void put_head(Toy& toy, const Toy& head) {
    auto pieces = std::move(toy.pieces);
    toy = head;
    toy.pieces = std::move(pieces);
}

}  // namespace

ToyDelta::ToyDelta(Toy& before, Toy& after) {
    auto pieces_before = std::exchange(before.pieces, {});
    auto pieces_after = std::exchange(after.pieces, {});
    before_.head = before;
    after_.head = after;
    compare_pieces(pieces_before, pieces_after);
    before.pieces = std::move(pieces_before);
    after.pieces = std::move(pieces_after);
    changes_.words = !same_words(before_.head, after_.head);
    changes_.materials = without_words(before_.head) != without_words(after_.head);
}

void ToyDelta::compare_pieces(const std::vector<Piece>& before, const std::vector<Piece>& after) {
    changes_.pieces = splice_between(before, after);
    const auto& [first, removed, inserted] = changes_.pieces;
    before_.pieces = stretch(before, first, removed);
    after_.pieces = stretch(after, first, inserted);
    if (changes_.pieces.one_for_one()) compare_rounds();
}

void ToyDelta::compare_rounds() {
    const auto rounds_before = std::exchange(before_.pieces.front().rounds, {});
    const auto rounds_after = std::exchange(after_.pieces.front().rounds, {});
    changes_.piece_settings = before_.pieces.front() != after_.pieces.front();
    changes_.rounds = splice_between(rounds_before, rounds_after);
    before_.rounds = stretch(rounds_before, changes_.rounds.first, changes_.rounds.removed);
    after_.rounds = stretch(rounds_after, changes_.rounds.first, changes_.rounds.inserted);
}

ChangeSet ToyDelta::reversed_changes() const {
    auto reversed = changes_;
    std::swap(reversed.pieces.removed, reversed.pieces.inserted);
    std::swap(reversed.rounds.removed, reversed.rounds.inserted);
    return reversed;
}

void ToyDelta::put(Toy& toy, const Side& from, const Side& to) const {
    if (changes_.words || changes_.materials) put_head(toy, to.head);
    if (!changes_.pieces.one_for_one()) {
        replace_stretch(toy.pieces, changes_.pieces.first, static_cast<int>(from.pieces.size()), to.pieces);
        return;
    }
    auto& piece = toy.pieces[static_cast<std::size_t>(changes_.pieces.first)];
    auto rounds = std::move(piece.rounds);
    replace_stretch(rounds, changes_.rounds.first, static_cast<int>(from.rounds.size()), to.rounds);
    piece = to.pieces.front();
    piece.rounds = std::move(rounds);
}

void ToyDelta::apply(Toy& toy) const { put(toy, before_, after_); }

void ToyDelta::revert(Toy& toy) const { put(toy, after_, before_); }

}  // namespace roundwright::app
