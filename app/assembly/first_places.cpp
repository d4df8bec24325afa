#include "app/assembly/first_places.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "app/assembly/join_edits.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::app {
namespace {

/// Places in one gap are looked for this far from the middle before two are put in one.
constexpr int most_tries = 40;

struct Sized {
    std::size_t index = 0;
    double size = 0;  ///< some measure of its volume: the square of its widest round by its rounds
};

std::vector<int> counts_of(const Toy& toy, const PieceCopy& copy) {
    const auto index = toy.pieces.index_of(copy.piece);
    return index ? stitch_counts(piece_graph(toy.pieces[*index]).graph) : std::vector<int>();
}

std::vector<Sized> by_size(const Toy& toy) {
    std::vector<Sized> sized;
    for (std::size_t index = 0; index < toy.pieces.size(); ++index) {
        const auto counts = counts_of(toy, {toy.pieces.id(index), 0});
        const double widest = counts.empty() ? 0 : *std::ranges::max_element(counts);
        sized.push_back({index, widest * widest * static_cast<double>(counts.size())});
    }
    std::ranges::stable_sort(sized, std::greater<>(), &Sized::size);
    return sized;
}

bool is_taken(const Toy& toy, const Join& join) {
    return std::ranges::any_of(toy.joins, [&](const Join& other) {
        return other.onto == join.onto && other.at.round == join.at.round &&
               std::abs(std::abs(other.at.stitches_right) - std::abs(join.at.stitches_right)) < 1;
    });
}

/// In turn above and below the gap that was meant, as long as another piece is there.
void find_free_gap(const Toy& toy, Join& join, int last_gap) {
    const int meant = join.at.round;
    for (int step = 1; step < most_tries && is_taken(toy, join); ++step) {
        const int off = step % 2 == 1 ? (step + 1) / 2 : -step / 2;
        join.at.round = std::clamp(meant + 2 * off, std::min(1, last_gap), last_gap);
    }
}

bool is_said(const Toy& toy, PieceId piece) {
    return std::ranges::any_of(toy.joins, [piece](const Join& join) { return join.piece.piece == piece; });
}

void sew_copies(Toy& toy, std::size_t index, PieceId onto) {
    const int make = std::as_const(toy).pieces[index].make;
    for (int copy = 0; copy < make; copy += 2) {
        Join join = first_place(toy, {toy.pieces.id(index), copy}, {onto, 0});
        join.pair = copy + 1 < make;
        if (!join.pair) join.at.stitches_right = 0;
        const auto counts = counts_of(toy, join.onto);
        if (counts.size() > 2) find_free_gap(toy, join, static_cast<int>(counts.size()) - 2);
        toy.joins.push_back(join);
    }
}

void sew_on_top(Toy& toy, std::size_t index, PieceId onto) {
    Join join = first_place(toy, {toy.pieces.id(index), 0}, {onto, 0});
    const Piece& below = std::as_const(toy).pieces[*toy.pieces.index_of(onto)];
    join.at = {below.starts_at_top ? -1 : static_cast<int>(below.rounds.size()) - 1, 0, true};
    toy.joins.push_back(join);
}

}  // namespace

Join first_place(const Toy& toy, const PieceCopy& piece, const PieceCopy& onto) {
    Join join;
    join.piece = piece;
    join.onto = onto;
    if (const auto index = toy.pieces.index_of(piece.piece)) {
        const Piece& sewn = toy.pieces[*index];
        const bool open_start = std::holds_alternative<OpenTube>(sewn.start);
        if (sewn.end == End::sewn_straight) join.seam = Seam::straight;
        if (sewn.end == End::drawn_closed) {
            join.seam = open_start ? Seam::edge : Seam::closed;
            join.end = JoinedEnd::start;
        }
        join.pair = sewn.make == 2;
    }
    const auto counts = counts_of(toy, onto);
    if (counts.size() < 3) {
        join.at = {static_cast<int>(counts.size()) - 1, 0, false};
        return join;
    }
    join.at.round = (static_cast<int>(counts.size()) - 1) / 2;
    if (join.pair)
        join.at.stitches_right = std::round(counts[static_cast<std::size_t>(join.at.round)] / 4.0);
    return join;
}

Toy with_first_places(Toy toy) {
    const auto sized = by_size(toy);
    if (sized.empty()) return toy;
    const PieceId body = toy.pieces.id(sized.front().index);
    PieceId head = body;
    const double least_head = sized.front().size / 8;
    for (std::size_t k = 1; k < sized.size(); ++k) {
        const std::size_t index = sized[k].index;
        const PieceId id = toy.pieces.id(index);
        if (is_said(toy, id) || is_sewn_to(toy, {body, 0}, {id, 0})) continue;
        if (head == body && std::as_const(toy).pieces[index].make == 1 && sized[k].size >= least_head) {
            sew_on_top(toy, index, body);
            head = id;
        } else {
            sew_copies(toy, index, std::as_const(toy).pieces[index].make > 1 ? body : head);
        }
    }
    return toy;
}

Toy with_first_place_of(Toy toy, PieceId piece) {
    const auto sized = by_size(toy);
    const auto index = toy.pieces.index_of(piece);
    if (!index || toy.pieces.size() < 2) return toy;
    const auto largest = std::ranges::find_if(
        sized, [&](const Sized& other) { return toy.pieces.id(other.index) != piece; });
    sew_copies(toy, *index, toy.pieces.id(largest->index));
    return toy;
}

}  // namespace roundwright::app
