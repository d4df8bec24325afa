#include "core/toy/piece_id.h"

#include <algorithm>

namespace roundwright {

namespace {

PieceId after(PieceId id) { return PieceId{static_cast<std::uint32_t>(id) + 1}; }

bool holds(std::span<const PieceId> ids, PieceId id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

}  // namespace

PieceId new_piece_id(PieceId last, std::span<const PieceId> taken) {
    if (last < largest_piece_id) return after(last);
    PieceId free = after(PieceId::none);
    while (holds(taken, free)) free = after(free);
    return free;
}

std::vector<PieceId> unique_piece_ids(std::span<const PieceId> wanted) {
    std::vector<PieceId> ids;
    for (const PieceId id : wanted)
        ids.push_back(id > largest_piece_id || holds(ids, id) ? PieceId::none : id);
    PieceId last = PieceId::none;
    for (const PieceId id : ids) last = std::max(last, id);
    for (PieceId& id : ids) {
        if (id == PieceId::none) id = new_piece_id(last, ids);
        last = std::max(last, id);
    }
    return ids;
}

}  // namespace roundwright
