#include "core/toy/edits.h"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <numeric>
#include <utility>

#include "core/base/limits.h"

namespace roundwright {

namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);

/// The rounds that are there, ascending, each once.
std::vector<int> tidy(std::span<const int> rounds, std::size_t count) {
    std::vector<int> tidied(rounds.begin(), rounds.end());
    std::sort(tidied.begin(), tidied.end());
    tidied.erase(std::unique(tidied.begin(), tidied.end()), tidied.end());
    std::erase_if(tidied, [count](int round) { return round < 0 || std::cmp_greater_equal(round, count); });
    return tidied;
}

void work_evenly(Round& round, int stitches) {
    WorkedEvenly even;
    if (const auto* worked = std::get_if<WorkedEvenly>(&round.working)) even = *worked;
    even.stitches = std::max(1, stitches);
    round.working = even;
}

/// Where round `round` is after `taken` rounds from `first` on have been replaced by `put_in` others.
int round_after(int round, std::size_t first, std::size_t taken, std::size_t put_in) {
    const auto index = static_cast<std::size_t>(std::max(0, round));
    if (index < first) return round;
    if (index >= first + taken) return static_cast<int>(index - taken + put_in);
    const std::size_t kept = std::min(index - first + 1, put_in);
    return static_cast<int>(std::max<std::size_t>(1, first + kept) - 1);
}

/// What begins with a round that is taken begins with the one that comes into its place.
int beginning_after(int round, std::size_t first, std::size_t taken, std::size_t put_in) {
    const auto index = static_cast<std::size_t>(std::max(0, round));
    if (index < first || index >= first + taken) return round_after(round, first, taken, put_in);
    return static_cast<int>(first + std::min(index - first, put_in));
}

/// Where none of the stuffed rounds is left, the one in their place is stuffed.
void move_stuffing(Piece& piece, std::size_t first, std::size_t taken, std::size_t put_in) {
    if (!piece.stuffed_rounds) return;
    RoundSpan& stuffed = *piece.stuffed_rounds;
    const int last = round_after(stuffed.last, first, taken, put_in);
    stuffed.first = std::min(beginning_after(stuffed.first, first, taken, put_in), std::max(last, 0));
    stuffed.last = std::max(last, stuffed.first);
}

/// Of what lies between the rounds, or in them.
void move_places(Piece& piece, std::size_t first, std::size_t taken, std::size_t put_in) {
    move_stuffing(piece, first, taken, put_in);
    for (Feature& feature : piece.features) {
        feature.round = round_after(feature.round, first, taken, put_in);
        if (feature.kind != FeatureKind::stitched_line) continue;
        feature.end_round = round_after(feature.end_round, first, taken, put_in);
    }
}

/// Rounds name yarns by place: `moved[i]` is where yarn i is now.
void rename_yarns(Toy& toy, const std::vector<std::size_t>& moved) {
    const auto moves = [&moved](const Round& round) {
        return round.yarn < moved.size() && moved[round.yarn] != round.yarn;
    };
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        if (!std::ranges::any_of(std::as_const(toy).pieces[i].rounds, moves)) continue;
        for (Round& round : toy.pieces[i].rounds) {
            if (moves(round)) round.yarn = moved[round.yarn];
        }
    }
}

std::vector<std::size_t> places(std::size_t count) {
    std::vector<std::size_t> all(count);
    std::iota(all.begin(), all.end(), 0);
    return all;
}

/// Takes the element at `from` out and puts it in again at `to`.
template <class Element>
void shift(std::vector<Element>& elements, std::size_t from, std::size_t to) {
    const Element element = elements[from];
    elements.erase(elements.begin() + static_cast<std::ptrdiff_t>(from));
    elements.insert(elements.begin() + static_cast<std::ptrdiff_t>(std::min(to, elements.size())), element);
}

}  // namespace

Edited<Piece> replace_rounds(const Piece& piece, std::size_t first, std::size_t replaced,
                             std::span<const Round> rounds) {
    const std::size_t start = std::min(first, piece.rounds.size());
    const std::size_t taken = std::min(replaced, piece.rounds.size() - start);
    if (piece.rounds.size() - taken + rounds.size() > max_rounds_per_piece) {
        return {piece, EditRefusal::too_many_rounds};
    }
    Edited<Piece> edited{piece};
    auto& all = edited.value.rounds;
    const auto at = all.erase(all.begin() + static_cast<std::ptrdiff_t>(start),
                              all.begin() + static_cast<std::ptrdiff_t>(start + taken));
    all.insert(at, rounds.begin(), rounds.end());
    move_places(edited.value, start, taken, rounds.size());
    return edited;
}

Edited<Piece> insert_rounds(const Piece& piece, std::size_t at, std::span<const Round> rounds) {
    return replace_rounds(piece, at, 0, rounds);
}

Piece remove_rounds(const Piece& piece, std::span<const int> rounds) {
    Piece edited = piece;
    const std::vector<int> removed = tidy(rounds, piece.rounds.size());
    for (auto round = removed.rbegin(); round != removed.rend(); ++round) {
        edited.rounds.erase(edited.rounds.begin() + *round);
        move_places(edited, static_cast<std::size_t>(*round), 1, 0);
    }
    return edited;
}

Edited<Piece> duplicate_rounds(const Piece& piece, std::span<const int> rounds) {
    const std::vector<int> chosen = tidy(rounds, piece.rounds.size());
    if (chosen.empty()) return {piece};
    std::vector<Round> copies;
    for (const int round : chosen) copies.push_back(piece.rounds[static_cast<std::size_t>(round)]);
    return insert_rounds(piece, static_cast<std::size_t>(chosen.back()) + 1, copies);
}

Piece move_rounds(const Piece& piece, std::span<const int> rounds, int by) {
    Piece edited = piece;
    std::vector<int> chosen = tidy(rounds, piece.rounds.size());
    if (by > 0) std::reverse(chosen.begin(), chosen.end());
    const int step = by > 0 ? 1 : -1;
    int stop = by > 0 ? static_cast<int>(piece.rounds.size()) : -1;
    for (const int round : chosen) {
        if (by == 0 || round + step == stop) {
            stop = round;
            continue;
        }
        std::swap(edited.rounds[static_cast<std::size_t>(round)],
                  edited.rounds[static_cast<std::size_t>(round + step)]);
    }
    return edited;
}

Edited<Piece> set_counts(const Piece& piece, std::span<const int> rounds, int stitches) {
    if (stitches > most_stitches) return {piece, EditRefusal::too_many_stitches};
    Edited<Piece> edited{piece};
    for (const int round : tidy(rounds, piece.rounds.size())) {
        work_evenly(edited.value.rounds[static_cast<std::size_t>(round)], stitches);
    }
    return edited;
}

Edited<Piece> change_counts(const Piece& piece, std::span<const int> rounds, int change,
                            std::span<const int> edge) {
    Edited<Piece> edited{piece};
    std::vector<int> counts(edge.begin(), edge.end());
    counts.resize(piece.rounds.size() + 1);
    for (const int round : tidy(rounds, piece.rounds.size())) {
        const auto index = static_cast<std::size_t>(round);
        const std::int64_t stitches = std::max<std::int64_t>(1, std::int64_t{counts[index]} + change);
        if (stitches > most_stitches) return {piece, EditRefusal::too_many_stitches};
        counts[index + 1] = static_cast<int>(stitches);
        work_evenly(edited.value.rounds[index], counts[index + 1]);
    }
    return edited;
}

Edited<Toy> insert_piece(const Toy& toy, std::size_t at, const Piece& piece) {
    if (toy.pieces.size() >= max_pieces) return {toy, EditRefusal::too_many_pieces};
    Edited<Toy> edited{toy};
    auto& pieces = edited.value.pieces;
    pieces.insert(pieces.begin() + static_cast<std::ptrdiff_t>(std::min(at, pieces.size())), piece);
    return edited;
}

Toy remove_piece(const Toy& toy, std::size_t piece) {
    Toy edited = toy;
    if (piece >= toy.pieces.size()) return edited;
    const PieceId gone = toy.pieces.id(piece);
    edited.pieces.erase(edited.pieces.begin() + static_cast<std::ptrdiff_t>(piece));
    std::erase_if(edited.joins,
                  [gone](const Join& join) { return join.piece.piece == gone || join.onto.piece == gone; });
    return edited;
}

Toy move_piece(const Toy& toy, std::size_t piece, std::size_t to) {
    Toy edited = toy;
    if (piece < toy.pieces.size()) edited.pieces.move(piece, to);
    return edited;
}

Toy insert_yarn(const Toy& toy, std::size_t at, const Yarn& yarn) {
    Toy edited = toy;
    const std::size_t place = std::min(at, toy.yarns.size());
    edited.yarns.insert(edited.yarns.begin() + static_cast<std::ptrdiff_t>(place), yarn);
    std::vector<std::size_t> moved = places(toy.yarns.size());
    for (std::size_t& yarn_place : moved) yarn_place += yarn_place >= place ? 1 : 0;
    rename_yarns(edited, moved);
    return edited;
}

Toy remove_yarn(const Toy& toy, std::size_t yarn, std::size_t instead) {
    Toy edited = toy;
    if (yarn >= toy.yarns.size()) return edited;
    edited.yarns.erase(edited.yarns.begin() + static_cast<std::ptrdiff_t>(yarn));
    std::vector<std::size_t> moved = places(toy.yarns.size());
    for (std::size_t& place : moved) place -= place > yarn ? 1 : 0;
    moved[yarn] = instead == yarn || instead >= toy.yarns.size() ? 0 : moved[instead];
    rename_yarns(edited, moved);
    return edited;
}

Toy move_yarn(const Toy& toy, std::size_t yarn, std::size_t to) {
    Toy edited = toy;
    if (yarn >= toy.yarns.size()) return edited;
    shift(edited.yarns, yarn, to);
    std::vector<std::size_t> order = places(toy.yarns.size());
    shift(order, yarn, to);
    std::vector<std::size_t> moved(order.size());
    for (std::size_t place = 0; place < order.size(); ++place) moved[order[place]] = place;
    rename_yarns(edited, moved);
    return edited;
}

}  // namespace roundwright
