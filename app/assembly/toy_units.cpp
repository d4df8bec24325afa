#include "app/assembly/toy_units.h"

#include <algorithm>
#include <map>

namespace roundwright::app {
namespace {

std::vector<PieceCopy> copies_of(const Join& join) {
    std::vector<PieceCopy> copies{join.piece};
    if (join.pair) copies.push_back({join.piece.piece, join.piece.copy + 1});
    return copies;
}

}  // namespace

bool ToyUnit::has(const PieceCopy& copy) const { return std::ranges::find(copies, copy) != copies.end(); }

std::vector<ToyUnit> units_of(const Toy& toy) {
    std::map<PieceCopy, std::size_t> join_of;  // the first one of each copy
    std::vector<bool> is_listed(toy.joins.size(), false);
    for (std::size_t join = 0; join < toy.joins.size(); ++join)
        for (const PieceCopy& copy : copies_of(toy.joins[join])) join_of.emplace(copy, join);
    std::vector<ToyUnit> units;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece) {
        for (int number = 0; number < toy.pieces[piece].make; ++number) {
            const PieceCopy copy{toy.pieces.id(piece), number};
            const auto found = join_of.find(copy);
            if (found == join_of.end()) {
                units.push_back({piece, {copy}, std::nullopt});
                continue;
            }
            const std::size_t join = found->second;
            if (is_listed[join]) continue;
            is_listed[join] = true;
            units.push_back({piece, copies_of(toy.joins[join]), join});
        }
    }
    for (std::size_t join = 0; join < toy.joins.size(); ++join) {
        if (!is_listed[join])
            units.push_back(
                {toy.pieces.index_of(toy.joins[join].piece.piece), copies_of(toy.joins[join]), join});
    }
    return units;
}

}  // namespace roundwright::app
