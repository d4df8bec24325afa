#include "core/toy/own_piece.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "core/base/limits.h"

namespace roundwright {
namespace {

bool is_alike(const Yarn& a, const Yarn& b) {
    return a.name == b.name && a.colour == b.colour && a.weight == b.weight && a.brushed == b.brushed;
}

/// Words may name any yarn.
bool has_words(const Piece& piece) {
    return std::ranges::any_of(
        piece.rounds, [](const Round& round) { return std::holds_alternative<AsWritten>(round.working); });
}

/// Where the yarns of one toy are in another, as they are asked for.
class YarnsTaken {
  public:
    YarnsTaken(const std::vector<Yarn>& from, std::vector<Yarn>& into)
        : from_(from), into_(into), places_(from.size()) {}

    std::size_t place_of(std::size_t yarn) {
        if (yarn >= from_.size()) return 0;
        if (!places_[yarn]) places_[yarn] = take(from_[yarn]);
        return *places_[yarn];
    }

  private:
    std::size_t take(const Yarn& yarn) {
        const auto found =
            std::ranges::find_if(into_, [&](const Yarn& other) { return is_alike(yarn, other); });
        const auto place = static_cast<std::size_t>(found - into_.begin());
        if (found == into_.end()) into_.push_back(yarn);
        return place;
    }

    const std::vector<Yarn>& from_;
    std::vector<Yarn>& into_;
    std::vector<std::optional<std::size_t>> places_;
};

void rename(Piece& piece, YarnsTaken& yarns) {
    for (Round& round : piece.rounds) round.yarn = yarns.place_of(round.yarn);
}

}  // namespace

Toy toy_of_piece(const Toy& toy, std::size_t piece) {
    Toy alone;
    Piece copy = toy.pieces[piece];
    copy.worked = {};
    alone.title = copy.name;
    alone.hook_mm = toy.hook_mm;
    alone.gauge = toy.gauge;
    if (has_words(copy)) alone.yarns = toy.yarns;
    YarnsTaken yarns(toy.yarns, alone.yarns);
    rename(copy, yarns);
    if (alone.yarns.empty() && !toy.yarns.empty()) alone.yarns.push_back(toy.yarns.front());
    alone.pieces.push_back(std::move(copy));
    return alone;
}

Edited<Toy> insert_pieces_of(const Toy& toy, std::size_t at, const Toy& from) {
    if (toy.pieces.size() + from.pieces.size() > max_pieces) return {toy, EditRefusal::too_many_pieces};
    Toy edited = toy;
    YarnsTaken yarns(from.yarns, edited.yarns);
    at = std::min(at, toy.pieces.size());
    for (const Piece& piece : from.pieces) {
        Piece copy = piece;
        copy.worked = {};
        rename(copy, yarns);
        edited.pieces.insert(std::as_const(edited.pieces).begin() + static_cast<std::ptrdiff_t>(at++),
                             std::move(copy));
    }
    return {std::move(edited)};
}

}  // namespace roundwright
