#include "app/read_pattern/added_pieces.h"

#include <algorithm>
#include <utility>

#include "core/assembly/worked_on_joins.h"
#include "core/base/limits.h"

namespace roundwright::app {
namespace {

void add_paragraphs(std::string& text, const std::string& more) {
    if (!text.empty() && !more.empty()) text += "\n\n";
    text += more;
}

/// Joins of pieces that stand in `toy` from `first` on, where they have other ids.
void add_joins(Toy& toy, std::size_t first, const Toy& read) {
    const auto id_in_toy = [&](PieceId id) { return toy.pieces.id(first + *read.pieces.index_of(id)); };
    for (Join join : read.joins) {
        if (toy.joins.size() >= max_joins) return;
        join.piece.piece = id_in_toy(join.piece.piece);
        join.onto.piece = id_in_toy(join.onto.piece);
        toy.joins.push_back(std::move(join));
    }
}

}  // namespace

bool has_rounds(const Toy& toy) {
    return std::any_of(toy.pieces.begin(), toy.pieces.end(),
                       [](const Piece& piece) { return !piece.rounds.empty(); });
}

Toy with_pieces_read(const Toy& toy, const ReadPattern& pattern) {
    Toy without_pieces = toy;
    without_pieces.pieces = PieceList();
    without_pieces.joins.clear();
    const Toy read = with_worked_on_joins(toy_of(pattern, without_pieces));
    if (!has_rounds(toy)) return read;
    Toy both = toy;
    both.yarns = read.yarns;
    add_paragraphs(both.notes, pattern.notes);
    add_paragraphs(both.text.assembly, pattern.assembly);
    add_paragraphs(both.text.finishing, pattern.finishing);
    const std::size_t first = both.pieces.size();
    both.pieces.insert(both.pieces.end(), read.pieces.begin(), read.pieces.end());
    add_joins(both, first, read);
    return both;
}

}  // namespace roundwright::app
